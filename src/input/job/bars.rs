//! The bars of a slab: those that run east-west, those that run north-south.

use std::fmt;

use crate::input::phrases::BarsPhrase;
use crate::input::sections::EdgeBars;
use crate::reading::{At, Place};
use crate::tables::bars::Bar;
use crate::values::Length;

#[derive(Clone, Debug)]
pub struct Bars {
    pub east_west: Option<Layer>,
    pub north_south: Option<Layer>,
}

/// Bars across each corner that turns into the slab.
#[derive(Clone, Debug)]
pub struct CornerBars {
    pub bars: At<EdgeBars>,
    pub length: Length,
}

/// Bars of one size that all run one way.
#[derive(Clone, Debug)]
pub struct Layer {
    pub bar: Bar,
    /// The most from bar to bar.
    pub spacing: At<Length>,
}

impl Bars {
    /// `None` for a slab without bars.
    pub fn of(phrase: BarsPhrase, place: Place) -> Option<Self> {
        let layer = |(bar, value): (Bar, Length)| Layer {
            bar,
            spacing: At { value, place },
        };
        match phrase {
            BarsPhrase::None => None,
            BarsPhrase::Both { bar, spacing } => Some(Self {
                east_west: Some(layer((bar, spacing))),
                north_south: Some(layer((bar, spacing))),
            }),
            BarsPhrase::Ways {
                east_west,
                north_south,
            } => Some(Self {
                east_west: east_west.map(layer),
                north_south: north_south.map(layer),
            }),
        }
    }

    /// The layers there are, one or two.
    pub fn layers(&self) -> impl Iterator<Item = &Layer> {
        self.east_west.iter().chain(&self.north_south)
    }

    /// Every size in it, thinnest first.
    pub fn sizes(&self) -> Vec<Bar> {
        let mut sizes: Vec<Bar> = self.layers().map(|layer| layer.bar).collect();
        sizes.sort();
        sizes.dedup();
        sizes
    }

    /// The layer that stands for both, where both ways are alike.
    pub fn alike(&self) -> Option<&Layer> {
        match (&self.east_west, &self.north_south) {
            (Some(one), Some(other))
                if one.bar == other.bar && one.spacing.value == other.spacing.value =>
            {
                Some(one)
            }
            _ => None,
        }
    }
}

/// As the owner would write it.
impl fmt::Display for Bars {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let said = |layer: &Layer| format!("{} at {}", layer.bar, layer.spacing.value);
        if let Some(layer) = self.alike() {
            return out.pad(&said(layer));
        }
        let ways = [
            (&self.east_west, "east-west"),
            (&self.north_south, "north-south"),
        ];
        let parts: Vec<String> = ways
            .into_iter()
            .filter_map(|(layer, way)| layer.as_ref().map(|layer| format!("{} {way}", said(layer))))
            .collect();
        out.pad(&parts.join(" and "))
    }
}
