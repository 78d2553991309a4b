//! `2 bars, 4 ft long`: what lies across a corner that turns into the slab.

use super::reader::phrase;
use crate::tables::bars::Bar;
use crate::values::Length;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CornerBarsPhrase {
    None,
    Each {
        count: u32,
        /// That of the slab's own bars when none is named.
        bar: Option<Bar>,
        length: Length,
    },
}

phrase!(
    CornerBarsPhrase,
    "bars and length",
    "bad-corner-bars",
    "bars across corners",
    "write how many and how long, `2 bars, 4 ft long` of the size the slab has, or `2 no. 4, 4 ft long`; or `none`",
    |said| {
        if said.is("none") {
            return Ok(Self::None);
        }
        let (many, long) = said.halves(",")?;
        let (count, bar) = many.halves(" ")?;
        let count = said.need(count.count(1..=12))?;
        let bar = if bar.is("bars") || bar.is("bar") {
            None
        } else {
            Some(bar.before(" bars").unwrap_or(bar).read()?)
        };
        let length = said.need(long.before(" long"))?.positive()?;
        Ok(Self::Each { count, bar, length })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_how_many_bars_of_which_size_and_length() {
        #[track_caller]
        fn case(text: &str, count: u32, bar: Option<Bar>) {
            let length = Length::feet_whole(4);
            let wanted = CornerBarsPhrase::Each { count, bar, length };
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        case("2 bars, 4 ft long", 2, None);
        case("1 bar, 48 in long", 1, None);
        case("3 no. 4, 4 ft long", 3, Some(Bar::No4));
        assert_eq!("none".parse(), Ok(CornerBarsPhrase::None));
        let others = [
            "2 bars",
            "bars, 4 ft long",
            "2 bars, 4 ft",
            "0 bars, 4 ft long",
        ];
        refused::<CornerBarsPhrase>("bad-corner-bars", &others);
    }
}
