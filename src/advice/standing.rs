//! Do trucks stand past their free minutes?

use rust_decimal::Decimal;

use super::{Case, listed};
use crate::input::book::Role;
use crate::reading::Problem;
use crate::trade::order::{BY_CREW, ConcreteOrder};
use crate::values::{Amount, Money, rounding};

/// One answer for the job, which names every order whose trucks stand.
pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let Some(item) = case.book.rules.roles.get(&Role::Standing) else {
        return Vec::new();
    };
    let Some(item) = &item.value else {
        return Vec::new();
    };
    let orders = case.offer.quoted().needs.orders.iter();
    let standing: Vec<(&ConcreteOrder, Money)> = orders
        .filter_map(|order| {
            let each = case.days.get(order.placement)?.get(item)?;
            let fee = rounding::to_cents(order.standing.value() * each.price.dollars());
            (!fee.is_zero()).then_some((order, fee))
        })
        .collect();
    let Some((first, _)) = standing.first() else {
        return Vec::new();
    };
    let trucks: usize = standing.iter().map(|(order, _)| order.loads.len()).sum();
    let trucks = match (trucks, standing.len()) {
        (1, _) => "its truck stands".to_owned(),
        (several, 1) => format!("its {several} trucks stand"),
        (several, _) => format!("their {several} trucks stand"),
    };
    let by_crew = |order: &ConcreteOrder| {
        let parts = order.standing.parts();
        parts.iter().any(|part| part.rule() == BY_CREW)
    };
    let (why, help) = if standing.iter().any(|(order, _)| by_crew(order)) {
        (
            " while this crew places it",
            "more people, or another way to place it, may cost less; it is in the price as it is",
        )
    } else {
        (
            "",
            "another pair of hands at the truck, or another way to place it, may cost less; it is in the price as it is",
        )
    };
    let minutes: Decimal = standing
        .iter()
        .map(|(order, _)| order.standing.value())
        .sum();
    let minutes = Amount::new(minutes, first.standing.amount().unit);
    let fees: Money = standing.iter().map(|(_, fee)| *fee).sum();
    let names = listed(standing.iter().map(|(order, _)| order.order.name()));
    let message =
        format!("{names}: {trucks} `{minutes}` past the free minutes{why}, which costs {fees}");
    let by = &case.takeoff.access_of(first.placement).by;
    vec![
        Problem::new("standing-time", message)
            .at(by.place)
            .help(help),
    ]
}
