//! `1/4 in per ft south`: how steeply a surface sheds water, and where to.

use std::str::FromStr;

use super::Slope;
use crate::geometry::Compass;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FallPhrase {
    Level,
    /// Rise for each foot of run.
    PerFoot {
        rise: Length,
        toward: Option<Compass>,
    },
}

impl FromStr for FallPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "level" {
            return Ok(Self::Level);
        }
        let refuse = || {
            Unreadable::new(
                "bad-fall",
                format!("cannot read `{text}` as a fall"),
                "write `1/4 in per ft`, `1/4 in per ft south`, `1:48`, `2% east` or `level`",
            )
        };
        let (steep, toward) = match text.trim().rsplit_once(' ') {
            Some((steep, side)) if side != "ft" => {
                (steep, Some(side.parse().map_err(|_| refuse())?))
            }
            _ => (text, None),
        };
        let rise = match steep.trim().strip_suffix(" per ft") {
            Some(rise) => rise.parse()?,
            None => steep.parse::<Slope>().map_err(|_| refuse())?.in_a_foot(),
        };
        Ok(Self::PerFoot { rise, toward })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fall_is_written_as_it_is_said() {
        #[track_caller]
        fn case(text: &str, rise: &str, toward: Option<Compass>) {
            let rise = rise.parse().unwrap();
            let read: FallPhrase = text.parse().unwrap();
            assert_eq!(read, FallPhrase::PerFoot { rise, toward }, "{text}");
        }
        case("1/4 in per ft", "1/4 in", None);
        case("1/4 in per ft south", "1/4 in", Some(Compass::South));
        case("1:48", "1/4 in", None);
        case("1:48 south", "1/4 in", Some(Compass::South));
        case("2% east", "0.24 in", Some(Compass::East));
        assert_eq!("level".parse::<FallPhrase>().unwrap(), FallPhrase::Level);
        for text in ["1/4 in", "1/4 in per ft up", "48", "1:0 south", "south"] {
            assert!(text.parse::<FallPhrase>().is_err(), "{text}");
        }
    }
}
