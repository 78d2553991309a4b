//! `1/2 in smooth`, `no. 4`: what joins two slabs; `smooth at 18 in`: which of the book's, how far apart.

use super::reader::{Said, phrase};
use crate::tables::bars::Bar;
use crate::values::Length;

/// A smooth bar slides in the concrete, a deformed one grips it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DowelBar {
    Smooth(Length),
    Deformed(Bar),
}

impl DowelBar {
    pub const fn diameter(self) -> Length {
        match self {
            Self::Smooth(diameter) => diameter,
            Self::Deformed(bar) => bar.diameter(),
        }
    }

    pub const fn is_smooth(self) -> bool {
        matches!(self, Self::Smooth(_))
    }
}

phrase!(
    DowelBar,
    "bar",
    "bad-dowel",
    "a dowel",
    "write a smooth bar as `1/2 in smooth`, a deformed one as `no. 4`",
    |said| match said.before(" smooth") {
        Some(diameter) => diameter.positive().map(DowelBar::Smooth),
        None => said.need(said.read().ok()).map(DowelBar::Deformed),
    }
);

/// A kind of dowel by its name in the price book, and the owner's own spacing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DowelsPhrase {
    pub kind: String,
    pub spacing: Option<Length>,
}

phrase!(
    DowelsPhrase,
    "name, at spacing",
    "bad-dowel",
    "dowels",
    "write a kind of the price book and how far apart, for example `smooth at 18 in`",
    |said| {
        let (kind, apart) = match said.split_last(" at ") {
            Some((kind, apart)) => (kind, Some(apart)),
            None => (said, None),
        };
        let before = kind.split_last(" at ").map(|(_, apart)| apart.positive());
        if let (Some(again), Some(Ok(_))) = (apart, before) {
            return Err(again.twice("how far apart they are"));
        }
        if kind.text().starts_with("at ") {
            return Err(said.refuse());
        }
        let spacing = apart.map(Said::positive).transpose()?;
        let kind = kind.text().to_owned();
        Ok(DowelsPhrase { kind, spacing })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn tells_smooth_bars_from_deformed_ones() {
        let half = "1/2 in".parse().unwrap();
        assert_eq!("1/2 in smooth".parse(), Ok(DowelBar::Smooth(half)));
        assert_eq!("no. 4".parse(), Ok(DowelBar::Deformed(Bar::No4)));
        refused::<DowelBar>("bad-dowel", &["1/2 in", "smooth", "rough"]);
    }

    #[test]
    fn reads_a_kind_with_or_without_a_spacing() {
        let kind = |text: &str| text.parse::<DowelsPhrase>().unwrap();
        let spacing = Some(Length::inches_whole(18));
        assert_eq!(kind("smooth at 18 in").spacing, spacing);
        assert_eq!(kind("smooth 1/2 in").kind, "smooth 1/2 in");
        assert_eq!(kind("smooth 1/2 in").spacing, None);
        refused::<DowelsPhrase>("bad-dowel", &["at 18 in"]);
        refused::<DowelsPhrase>("said-twice", &["smooth at 18 in at 24 in"]);
    }
}
