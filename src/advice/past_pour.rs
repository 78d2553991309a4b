//! Is a pour before the day of its quote?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let days = case.takeoff.placements.iter();
    let past = days
        .filter_map(|pour| pour.day.as_ref())
        .filter(|day| day.value < case.quoted);
    past.map(|day| {
        let message = format!(
            "the pour on `{}` is before the quote of `{}`, and so are its prices",
            day.value, case.quoted
        );
        Problem::new("past-pour", message)
            .at(day.place)
            .help("is the year right? prices are those of the pour's day")
    })
    .collect()
}
