//! `west 16 ft, bulge 18 in, against house`: one side of an outline, as walked.

use std::str::FromStr;

use crate::geometry::{Direction, Leg};
use crate::input::job::EdgeKind;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug)]
pub struct LegPhrase {
    pub leg: Leg,
    pub against: Option<EdgeKind>,
}

impl FromStr for LegPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let mut parts = text.split(',').map(str::trim);
        let first = parts.next().unwrap_or_default();
        let (direction, length) = first.split_once(' ').ok_or_else(|| refuse(text))?;
        let direction: Direction = direction.parse()?;
        let length = super::size::positive(length)?;
        let mut bulge = Length::ZERO;
        let mut against: Option<String> = None;
        for part in parts {
            if let Some(inward) = part.strip_prefix("bulge in ") {
                bulge = -super::size::positive(inward)?;
            } else if let Some(outward) = part.strip_prefix("bulge ") {
                bulge = super::size::positive(outward)?;
            } else {
                let part = part.strip_prefix("against ").unwrap_or(part);
                // `existing concrete, doweled` is one edge, comma and all.
                against = Some(match against {
                    Some(before) if matches!(part, "doweled" | "dowelled" | "tied") => {
                        format!("{before}, {part}")
                    }
                    _ => part.to_owned(),
                });
            }
        }
        let against = against.map(|edge| edge.parse()).transpose()?;
        Ok(Self {
            leg: Leg {
                direction,
                length,
                bulge,
            },
            against,
        })
    }
}

fn refuse(text: &str) -> Unreadable {
    Unreadable::new(
        "bad-leg",
        format!("cannot read `{text}` as a side"),
        "write direction and length, for example `east 24 ft`, `west 16 ft, bulge 18 in` or `north 20 ft, against house`",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_comma_of_a_doweled_edge_belongs_to_it() {
        let against = |text: &str| text.parse::<LegPhrase>().unwrap().against;
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
        assert!("east 8 ft, doweled".parse::<LegPhrase>().is_err());
    }
}
