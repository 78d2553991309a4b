//! What the plant charges beside the concrete.

use super::ConcreteOrder;
use super::charges::{Counted, charges};
use crate::input::book::{Role, Supply};
use crate::input::job::Takeoff;
use crate::trade::order::List;
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// What the plant charges beside the concrete.
pub(super) fn fees(
    orders: &[ConcreteOrder],
    takeoff: &Takeoff,
    supply: &Supply,
    list: &mut List<'_>,
) {
    let by_truck: Vec<&ConcreteOrder> = (orders.iter())
        .filter(|order| order.bags.is_none())
        .collect();
    for (i, order) in by_truck.iter().copied().enumerate() {
        let truck = Quantity::said("truck", &supply.truck);
        let whole = |yards: &Quantity| (of(yards) / &truck).whole();
        let (rule, loads) = match &order.held {
            Some(held) if order.has_own_truck => (
                "firm yards and those on call, each ÷ a truckful, up to a whole one",
                whole(&held.firm) + whole(&held.on_call),
            ),
            Some(_) | None => (
                "ordered yards ÷ a truckful, up to a whole one",
                whole(&order.order),
            ),
        };
        let name = format!("{} loads", order.order.name());
        let loads = list
            .sets
            .settle(Quantity::by(rule, name, Unit::Load, loads));
        for (role, quantity) in [
            (Role::Delivery, &loads),
            (Role::ShortLoad, &order.short),
            (Role::Standing, &order.standing),
        ] {
            if !quantity.value().is_zero()
                && let Some(item) = list.role(role)
            {
                let (placement, shares) = (Some(order.placement), order.shares.clone());
                list.take(&item, quantity.clone(), placement, shares);
            }
        }
        let counted = Counted {
            order,
            loads: &loads,
            first: by_truck[..i]
                .iter()
                .all(|before| before.placement != order.placement),
        };
        charges(&counted, takeoff, supply, list);
    }
}
