//! Are plant and crew at work on the day of the pour?

use super::Case;
use crate::reading::{At, Problem};
use crate::tables::holidays::{SOURCE, holiday};
use crate::values::Day;

const WORKS: &str = ", or say under `crew` of business.yaml when you work: `works: Monday to Saturday`, `holidays: worked`, `days off`";

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let days = case.takeoff.placements.iter();
    let days = days.filter_map(|pour| pour.day.as_ref());
    let answers = days.filter_map(|day| {
        let (what, source) = if let Some(name) = holiday(day.value) {
            (name, format!("; source of the holidays: {SOURCE}"))
        } else if day.value.is_sunday() {
            ("a Sunday", String::new())
        } else {
            return day_off(case, day);
        };
        let is_off = case.business.crew.off(day.value).is_some();
        let (us, works) = if is_off {
            (": the crew does not work then,", WORKS)
        } else {
            (",", "")
        };
        let message = format!("`{}` is {what}{us} and the plant may be closed", day.value);
        let help = format!(
            "ask the plant, the town and the neighbors, or take another day{works}{source}"
        );
        Some(Problem::new("closed-day", message).at(day.place).help(help))
    });
    answers.collect()
}

/// A day on which the plant is open and the crew is not.
fn day_off(case: Case<'_>, day: &At<Day>) -> Option<Problem> {
    let why = case.business.crew.off(day.value)?;
    let message = format!("`{}` is {why}", day.value);
    let help = format!("take another day{WORKS}");
    Some(Problem::new("day-off", message).at(day.place).help(help))
}
