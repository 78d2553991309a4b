//! `1/2 in smooth`, `no. 4`: what joins two slabs; `smooth at 18 in`: which of the book's, how far apart.

use std::str::FromStr;

use crate::tables::bars::Bar;
use crate::values::{Length, Unreadable};

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

impl FromStr for DowelBar {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if let Some(diameter) = text.trim().strip_suffix(" smooth") {
            return Ok(Self::Smooth(super::size::positive(diameter)?));
        }
        text.parse::<Bar>().map(Self::Deformed).map_err(|_| {
            Unreadable::new(
                "bad-dowel",
                format!("cannot read `{}` as a dowel", text.trim()),
                "write a smooth bar as `1/2 in smooth`, a deformed one as `no. 4`",
            )
        })
    }
}

/// A kind of dowel by its name in the price book, and the owner's own spacing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DowelsPhrase {
    pub kind: String,
    pub spacing: Option<Length>,
}

impl FromStr for DowelsPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let (kind, spacing) = match text.trim().rsplit_once(" at ") {
            Some((kind, spacing)) => (kind, Some(super::size::positive(spacing)?)),
            None => (text, None),
        };
        Ok(Self {
            kind: kind.trim().to_owned(),
            spacing,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tells_smooth_bars_from_deformed_ones() {
        let half = "1/2 in".parse().unwrap();
        assert_eq!("1/2 in smooth".parse(), Ok(DowelBar::Smooth(half)));
        assert_eq!("no. 4".parse(), Ok(DowelBar::Deformed(Bar::No4)));
        for text in ["1/2 in", "smooth", "rough"] {
            let refused = text.parse::<DowelBar>().map_err(|e| e.code);
            assert_eq!(refused, Err("bad-dowel"), "{text}");
        }
    }

    #[test]
    fn reads_a_kind_with_or_without_a_spacing() {
        let kind = |text: &str| text.parse::<DowelsPhrase>().unwrap();
        let spacing = Some(Length::inches_whole(18));
        assert_eq!(kind("smooth at 18 in").spacing, spacing);
        assert_eq!(kind("smooth 1/2 in").kind, "smooth 1/2 in");
        assert_eq!(kind("smooth 1/2 in").spacing, None);
    }
}
