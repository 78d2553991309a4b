//! `1/4 in per ft south`: how steeply a surface sheds water, and where to; one fall, or one for each part.

use super::Slope;
use super::reader::phrase;
use crate::geometry::Compass;
use crate::reading::{At, Fields, Problem, Problems, Read};
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FallPhrase {
    Level,
    /// Rise for each foot of run.
    PerFoot {
        rise: Length,
        to: FallTo,
    },
}

/// Where water runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FallTo {
    Unsaid,
    Side(Compass),
    /// A box of the slab.
    Drain(String),
}

impl FallTo {
    /// The side, where it is one.
    pub const fn side(&self) -> Option<Compass> {
        match self {
            Self::Side(side) => Some(*side),
            Self::Unsaid | Self::Drain(_) => None,
        }
    }
}

const HELP: &str = "write `1/4 in per ft`, `1/4 in per ft south`, `1:48`, `2% east`, `1/4 in per ft to floor drain` or `level`; one for each part is `{by the house: 1/4 in per ft south, by the gate: 1/8 in per ft east}`";

phrase!(FallPhrase, "slope", "bad-fall", "a fall", HELP, |said| {
    if said.is("level") {
        return Ok(FallPhrase::Level);
    }
    let (steep, to) = if let Some((steep, drain)) = said.split(" to ") {
        (steep, FallTo::Drain(drain.text().to_owned()))
    } else {
        let (steep, side) = said.toward("which way it falls")?;
        (steep, side.map_or(FallTo::Unsaid, FallTo::Side))
    };
    let rise = match steep.before(" per ft") {
        // A second fall in the same words is no length.
        Some(rise) => said
            .need((!rise.text().contains(" per ft")).then_some(rise))?
            .read()?,
        None => said.need(steep.read::<Slope>().ok())?.in_a_foot(),
    };
    Ok(FallPhrase::PerFoot { rise, to })
});

/// Every fall of a slab, with the owner's words for the part that has it.
#[derive(Clone, Debug)]
pub struct Falls(pub Vec<(Option<String>, At<FallPhrase>)>);

/// One fall, or one for each part of the slab.
pub fn falls(
    slab: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<Falls>>> {
    let Some(node) = slab.node(key) else {
        return Ok(None);
    };
    if node.is_list() {
        let message = "`fall` is a list, which does not say whose fall each is";
        let problem = Problem::new("bad-fall", message).at(node.place);
        return Err(problems.push(problem.help(HELP)));
    }
    if !node.is_map() {
        let fall: At<FallPhrase> = node.read_at(problems)?;
        let place = fall.place;
        return Ok(Some(At::new(Falls(vec![(None, fall)]), place)));
    }
    let mut found = Vec::new();
    for entry in node.entries("`fall`", problems) {
        found.push((Some(entry.key.clone()), entry.node.read_at(problems)?));
    }
    Ok(Some(At::new(Falls(found), node.heading)))
}

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
            let to = toward.map_or(FallTo::Unsaid, FallTo::Side);
            assert_eq!(read, FallPhrase::PerFoot { rise, to }, "{text}");
        }
        case("1/4 in per ft", "1/4 in", None);
        case("1/4 in per ft south", "1/4 in", Some(Compass::South));
        case("1:48", "1/4 in", None);
        case("1:48 south", "1/4 in", Some(Compass::South));
        case("2% east", "0.24 in", Some(Compass::East));
        let to = FallTo::Drain("floor drain".to_owned());
        let rise = "1/4 in".parse().unwrap();
        let drain = "1/4 in per ft to floor drain".parse::<FallPhrase>();
        assert_eq!(drain.unwrap(), FallPhrase::PerFoot { rise, to });
        assert_eq!("level".parse::<FallPhrase>().unwrap(), FallPhrase::Level);
        let two = "1/4 in per ft south and 1/8 in per ft east";
        let others = [
            "1/4 in",
            "1/4 in per ft up",
            "48",
            "1:0 south",
            "south",
            two,
        ];
        refused::<FallPhrase>("bad-fall", &others);
        refused::<FallPhrase>("said-twice", &["2% east south"]);
    }
}
