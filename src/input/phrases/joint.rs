//! `8 ft from west`, `3 ft from the west end of the south side`: joints as an owner points at them.

use super::reader::{Said, phrase};
use super::{EdgeName, FromEnd, SpotPhrase};
use crate::geometry::Compass;
use crate::values::Length;

/// A joint where its owner wants it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointPhrase {
    /// Through the whole slab, so far from its outermost point on that side.
    Across { far: Length, side: Compass },
    /// From one place to another.
    Between { from: SpotPhrase, to: SpotPhrase },
}

phrase!(
    JointPhrase,
    "place of a joint",
    "bad-joint",
    "a joint",
    "write how far it is from a side, `8 ft from west`, or where it begins and ends, `from 0 ft from west and 6 ft from south to 8 ft from west and 6 ft from south`",
    |said| {
        if let Some(between) = said.after("from ") {
            let (from, to) = between.halves(" to ")?;
            return Ok(JointPhrase::Between {
                from: SpotPhrase::said(from, Said::read)?,
                to: SpotPhrase::said(to, Said::read)?,
            });
        }
        let (far, side) = said.halves(" from ")?;
        let side = [" side", " edge"]
            .into_iter()
            .find_map(|last| side.before(last))
            .unwrap_or(side);
        Ok(JointPhrase::Across {
            far: far.positive()?,
            side: side.without("the ").read()?,
        })
    }
);

/// Where a joint of what stays ends at an edge of the slab.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MatchPhrase {
    pub edge: EdgeName,
    pub from: FromEnd,
}

phrase!(
    MatchPhrase,
    "place along an edge",
    "bad-joint",
    "where a joint ends at an edge",
    "write the edge and how far along it, for example `south edge, 3 ft from west end`",
    |said| {
        let (from, edge) = match said.split(",") {
            Some((edge, from)) => (from, edge),
            None => said.halves(" of ")?,
        };
        Ok(MatchPhrase {
            edge: edge.without("the ").read()?,
            from: FromEnd::said(from)?,
        })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_a_joint_through_the_slab_and_one_from_place_to_place() {
        let far = Length::feet_whole(8);
        let across = JointPhrase::Across {
            far,
            side: Compass::West,
        };
        for text in [
            "8 ft from west",
            "8 ft from the west",
            "8 ft from the west side",
        ] {
            assert_eq!(text.parse(), Ok(across), "{text}");
        }
        let place = |east, north| SpotPhrase {
            east_west: (Length::feet_whole(east), Compass::West),
            north_south: (Length::feet_whole(north), Compass::South),
        };
        let between = JointPhrase::Between {
            from: place(0, 6),
            to: place(8, 6),
        };
        let text = "from 0 ft from west and 6 ft from south to 6 ft from south and 8 ft from west";
        assert_eq!(text.parse(), Ok(between));
        let others = ["8 ft", "from 8 ft from west and 2 ft from south", "west"];
        refused::<JointPhrase>("bad-joint", &others);
        refused::<JointPhrase>("bad-direction", &["8 ft from the house"]);
    }

    #[test]
    fn reads_where_a_joint_of_what_stays_ends() {
        let found: MatchPhrase = "south edge, 3 ft from west end".parse().unwrap();
        assert_eq!(found.edge, "south".parse().unwrap());
        assert_eq!(found.from, "3 ft from west end".parse().unwrap());
        let long = "3 ft from the west end of the south side";
        assert_eq!(long.parse(), Ok(found));
        refused::<MatchPhrase>("bad-joint", &["3 ft from west", "south edge, west"]);
        refused::<MatchPhrase>("bad-edges", &["garden edge, 3 ft from west end"]);
    }
}
