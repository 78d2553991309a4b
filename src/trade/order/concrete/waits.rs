//! What the last truck does: yards that wait for a call, yards that come back.

use super::ConcreteOrder;
use super::loads::load;
use crate::input::book::Supply;
use crate::input::job::Takeoff;
use crate::trade::order::List;
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// An order of which a part waits until the crew sees how much is missing.
#[derive(Clone, Debug)]
pub struct OnCall {
    pub firm: Quantity,
    pub waits: Quantity,
}

/// Splits the last load of the largest order of each pour; price and trucks stay what they are.
pub(super) fn hold_back(
    orders: &mut [ConcreteOrder],
    takeoff: &Takeoff,
    supply: &Supply,
    list: &List<'_>,
) {
    let Some(back) = &takeoff.head.hold_back else {
        return;
    };
    let back = Quantity::given("hold back", back.value, back.place);
    if back.value().is_zero() {
        return;
    }
    for (placement, _) in takeoff.pours() {
        let largest = orders
            .iter_mut()
            .filter(|order| order.placement == placement)
            .max_by_key(|order| order.order.value());
        let Some(order) = largest else { continue };
        let Some(last) = order.loads.last().copied() else {
            continue;
        };
        let name = order.order.name();
        let waits = if back.value() <= last {
            of(&back)
        } else {
            of(&load(last, &order.order, supply))
        };
        let waits = list.sets.settle(Quantity::by(
            "what the takeoff holds back, and no more than the last load",
            format!("{name} on call"),
            Unit::CubicYard,
            waits,
        ));
        let firm = Quantity::by(
            "ordered − on call",
            format!("{name} firm"),
            Unit::CubicYard,
            of(&order.order) - &waits,
        );
        order.on_call = Some(OnCall { firm, waits });
    }
}

/// What comes back beyond the free yards when the slabs take no more than was drawn.
pub(super) fn back(
    name: &str,
    order: &Quantity,
    net: &Quantity,
    prime: Option<&Quantity>,
    supply: &Supply,
    list: &List<'_>,
) -> Option<Quantity> {
    let returned = supply.charges.returned.as_ref()?;
    let over = Quantity::given("comes back free", returned.over.value, returned.over.place);
    let mut rest = of(order) - net;
    if let Some(prime) = prime {
        rest = rest - prime;
    }
    let rest = rest - &over;
    if rest.value() <= rust_decimal::Decimal::ZERO {
        return None;
    }
    Some(list.sets.settle(Quantity::by(
        "ordered − net − what comes back free; the owner's guess that nothing is lost",
        format!("{name} coming back"),
        Unit::CubicYard,
        rest,
    )))
}
