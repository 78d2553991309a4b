//! `4 in`, or `4 in to 6 in north`: one thickness, or thicker toward one end.

use std::cmp::Ordering;

use super::reader::phrase;
use crate::geometry::Compass;
use crate::values::Length;

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

phrase!(
    Thickness,
    "length",
    "bad-thickness",
    "a thickness",
    "write `4 in`, or two ends and where the second lies, for example `4 in to 6 in north`",
    |said| {
        let (from, to) = match said.parts(&[" to "])[..] {
            [from, to] => (from, to),
            [_, .., again] => return Err(again.twice("how thick the other end is")),
            _ => return said.positive().map(Thickness::even),
        };
        let (to, toward) = to.toward("where that end lies")?;
        let (from, to) = (from.positive()?, to.positive()?);
        // Written from thick to thin, the direction names the thin end.
        let (thin, thick, toward) = match from.cmp(&to) {
            Ordering::Less => (from, to, toward),
            Ordering::Greater => (to, from, toward.map(Compass::opposite)),
            // No end is thicker, so none can lie toward a side.
            Ordering::Equal if toward.is_some() => return Err(said.refuse()),
            Ordering::Equal => return Ok(Thickness::even(from)),
        };
        let thick = Some((thick, toward));
        Ok(Thickness { thin, thick })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
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
    fn refuses_an_end_without_a_unit_and_a_part_too_many() {
        refused::<Thickness>("length-without-unit", &["4 to 6 in"]);
        refused::<Thickness>("not-above-zero", &["0 in to 4 in"]);
        let others = ["4 in to", "4 in to 6 in up", "4 in to 6 in northnorth"];
        refused::<Thickness>("bad-length", &others);
        let twice = ["4 in to 6 in to 8 in", "4 in to 6 in north south"];
        refused::<Thickness>("said-twice", &twice);
        refused::<Thickness>("bad-thickness", &["4 in to 4 in north"]);
    }
}
