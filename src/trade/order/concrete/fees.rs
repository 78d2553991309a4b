//! What the plant charges beside the concrete.

use super::ConcreteOrder;
use super::charges::{Counted, charges};
use crate::input::book::{Role, Supply};
use crate::input::job::Takeoff;
use crate::trade::order::{List, Section};
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
    for (i, order) in orders.iter().enumerate() {
        let truck = Quantity::given("truck", supply.truck.value, supply.truck.place);
        let loads = list.sets.settle(Quantity::by(
            "ordered yards ÷ a truckful, up to a whole one",
            format!("{} loads", order.order.name()),
            Unit::Load,
            (of(&order.order) / &truck).whole(),
        ));
        let spread = |quantity: &Quantity| vec![(Section::Whole, quantity.clone())];
        for (role, quantity) in [
            (Role::Delivery, &loads),
            (Role::ShortLoad, &order.short),
            (Role::Standing, &order.standing),
        ] {
            let before = list.needs.len();
            list.buy_role(
                role,
                quantity.name(),
                "as figured",
                &spread(quantity),
                Some(order.placement),
            );
            if let Some(need) = list.needs.get_mut(before) {
                need.quantity = quantity.clone();
                need.shares.clone_from(&order.shares);
            }
        }
        let counted = Counted {
            order,
            loads: &loads,
            first: orders[..i]
                .iter()
                .all(|before| before.placement != order.placement),
        };
        charges(&counted, takeoff, supply, list);
    }
}
