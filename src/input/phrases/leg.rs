//! `west 16 ft, bulge 18 in, against house`: one side of an outline, as walked.

use super::reader::phrase;
use super::side::Along;
use crate::geometry::{Direction, Leg};
use crate::values::Length;

#[derive(Clone, Debug)]
pub struct LegPhrase {
    pub way: Course,
    pub along: Along,
}

/// Where a side goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Course {
    Toward(Direction, Length),
    /// Straight to the first corner, however far that is.
    BackToStart,
}

impl LegPhrase {
    /// The leg to walk; none for the way back, whose length follows from the others.
    pub fn leg(&self) -> Option<Leg> {
        match self.way {
            Course::Toward(direction, length) => Some(Leg {
                direction,
                length,
                bulge: self.along.bulge,
            }),
            Course::BackToStart => None,
        }
    }
}

phrase!(
    LegPhrase,
    "side",
    "bad-leg",
    "a side",
    "write direction and length, for example `east 24 ft`, `west 16 ft, bulge 18 in` or `north 20 ft, against house`; the last side may be `back to start`",
    |said| {
        let parts = said.parts(&[","]);
        let (first, along) = parts.split_first().expect("a phrase has a part");
        let way = if first.is("back to start") {
            Course::BackToStart
        } else {
            let (direction, length) = first.halves(" ")?;
            Course::Toward(direction.read()?, length.positive()?)
        };
        let along = Along::read(along)?;
        Ok(LegPhrase { way, along })
    }
);

#[cfg(test)]
mod tests {
    use super::super::EdgeKind;
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn the_comma_of_a_doweled_edge_belongs_to_it() {
        let against = |text: &str| text.parse::<LegPhrase>().unwrap().along.against;
        let doweled = Some(EdgeKind::DoweledExisting);
        assert_eq!(
            against("east 8 ft, against existing concrete, doweled"),
            doweled
        );
        assert_eq!(
            against("east 8 ft, existing concrete, doweled, bulge 3 in"),
            doweled
        );
        assert_eq!(against("east 8 ft, against house"), Some(EdgeKind::House));
        assert_eq!(against("east 8 ft"), None);
        refused::<LegPhrase>("unknown-edge", &["east 8 ft, doweled"]);
        let twice = [
            "east 8 ft, bulge 3 in, bulge in 3 in",
            "east 8 ft, existing concrete, doweled, curb",
        ];
        refused::<LegPhrase>("said-twice", &twice);
    }

    #[test]
    fn a_curve_below_zero_is_told_how_to_go_in() {
        let error = "east 8 ft, bulge -14 in".parse::<LegPhrase>().unwrap_err();
        assert!(format!("{error:?}").contains("bulge in 14 in"), "{error:?}");
    }
}
