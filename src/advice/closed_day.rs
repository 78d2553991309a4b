//! Is the plant open on the day of the pour?

use super::Case;
use crate::reading::Problem;
use crate::tables::holidays::{SOURCE, holiday};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let days = case.takeoff.placements.iter();
    let days = days.filter_map(|pour| pour.day.as_ref());
    let answers = days.filter_map(|day| {
        let (what, source) = if let Some(name) = holiday(day.value) {
            (name, format!("; source of the holidays: {SOURCE}"))
        } else if day.value.is_sunday() {
            ("a Sunday", String::new())
        } else {
            return None;
        };
        let message = format!("`{}` is {what}, and the plant may be closed", day.value);
        Some(
            Problem::new("closed-day", message)
                .at(day.place)
                .help(format!(
                    "ask the plant, the town and the neighbors, or take another day{source}"
                )),
        )
    });
    answers.collect()
}
