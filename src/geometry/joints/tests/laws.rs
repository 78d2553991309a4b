//! What holds for any slab.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::super::{Layout, Line};
use super::gallery::{Slab, at, gallery, rectangle, slab};
use crate::geometry::Outline;

fn areas(layout: &Layout) -> Decimal {
    layout.panels.iter().map(|panel| panel.area).sum()
}

#[test]
fn what_is_solid_at_the_rim_is_no_part_of_any_panel() {
    let slab = gallery()
        .into_iter()
        .find(|slab| slab.name == "patio with a stoop")
        .unwrap();
    let layout = slab.laid_out();
    assert!(
        (areas(&layout) - dec!(312)).abs() < dec!(0.000001),
        "{}",
        areas(&layout)
    );
}
