//! Does an option cost us something and bring nothing?

use super::Case;
use crate::costing::Cause;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let options = &case.takeoff.options;
    let quoted = case.offer.quoted().totals();
    let before = case.offer.as_quoted.taken(options);
    let known = |place| before.iter().any(|option| option.name.place == place);
    let answers = case.offer.by_choice.iter().filter_map(|(choice, priced)| {
        let more = choice.taken(options).into_iter();
        let mut more = more.filter(|option| !known(option.name.place));
        // Each option by itself; several together say no more.
        let option = more.next().filter(|_| more.next().is_none())?;
        let totals = priced.totals();
        if totals.price != quoted.price || totals.cost <= quoted.cost {
            return None;
        }
        let name = &option.name.value;
        let (costs, price) = (totals.cost - quoted.cost, totals.price);
        let message =
            format!("`{name}` costs {costs} more, and the price stays {price} with or without it");
        let is_least = priced.lines.iter().any(|line| line.cause == Cause::Minimum);
        let help = if case.takeoff.head.fixed_price.is_some() {
            "the takeoff fixes the price; leave `price` out, or quote the option by itself"
        } else if is_least {
            "the minimum job holds the price; quote the option by itself, or add to the job"
        } else {
            "the price is rounded up anyway, and has room for it; quote the option by itself, or make it larger"
        };
        let problem = Problem::new("free-option", message).at(option.name.place);
        Some(problem.help(help))
    });
    answers.collect()
}
