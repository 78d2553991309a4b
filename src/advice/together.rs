//! Do payments by stage fall together, since forms and pour share a day?

use super::Case;
use crate::reading::Problem;
use crate::tables::Source;

/// At signing, for the work, and at the end.
const FEW: usize = 3;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let (business, crew) = (case.business, &case.offer.quoted().needs.crew);
    let by_stage = FEW < business.payments.len() && business.short_payments.is_empty();
    let first = business.payments.first();
    let Some(first) = first.filter(|_| by_stage && crew.is_short()) else {
        return Vec::new();
    };
    let message = format!(
        "this job is formed and poured on one day, and asks for money {} times",
        business.payments.len()
    );
    let help = format!(
        "say in business.yaml how such a job is paid, for example `payments of a short job: [When you sign: 1/3, When it is done: rest]` ({})",
        Source::PRACTICE
    );
    let problem = Problem::new("payments-together", message);
    vec![problem.at(first.place).help(help)]
}
