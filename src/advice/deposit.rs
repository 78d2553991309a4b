//! Is the first payment within the owner's cap?

use super::{Case, limit};
use crate::costing::{payments, schedule};
use crate::reading::Problem;
use crate::values::rounding;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let policy = &case.business.quote;
    let payments = payments(case.business, &case.offer.quoted().needs.crew);
    let Some(first) = payments.first() else {
        return Vec::new();
    };
    // Options raise the total, and a share of it with them.
    let over = case.offer.by_choice.values().find_map(|priced| {
        let total = priced.totals().total;
        let paid = schedule(total, payments).first().copied()?;
        let cap = rounding::to_cents(total.dollars() * policy.deposit_cap.value.fraction());
        // Parts of a whole may differ by a cent from what the cap rounds to.
        let over_cap = cap.as_cents() + 1 < paid.as_cents();
        let over_limit = !policy.deposit_limit.value.is_zero() && policy.deposit_limit.value < paid;
        if over_cap {
            Some((
                paid,
                format!("{} of {total}", policy.deposit_cap.value),
                policy.deposit_cap.place,
            ))
        } else if over_limit {
            Some((
                paid,
                policy.deposit_limit.value.to_string(),
                policy.deposit_limit.place,
            ))
        } else {
            None
        }
    });
    let answer = over.map(|(paid, most, place)| {
        let message = format!("`{}` asks for {paid}; your cap is {most}", first.when);
        Problem::new("large-deposit", message)
            .at(first.place)
            .also(place, limit("your cap", place))
            .help("ask for less at first and more later; what may be asked is your state's law, so check it or ask a lawyer")
    });
    answer.into_iter().collect()
}
