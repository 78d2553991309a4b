//! Do two mixes come on one day?

use super::Case;
use crate::reading::Problem;
use crate::tables::Source;
use crate::trade::order::ConcreteOrder;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let orders = &case.offer.quoted().needs.orders;
    let mut answers = Vec::new();
    for placement in 0..case.takeoff.placements.len() {
        let of_pour: Vec<&ConcreteOrder> = orders
            .iter()
            .filter(|order| order.placement == placement)
            .collect();
        // One mix in two colors is asked about by itself.
        let Some(first) = of_pour.first() else {
            continue;
        };
        let other = |order: &&&ConcreteOrder| order.mix.value != first.mix.value;
        let Some(second) = of_pour.iter().find(other) else {
            continue;
        };
        let message = format!(
            "`{}` and `{}` are poured on one day, so two trucks come whose loads cannot be exchanged",
            first.mix.value, second.mix.value
        );
        answers.push(
            Problem::new("two-mixes", message)
                .at(second.mix.place)
                .also(first.mix.place, "the other mix")
                .help(format!(
                    "one mix for all saves a load where it suits every slab ({})",
                    Source::PRACTICE
                )),
        );
    }
    answers
}
