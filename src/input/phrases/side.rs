//! `bulge 18 in, against house`: what is said of a side beside where it goes.

use super::EdgeKind;
use super::reader::Said;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, Default)]
pub struct Along {
    /// Positive outward, negative inward.
    pub bulge: Length,
    pub against: Option<EdgeKind>,
}

impl Along {
    /// Reads the parts that follow where the side goes, in any order.
    pub(super) fn read(parts: &[Said<'_>]) -> Result<Self, Unreadable> {
        let (mut bulge, mut against) = (None, None::<String>);
        for part in parts {
            if let Some(inward) = part.after("bulge -") {
                return Err(Unreadable::new(
                    "bad-leg",
                    format!("cannot read `{}` as a curve", part.text()),
                    format!(
                        "for a curve that goes into the slab write `bulge in {}`",
                        inward.text()
                    ),
                ));
            } else if let Some(inward) = part.after("bulge in ") {
                part.once("how far it bulges", &mut bulge, -inward.positive()?)?;
            } else if let Some(outward) = part.after("bulge ") {
                part.once("how far it bulges", &mut bulge, outward.positive()?)?;
            } else if let (Some(edge), "doweled" | "dowelled" | "tied") =
                (&mut against, part.text())
            {
                // `existing concrete, doweled` is one edge, comma and all.
                *edge = format!("{edge}, {}", part.text());
            } else {
                let edge = part.without("against ").text().to_owned();
                part.once("what it stands against", &mut against, edge)?;
            }
        }
        Ok(Self {
            bulge: bulge.unwrap_or(Length::ZERO),
            against: against.map(|edge| edge.parse()).transpose()?,
        })
    }
}
