//! `filled, 8 in walls`: what carries the top of a stoop.

use super::reader::phrase;
use crate::values::Length;

/// What carries the top of a stoop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoopPhrase {
    /// The slab lies on the ground, and only its steps go down.
    None,
    /// One block of concrete, as high as its steps.
    Solid,
    /// Walls around fill, and the slab on top of both; soil of the site when no material is named.
    Filled { walls: Length, with: Option<String> },
}

phrase!(
    StoopPhrase,
    "words",
    "bad-stoop",
    "what a stoop is made of",
    "write `solid`, or `filled, 8 in walls` for walls around fill; `filled with crushed stone, 8 in walls` buys it",
    |said| {
        match said.text() {
            "none" | "no" => return Ok(StoopPhrase::None),
            "solid" => return Ok(StoopPhrase::Solid),
            _ => {}
        }
        let (filled, walls) = said.halves(",")?;
        let walls = said.need(walls.before(" walls"))?;
        let with = if filled.is("filled") {
            None
        } else {
            let with = said.need(filled.after("filled with "))?;
            Some(with.text().to_owned())
        };
        Ok(StoopPhrase::Filled {
            walls: walls.positive()?,
            with,
        })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_what_a_stoop_is_made_of() {
        assert_eq!("solid".parse(), Ok(StoopPhrase::Solid));
        let walls = Length::inches_whole(8);
        let stone = Some("crushed stone".to_owned());
        for (text, with) in [
            ("filled, 8 in walls", None),
            ("filled with crushed stone, 8 in walls", stone),
        ] {
            let wanted = StoopPhrase::Filled { walls, with };
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        let others = [
            "hollow",
            "filled",
            "filled, 8 in",
            "filled stone, 8 in walls",
        ];
        refused::<StoopPhrase>("bad-stoop", &others);
        refused::<StoopPhrase>("length-without-unit", &["filled, 8 walls"]);
    }
}
