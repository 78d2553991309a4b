//! Does the clause of an index print what the owner pays?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let Some(clause) = &case.business.escalation else {
        return Vec::new();
    };
    let lines = &case.offer.quoted().lines;
    let paid = lines
        .iter()
        .filter_map(|line| line.price.as_ref())
        .any(|price| price.price.dollars() == clause.reference.value.dollars());
    if !paid {
        return Vec::new();
    }
    let message = format!(
        "the clause prints `{}`, which is a price of yours in this job",
        clause.reference.value
    );
    vec![
        Problem::new("index-tells-cost", message)
            .at(clause.reference.place)
            .help("name a price that anybody can look up, not the one you pay"),
    ]
}
