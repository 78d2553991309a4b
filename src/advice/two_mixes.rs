//! Do two mixes come on one day, and would one of them do for both?

use super::{Case, serves};
use crate::reading::Problem;
use crate::tables::Source;
use crate::trade::order::ConcreteOrder;
use crate::values::Money;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let orders = &case.offer.quoted().needs.orders;
    let mut answers = Vec::new();
    for placement in 0..case.takeoff.placements.len() {
        let of_pour: Vec<&ConcreteOrder> = orders
            .iter()
            .filter(|order| order.placement == placement && order.bags.is_none())
            .collect();
        // One mix in two colors is asked about by itself.
        let Some(first) = of_pour.first() else {
            continue;
        };
        let other = |order: &&&ConcreteOrder| order.mix.value != first.mix.value;
        let Some(second) = of_pour.iter().find(other) else {
            continue;
        };
        let trucks: usize = of_pour.iter().map(|order| order.loads.len()).sum();
        let message = format!(
            "`{}` and `{}` are poured on one day, so {trucks} trucks come, and a load of one mix is none of the other",
            first.mix.value, second.mix.value
        );
        let best = of_pour
            .iter()
            .flat_map(|from| of_pour.iter().map(move |to| (*from, *to)))
            .filter_map(|(from, to)| Some((from, to, served(case, from, to)?)))
            .reduce(|best, one| if best.2 < one.2 { one } else { best });
        let help = match best {
            Some((from, to, saves)) => format!(
                "`{}` is as strong and has as much air: ordering it for `{}` too saves {saves}, the whole job priced both ways; it has to suit the finish ({})",
                to.mix.value,
                from.order.name(),
                Source::PRACTICE
            ),
            None => format!(
                "one mix for all saves a load only where it suits every slab; here it saves nothing, or is weaker ({})",
                Source::PRACTICE
            ),
        };
        answers.push(
            Problem::new("two-mixes", message)
                .at(second.mix.place)
                .also(first.mix.place, "the other mix")
                .help(help),
        );
    }
    answers
}

/// What it saves to order the mix of `to` for `from` too, where it does for it.
fn served(case: Case<'_>, from: &ConcreteOrder, to: &ConcreteOrder) -> Option<Money> {
    let color = |order: &ConcreteOrder| order.color.as_ref().map(|color| color.value.clone());
    let is_other = from.mix.value != to.mix.value && color(from) == color(to);
    is_other.then(|| serves(case, from, &to.mix)).flatten()
}
