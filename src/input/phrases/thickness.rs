//! `4 in`, or `4 in to 6 in north`: one thickness, or thicker toward one end.

use std::str::FromStr;

use crate::geometry::Compass;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ThicknessPhrase {
    /// The thickness, or the thin end.
    pub thin: Length,
    /// The thick end, and where it lies, if that was said.
    pub thick: Option<(Length, Option<Compass>)>,
}

impl FromStr for ThicknessPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let Some((first, rest)) = text.split_once(" to ") else {
            return Ok(Self {
                thin: super::positive(text)?,
                thick: None,
            });
        };
        let rest = rest.trim();
        let toward = Compass::ALL
            .into_iter()
            .find(|side| rest.ends_with(side.name()));
        let last = toward.map_or(rest, |side| rest.trim_end_matches(side.name()));
        let (from, to) = (super::positive(first)?, super::positive(last)?);
        // Written from thick to thin, the direction names the thin end.
        Ok(match from.cmp(&to) {
            std::cmp::Ordering::Less => Self {
                thin: from,
                thick: Some((to, toward)),
            },
            std::cmp::Ordering::Equal => Self {
                thin: from,
                thick: None,
            },
            std::cmp::Ordering::Greater => Self {
                thin: to,
                thick: Some((from, toward.map(Compass::opposite))),
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_one_thickness_or_two_ends() {
        #[track_caller]
        fn case(text: &str, thin: i64, thick: Option<(i64, Option<Compass>)>) {
            let wanted = ThicknessPhrase {
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
        for text in ["4 to 6 in", "4 in to", "4 in to 6 in up", "0 in to 4 in"] {
            assert!(text.parse::<ThicknessPhrase>().is_err(), "{text}");
        }
    }
}
