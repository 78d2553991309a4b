//! `bulge 18 in, against house`: what is said of a side beside where it goes.

use crate::input::job::EdgeKind;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, Default)]
pub struct Along {
    /// Positive outward, negative inward.
    pub bulge: Length,
    pub against: Option<EdgeKind>,
}

impl Along {
    /// Reads the parts that follow where the side goes, in any order.
    pub(super) fn read<'a>(parts: impl Iterator<Item = &'a str>) -> Result<Self, Unreadable> {
        let mut along = Self::default();
        let mut against: Option<String> = None;
        for part in parts {
            if let Some(inward) = part.strip_prefix("bulge -") {
                return Err(Unreadable::new(
                    "bad-leg",
                    format!("cannot read `{part}` as a curve"),
                    format!(
                        "for a curve that goes into the slab write `bulge in {}`",
                        inward.trim()
                    ),
                ));
            } else if let Some(inward) = part.strip_prefix("bulge in ") {
                along.bulge = -super::size::positive(inward)?;
            } else if let Some(outward) = part.strip_prefix("bulge ") {
                along.bulge = super::size::positive(outward)?;
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
        along.against = against.map(|edge| edge.parse()).transpose()?;
        Ok(along)
    }
}
