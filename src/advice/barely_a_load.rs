//! Does another truck come for very little?

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::Case;
use crate::costing::truck_less;
use crate::input::book::Supply;
use crate::reading::Problem;
use crate::tables::Source;
use crate::trade::order::ConcreteOrder;
use crate::values::{Amount, Unit};

/// Yards that hardly deserve a truck; common practice, no source.
const LITTLE: Decimal = dec!(0.5);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let Some(supply) = &case.book.rules.supply else {
        return Vec::new();
    };
    let orders = case.offer.quoted().needs.orders.iter();
    orders
        .filter_map(|order| answer(case, supply, order))
        .collect()
}

fn answer(case: Case<'_>, supply: &Supply, order: &ConcreteOrder) -> Option<Problem> {
    let trucks = order.loads.len();
    let yards = Amount::new(beyond(supply, order)?, Unit::CubicYard);
    let message = format!(
        "`{}` takes truck {trucks} for `{yards}` more than the others can carry",
        order.order.name()
    );
    let saves = truck_less(case.takeoff, case.offer.quoted(), order, case.pricing())?;
    let would = format!("{yards} less still covers the drawing, and saves a truck and {saves}");
    Some(
        Problem::new("barely-a-load", message)
            .at(order.mix.place)
            .help(format!(
                "{would}; look at the allowance, or set the order with your reason ({})",
                Source::PRACTICE
            )),
    )
}

/// The little that the last truck comes for; none where it comes for more, or is the only one.
pub(super) fn beyond(supply: &Supply, order: &ConcreteOrder) -> Option<Decimal> {
    // What is called for comes by itself, whatever the others carry.
    if order.has_own_truck {
        return None;
    }
    let supply = &*supply.with_trucks(order.truck.as_ref(), None);
    let fewer = order.loads.len().checked_sub(1);
    let fewer = Decimal::from(fewer.filter(|fewer| 0 < *fewer)?);
    let beyond = order.order.value() - fewer * supply.truck.value.value;
    (beyond <= LITTLE).then_some(beyond)
}
