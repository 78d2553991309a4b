//! Does a small order cost less by the bag, or one by the bag less from the plant?

use super::{Case, serves};
use crate::reading::{At, Problem};
use crate::trade::order::ConcreteOrder;
use crate::values::Money;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let orders = case.offer.quoted().needs.orders.iter();
    orders.filter_map(|order| answer(case, order)).collect()
}

fn answer(case: Case<'_>, order: &ConcreteOrder) -> Option<Problem> {
    let is_bagged = order.bags.is_some();
    // Nobody mixes by hand what fills a truck well enough.
    if !is_bagged && order.short.value().is_zero() {
        return None;
    }
    let others = case.book.rules.mixes.iter();
    let others = others.filter(|(_, mix)| mix.makes.is_some() != is_bagged);
    let found = others.filter_map(|(name, _)| {
        let mix = At::new(name.clone(), order.mix.place);
        let saves = serves(case, order, &mix)?;
        Some((name, saves))
    });
    let least: Option<(&String, Money)> =
        found.reduce(|best, one| if best.1 < one.1 { one } else { best });
    let (name, saves) = least?;
    let how = if is_bagged {
        "by the truck"
    } else {
        "by the bag"
    };
    let message = format!("`{}` costs {saves} less {how}", order.order.name());
    let help = format!(
        "write `mix: {name}` for its slabs; the whole job was priced both ways, with the hours of mixing"
    );
    Some(
        Problem::new("bags-or-truck", message)
            .at(order.mix.place)
            .help(help),
    )
}
