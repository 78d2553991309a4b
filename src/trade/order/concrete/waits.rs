//! What the last truck does: yards that wait for a call, yards that come back.

use super::{Batch, Yards};
use crate::input::book::Supply;
use crate::input::job::Takeoff;
use crate::trade::tally::Tally;
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// The part of an order that waits for a call, and the rest.
#[derive(Clone, Debug)]
pub struct Held {
    pub firm: Quantity,
    pub on_call: Quantity,
}

/// What the takeoff holds back of the largest order of each pour, and no more than is ordered.
pub(super) fn hold_back(
    batches: &[Batch<'_>],
    sized: &[Yards],
    takeoff: &Takeoff,
    tallies: &[Tally<'_>],
) -> Vec<Option<Held>> {
    let mut held: Vec<Option<Held>> = batches.iter().map(|_| None).collect();
    let Some(back) = &takeoff.head.hold_back else {
        return held;
    };
    let back = Quantity::said("hold back", back);
    if back.value().is_zero() {
        return held;
    }
    for (placement, _) in takeoff.pours() {
        let of_pour = (0..batches.len())
            .filter(|&i| batches[i].placement == placement)
            .filter(|&i| sized[i].bags.is_none());
        let Some(largest) = of_pour.max_by_key(|&i| sized[i].order.value()) else {
            continue;
        };
        let (order, tally) = (&sized[largest].order, &tallies[largest]);
        if order.value().is_zero() {
            continue;
        }
        let waits = if back.value() <= order.value() {
            of(&back)
        } else {
            of(order)
        };
        let on_call = tally.between(
            "what the takeoff holds back, and no more than is ordered",
            "on call",
            Unit::CubicYard,
            waits,
        );
        let firm = Quantity::by(
            "ordered − on call",
            tally.name("firm"),
            Unit::CubicYard,
            of(order) - &on_call,
        );
        held[largest] = Some(Held { firm, on_call });
    }
    held
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
