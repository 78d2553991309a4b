//! `4 in`, or `4 in to 6 in north`: one thickness, or thicker toward one end.

use std::str::FromStr;

use super::positive;
use crate::geometry::Compass;
use crate::reading::written::written;
use crate::values::{Length, Unreadable};

/// How thick a slab is, from the file to the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thickness {
    /// The thickness, or the thin end.
    pub thin: Length,
    /// The thick end, and where it lies, if that was said.
    pub thick: Option<(Length, Option<Compass>)>,
}

impl Thickness {
    pub const fn even(thin: Length) -> Self {
        Self { thin, thick: None }
    }

    /// At its thickest place.
    pub fn thickest(self) -> Length {
        self.thick.map_or(self.thin, |(thick, _)| thick)
    }
}

impl FromStr for Thickness {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let Some((first, last)) = text.split_once(" to ") else {
            return positive(text).map(Self::even);
        };
        let end = last.trim().rsplit_once(' ');
        let end = end.and_then(|(last, side)| Some((last, Some(side.parse().ok()?))));
        let (last, toward) = end.unwrap_or((last, None));
        let (from, to) = (positive(first)?, positive(last)?);
        // Written from thick to thin, the direction names the thin end.
        let (thin, thick, toward) = if from <= to {
            (from, to, toward)
        } else {
            (to, from, toward.map(Compass::opposite))
        };
        let thick = (thin < thick).then_some((thick, toward));
        Ok(Self { thin, thick })
    }
}

written! { Thickness = "length"; }

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_one_thickness_or_two_ends() {
        #[track_caller]
        fn case(text: &str, thin: i64, thick: Option<(i64, Option<Compass>)>) {
            let wanted = Thickness {
                thin: Length::inches_whole(thin),
                thick: thick.map(|(thick, toward)| (Length::inches_whole(thick), toward)),
            };
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        case("4 in", 4, None);
        case("4 in to 6 in", 4, Some((6, None)));
        case("4 in to 6 in north", 4, Some((6, Some(Compass::North))));
        case("6 in to 4 in north", 4, Some((6, Some(Compass::South))));
        case("4 in to 4 in", 4, None);
    }

    #[test]
    fn refuses_an_end_without_a_unit() {
        for text in [
            "4 to 6 in",
            "4 in to",
            "4 in to 6 in up",
            "0 in to 4 in",
            "4 in to 6 in northnorth",
        ] {
            assert!(text.parse::<Thickness>().is_err(), "{text}");
        }
    }
}
