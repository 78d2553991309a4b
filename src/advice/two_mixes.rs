//! Do two mixes come on one day, and would one of them do for both?

use super::{Case, aggregate, air, hard_trowel, strength};
use crate::costing::in_mix;
use crate::input::book::Mix;
use crate::input::job::Takeoff;
use crate::reading::{At, Problem};
use crate::tables::Source;
use crate::trade::order::ConcreteOrder;
use crate::values::Money;

/// What is asked of a mix; one that serves for another raises none of it anew.
const OF_MIXES: [super::Ask; 4] = [strength::ask, air::ask, hard_trowel::ask, aggregate::ask];

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

/// What it saves to order this mix instead, where it is as strong, has as much air and raises no question anew.
pub(super) fn serves(case: Case<'_>, from: &ConcreteOrder, mix: &At<String>) -> Option<Money> {
    let known = |mix: &At<String>| case.book.rules.mixes.get(&mix.value);
    if !does_for(known(mix)?, known(&from.mix)?) {
        return None;
    }
    let quoted = case.offer.quoted();
    let (takeoff, saves) = in_mix(case.takeoff, quoted, from, mix, case.pricing())?;
    let raised = |takeoff: &Takeoff| -> usize {
        let case = Case { takeoff, ..case };
        OF_MIXES.iter().map(|ask| ask(case).len()).sum()
    };
    (raised(&takeoff) <= raised(case.takeoff)).then_some(saves)
}

fn does_for(mix: &Mix, other: &Mix) -> bool {
    other.strength.value.value <= mix.strength.value.value && other.air.value <= mix.air.value
}
