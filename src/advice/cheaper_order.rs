//! Would an order cost less if it were placed another way?

use super::Case;
use crate::costing::{OtherWay, cheaper};
use crate::input::business::Buying;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // Then it is placed so already.
    if case.business.order.buy == Buying::Cheapest {
        return Vec::new();
    }
    let ways = cheaper(case.takeoff, case.offer.quoted(), case.pricing());
    ways.iter().map(|way| answer(case, way)).collect()
}

fn answer(case: Case<'_>, way: &OtherWay) -> Problem {
    let plain = &case.offer.quoted().needs.orders[way.order];
    let other = &way.priced.needs.orders[way.order];
    let message = format!(
        "`{}` costs {} less with {}",
        plain.order.name(),
        way.saves,
        way.placing.in_words()
    );
    let trucks = if plain.loads.len() < 2 && other.loads.len() < 2 {
        format!(
            "{} in place of {}",
            other.order.amount(),
            plain.order.amount()
        )
    } else {
        format!(
            "trucks of {} in place of {}",
            other.trucks(),
            plain.trucks()
        )
    };
    let left = other.more.as_ref().map_or_else(
        || "not a yard more".to_owned(),
        |more| format!("{} will be left over", more.amount()),
    );
    let help = format!(
        "ask the plant for {trucks}; {left}. The whole job was priced both ways; `buy: cheapest` under `order` of the business orders it so"
    );
    Problem::new("cheaper-order", message)
        .at(plain.mix.place)
        .help(help)
}
