//! Contraction joints: where a finisher would cut a slab.

mod layout;

pub use layout::{Asked, Break, Fault, Layout, Line, Meet, Panel};

use super::panels::panels;
use crate::values::Length;

/// The best joint layout found, and what it does not keep.
pub fn lay_out(asked: &Asked<'_>) -> Layout {
    let grid = panels(asked.outline, asked.longest);
    let line = |(from, to)| Line {
        from,
        to,
        bulge: Length::ZERO,
    };
    let panel = |panel: &super::panels::Panel| {
        let corner = |x, y| super::Point::new(x, y);
        let (low, high) = (panel.low, panel.high);
        let corners = [low, corner(high.x, low.y), high, corner(low.x, high.y)];
        let (long, short) = (
            panel.size.0.max(panel.size.1),
            panel.size.0.min(panel.size.1),
        );
        Panel {
            sides: (0..4)
                .map(|i| line((corners[i], corners[(i + 1) % 4])))
                .collect(),
            holes: Vec::new(),
            size: (long, short),
            area: panel.area,
            ratio: long.feet() / short.feet(),
        }
    };
    Layout {
        lines: grid.lines.iter().copied().map(line).collect(),
        length: grid.length,
        panels: grid.panels.iter().map(panel).collect(),
        breaks: Vec::new(),
    }
}
