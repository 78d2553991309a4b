//! `3 risers of 7 in, 12 in treads, 5 ft wide, from south edge`: a flight of steps; and what is below a stoop.

use std::str::FromStr;

use crate::geometry::Compass;
use crate::values::{Length, Unreadable};

/// A flight that leads down from an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StepsPhrase {
    pub risers: Risers,
    pub rise: Length,
    /// Left out where a single riser has no tread of its own.
    pub tread: Option<Length>,
    /// As wide as the edge when left out.
    pub width: Option<Length>,
    pub edge: Compass,
    /// Distance of its nearer side from the named end of the edge; in the middle when left out.
    pub from: Option<(Length, Compass)>,
    /// As measured from bottom to top.
    pub total: Option<Length>,
}

/// How many risers: 1 to 20.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Risers(pub u32);

/// Where a flight lies along its edge: `1 ft from west end`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FromEnd {
    pub offset: Length,
    pub end: Compass,
}

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

impl FromStr for Risers {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let number = text.trim().parse().ok().filter(|n| (1..=20).contains(n));
        number.map(Self).ok_or_else(|| {
            Unreadable::new(
                "bad-steps",
                format!("`{}` is not a number of risers", text.trim()),
                "write a whole number from 1 to 20; the step up onto the slab counts",
            )
        })
    }
}

impl FromStr for FromEnd {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-steps",
                format!("cannot read `{text}` as a place along the edge"),
                "write, for example, `1 ft from west end`",
            )
        };
        let end = text.trim().strip_suffix(" end").ok_or_else(refuse)?;
        let (offset, end) = if let Some(end) = end.strip_prefix("from ") {
            (Length::ZERO, end)
        } else {
            let (offset, end) = end.split_once(" from ").ok_or_else(refuse)?;
            (offset.parse()?, end)
        };
        Ok(Self {
            offset,
            end: end.parse()?,
        })
    }
}

impl FromStr for StepsPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-steps",
                format!("cannot read `{text}` as steps"),
                "write risers, treads, width and edge, for example `3 risers of 7 in, 12 in treads, 5 ft wide, from south edge`",
            )
        };
        let (mut risers, mut tread, mut width, mut total) = (None, None, None, None);
        let (mut edge, mut from) = (None, None);
        for part in text.split(',').map(str::trim) {
            if let Some((count, rise)) = part
                .split_once(" risers ")
                .or_else(|| part.split_once(" riser "))
            {
                let rise = rise.trim();
                let rise = rise.strip_prefix("of ").unwrap_or(rise);
                risers = Some((count.parse::<Risers>()?, super::positive(rise)?));
            } else if let Some(deep) = part
                .strip_suffix(" treads")
                .or_else(|| part.strip_suffix(" tread"))
            {
                tread = Some(super::positive(deep)?);
            } else if let Some(wide) = part.strip_suffix(" wide") {
                width = Some(super::positive(wide)?);
            } else if let Some(high) = part.strip_suffix(" in all") {
                total = Some(super::positive(high)?);
            } else if part.ends_with(" end") {
                let place: FromEnd = part.parse()?;
                from = Some((place.offset, place.end));
            } else {
                let side = part.strip_prefix("from ").unwrap_or(part);
                let side = side.strip_suffix(" edge").ok_or_else(refuse)?;
                edge = Some(side.parse()?);
            }
        }
        let ((risers, rise), edge) = risers.zip(edge).ok_or_else(refuse)?;
        Ok(Self {
            risers,
            rise,
            tread,
            width,
            edge,
            from,
            total,
        })
    }
}

impl FromStr for StoopPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-stoop",
                format!("cannot read `{text}` as what a stoop is made of"),
                "write `solid`, or `filled, 8 in walls` for walls around fill; `filled with crushed stone, 8 in walls` buys it",
            )
        };
        match text.trim() {
            "none" | "no" => return Ok(Self::None),
            "solid" => return Ok(Self::Solid),
            _ => {}
        }
        let (filled, walls) = text.split_once(',').ok_or_else(refuse)?;
        let walls = walls.trim().strip_suffix(" walls").ok_or_else(refuse)?;
        let with = match filled.trim().strip_prefix("filled") {
            Some("") => None,
            Some(with) => Some(
                with.strip_prefix(" with ")
                    .ok_or_else(refuse)?
                    .trim()
                    .to_owned(),
            ),
            None => return Err(refuse()),
        };
        Ok(Self::Filled {
            walls: super::positive(walls)?,
            with,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_a_flight_as_it_is_said() {
        let inches = Length::inches_whole;
        let wanted = StepsPhrase {
            risers: Risers(3),
            rise: inches(7),
            tread: Some(inches(12)),
            width: Some(Length::feet_whole(5)),
            edge: Compass::South,
            from: None,
            total: None,
        };
        for text in [
            "3 risers of 7 in, 12 in treads, 5 ft wide, from south edge",
            "3 risers 7 in, 12 in treads, 5 ft wide, south edge",
        ] {
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        let text = "1 riser of 7 in, west edge, 2 ft from north end, 7 1/2 in in all";
        let read: StepsPhrase = text.parse().unwrap();
        assert_eq!(read.risers, Risers(1));
        assert_eq!(read.from, Some((Length::feet_whole(2), Compass::North)));
        assert_eq!(read.total, Some("7.5 in".parse().unwrap()));
    }

    #[test]
    fn refuses_half_a_flight() {
        for text in [
            "3 risers of 7 in, 12 in treads",
            "12 in treads, south edge",
            "0 risers of 7 in, south edge",
            "21 risers of 7 in, south edge",
            "3 risers of 7, south edge",
            "3 risers of 7 in, up",
        ] {
            assert!(text.parse::<StepsPhrase>().is_err(), "{text}");
        }
    }

    #[test]
    fn reads_what_a_stoop_is_made_of() {
        assert_eq!("solid".parse(), Ok(StoopPhrase::Solid));
        let walls = Length::inches_whole(8);
        for (text, with) in [
            ("filled, 8 in walls", None),
            (
                "filled with crushed stone, 8 in walls",
                Some("crushed stone".to_owned()),
            ),
        ] {
            assert_eq!(
                text.parse(),
                Ok(StoopPhrase::Filled { walls, with }),
                "{text}"
            );
        }
        for text in [
            "hollow",
            "filled",
            "filled, 8 in",
            "filled, 8 walls",
            "filled stone, 8 in walls",
        ] {
            assert!(text.parse::<StoopPhrase>().is_err(), "{text}");
        }
    }
}
