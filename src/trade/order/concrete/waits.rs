//! What the last truck does: yards that wait for a call, yards that come back.

use super::ConcreteOrder;
use super::loads::load;
use crate::input::book::Supply;
use crate::input::job::Takeoff;
use crate::trade::tally::Tally;
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Splits the last load of the largest order of each pour; price and trucks stay what they are.
pub(super) fn hold_back(
    orders: &mut [ConcreteOrder],
    takeoff: &Takeoff,
    supply: &Supply,
    tallies: &mut [Tally<'_>],
) {
    let Some(back) = &takeoff.head.hold_back else {
        return;
    };
    let back = Quantity::said("hold back", back);
    if back.value().is_zero() {
        return;
    }
    for (placement, _) in takeoff.pours() {
        let largest = orders
            .iter_mut()
            .zip(&mut *tallies)
            .filter(|(order, _)| order.placement == placement)
            .max_by_key(|(order, _)| order.order.value());
        let Some((order, tally)) = largest else {
            continue;
        };
        let Some(last) = order.loads.last().copied() else {
            continue;
        };
        let waits = if back.value() <= last {
            of(&back)
        } else {
            of(&load(last, &order.order, supply))
        };
        let waits = tally.between(
            "what the takeoff holds back, and no more than the last load",
            "on call",
            Unit::CubicYard,
            waits,
        );
        let firm = Quantity::by(
            "ordered − on call",
            tally.name("firm"),
            Unit::CubicYard,
            of(&order.order) - &waits,
        );
        tally.list([&firm, &waits]);
        order.on_call = Some(waits);
    }
}

/// What comes back beyond the free yards when the slabs take no more than was drawn.
pub(super) fn back(
    order: &Quantity,
    net: &Quantity,
    prime: Option<&Quantity>,
    supply: &Supply,
    tally: &Tally<'_>,
) -> Option<Quantity> {
    let returned = supply.charges.returned.as_ref()?;
    let over = Quantity::said("comes back free", &returned.over);
    let mut rest = of(order) - net;
    if let Some(prime) = prime {
        rest = rest - prime;
    }
    let rest = rest - &over;
    if rest.value() <= rust_decimal::Decimal::ZERO {
        return None;
    }
    Some(tally.between(
        "ordered − net − what comes back free; the owner's guess that nothing is lost",
        "coming back",
        Unit::CubicYard,
        rest,
    ))
}
