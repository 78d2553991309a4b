//! Welded wire: strip by strip on rectangles, else area over what a sheet covers net.
//!
//! On a rectangle with openings whole sheets are laid and cut out, so none is saved.

use rust_decimal::Decimal;

use crate::input::book::{MeshStock, Rules};
use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::trade::term::{number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Length, Unit};

/// Whole sheets or rolls.
pub(super) fn measure(
    slab: &Slab,
    policy: &OrderPolicy,
    rules: &Rules,
    area: &Quantity,
) -> Option<Quantity> {
    let style = slab.mesh.as_ref()?;
    let stock = rules.mesh.get(&style.value)?;
    let name = format!("{} mesh", slab.key);
    // A 6 in lap on a 5 ft sheet leaves 4.5 ft, so divide by the net width; adding 10% is too little.
    let (width, length) = (
        (stock.width.value - stock.lap.value).in_feet(),
        (stock.length.value - stock.lap.value).in_feet(),
    );
    let net = |name: &str, amount, place| {
        Quantity::new(
            name,
            amount,
            Working::Shape {
                how: format!("less one lap of {}", stock.lap.value),
                place,
            },
        )
    };
    let net_width = net("net width", width, stock.width.place);
    let net_length = net("net length", length, stock.length.place);
    let by_area = Quantity::by(
        "area ÷ net cover, laps taken off",
        name.clone(),
        Unit::Sheet,
        (of(area) / (of(&net_width) * &net_length)).whole(),
    );
    let Some((east_west, north_south)) = slab.outline.is_rectangle() else {
        return Some(by_area);
    };
    let one_way = strips(east_west, north_south, policy.cover.value, stock);
    let other_way = strips(north_south, east_west, policy.cover.value, stock);
    let (across, along) = if one_way.0 * one_way.1 <= other_way.0 * other_way.1 {
        one_way
    } else {
        other_way
    };
    let by_strips = Quantity::by(
        "strips × sheets in a strip, laps taken off",
        name,
        Unit::Sheet,
        number(across) * number(along),
    );
    Some(if by_area.value() <= by_strips.value() {
        by_strips
    } else {
        by_area
    })
}

/// Strips side by side across `across`, and sheets end to end along `along`.
fn strips(across: Length, along: Length, cover: Length, stock: &MeshStock) -> (Decimal, Decimal) {
    let count = |room: Length, sheet: Length| {
        let (room, net) = (
            (room - cover * 2 - stock.lap.value).as_nanometres(),
            (sheet - stock.lap.value).as_nanometres(),
        );
        Decimal::from(((room + net - 1) / net).max(1))
    };
    (
        count(across, stock.width.value),
        count(along, stock.length.value),
    )
}
