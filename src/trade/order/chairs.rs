//! Which chair holds the steel of a slab where it belongs: between its middle and the cover above it.

use crate::input::book::{ItemKey, Role, Rules};
use crate::input::job::{Bars, Slab};
use crate::reading::At;
use crate::tables::cover::{CHAIR_TOLERANCE, chair_heights};
use crate::values::Length;

/// The chair that is taken for a slab.
#[derive(Clone, Debug)]
pub struct Chair {
    pub item: At<ItemKey>,
    /// As its item says it; else nobody knows where it holds the steel.
    pub height: Option<At<Length>>,
    /// The lowest and the highest that would do.
    pub wanted: (Length, Length),
}

impl Chair {
    /// How far it holds the steel too low or too high, where that is more than bars may be off.
    pub fn is_off(&self) -> Option<Length> {
        off(self.height.as_ref()?.value, self.wanted)
    }
}

/// Bars may be off downward; the concrete above them is the least there may be.
fn off(height: Length, wanted: (Length, Length)) -> Option<Length> {
    let off = outside(height, wanted);
    let may = if wanted.1 < height {
        Length::ZERO
    } else {
        CHAIR_TOLERANCE
    };
    (may < off).then_some(off)
}

/// The chair under `use`, or where that says how high it is the one of the book that is nearest to
/// what the slab wants; none where chairs are not charged or the slab has no steel.
pub fn chair(slab: &Slab, rules: &Rules) -> Option<Chair> {
    if slab.bars.is_none() && slab.mesh.is_none() {
        return None;
    }
    let usual = rules.roles.get(&Role::Chairs)?;
    let item = At::new(usual.value.clone()?, usual.place);
    let thin = slab.thickness.value.thin;
    let steel = slab.bars.iter().flat_map(Bars::layers);
    let steel = steel.fold(Length::ZERO, |sum, layer| sum + layer.bar.diameter());
    let wanted = chair_heights(thin, steel);
    let height = rules.selling.get(&item.value)?.height.clone();
    if height.is_none() {
        return Some(Chair {
            item,
            height,
            wanted,
        });
    }
    let known = rules.selling.names().filter_map(|name| {
        let height = rules.selling.get(name)?.height.clone()?;
        Some((name, height))
    });
    // Of those that do equally well the one that brings the steel nearest to its cover.
    let (name, height) = known.min_by_key(|(_, height)| {
        let high = (wanted.1 - height.value).abs();
        let is_off = off(height.value, wanted).is_some();
        (is_off, outside(height.value, wanted), high, height.value)
    })?;
    Some(Chair {
        item: At::new(name.to_owned(), usual.place),
        height: Some(height),
        wanted,
    })
}

fn outside(height: Length, (low, high): (Length, Length)) -> Length {
    (low - height).max(height - high).max(Length::ZERO)
}
