//! Are the prices of the quote fresh? Labor is left out: it is the owner's own figure.

use super::{Case, limit};
use crate::costing::LineItem;
use crate::input::book::{Basis, Class, Dated};
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let stale_after = &case.business.quote.stale_after;
    let mut stale: Vec<(&LineItem, &Dated)> = Vec::new();
    for line in &case.offer.quoted().lines {
        let Some(dated) = line.price.as_ref() else {
            continue;
        };
        let listed = dated.basis == Basis::Listed && line.class != Some(Class::Labor);
        let known = stale.iter().any(|(_, other)| other.place == dated.place);
        if listed && !known && i64::from(stale_after.value.0) < case.quoted.days_since(dated.from) {
            stale.push((line, dated));
        }
    }
    // The dearest is the one worth a call; on a tie the first.
    let mut dearest = stale.first().copied();
    for one in &stale {
        if dearest.is_some_and(|(line, _)| line.money() < one.0.money()) {
            dearest = Some(*one);
        }
    }
    let answer = dearest.map(|(line, dated)| {
        let others = match stale.len() - 1 {
            0 => String::new(),
            1 => ", and so is one other price of this job".to_owned(),
            more => format!(", and so are {more} other prices of this job"),
        };
        let age = case.quoted.days_since(dated.from);
        let message = format!(
            "the price of `{}` is `{age} days` old on the day of the quote{others}",
            line.title
        );
        Problem::new("stale-price", message)
            .at(dated.place)
            .also(stale_after.place, limit("your limit", stale_after.place))
            .help("call the supplier, and add the price of today to the book, with its day")
    });
    answer.into_iter().collect()
}
