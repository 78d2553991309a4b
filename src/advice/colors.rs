//! Does one pour take several orders of one mix, because their color differs?

use super::Case;
use crate::reading::Problem;
use crate::trade::order::ConcreteOrder;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let orders = &case.offer.quoted().needs.orders;
    let colored = orders.iter().filter_map(|order| {
        let color = order.color.as_ref()?;
        // Two colors are said once, with the later one.
        let other = orders
            .iter()
            .take_while(|other| !std::ptr::eq(*other, order))
            .chain(orders.iter().filter(|other| other.color.is_none()))
            .find(|other| beside(order, other))?;
        let message = format!(
            "`{}` and `{}` are poured on one day; the color makes them two orders, each with its own loads",
            order.order.name(),
            other.order.name()
        );
        Some(Problem::new("two-colors", message).at(color.place).help(
            "tell the plant which comes first, the lighter color before the darker, and have the drum washed out between them; common practice, no source",
        ))
    });
    colored.collect()
}

fn beside(one: &ConcreteOrder, other: &ConcreteOrder) -> bool {
    one.placement == other.placement && one.mix.value == other.mix.value
}
