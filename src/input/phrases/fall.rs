//! `1/4 in per ft south`: how steeply a surface sheds water, and where to.

use super::Slope;
use super::reader::phrase;
use crate::geometry::Compass;
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FallPhrase {
    Level,
    /// Rise for each foot of run.
    PerFoot {
        rise: Length,
        toward: Option<Compass>,
    },
}

phrase!(
    FallPhrase,
    "slope",
    "bad-fall",
    "a fall",
    "write `1/4 in per ft`, `1/4 in per ft south`, `1:48`, `2% east` or `level`",
    |said| {
        if said.is("level") {
            return Ok(FallPhrase::Level);
        }
        let (steep, toward) = said.toward("which way it falls")?;
        let rise = match steep.before(" per ft") {
            Some(rise) => rise.read()?,
            None => said.need(steep.read::<Slope>().ok())?.in_a_foot(),
        };
        Ok(FallPhrase::PerFoot { rise, toward })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
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
        let others = ["1/4 in", "1/4 in per ft up", "48", "1:0 south", "south"];
        refused::<FallPhrase>("bad-fall", &others);
        refused::<FallPhrase>("said-twice", &["2% east south"]);
    }
}
