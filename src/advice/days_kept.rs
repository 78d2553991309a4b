//! Do the days of the pours leave room for the work before and between them?

use super::Case;
use crate::reading::{At, Problem};
use crate::trade::calendar::{Calendar, Dated};
use crate::trade::crew::{Step, Stretch};
use crate::values::Day;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let crew = &case.offer.quoted().needs.crew;
    let calendar = Calendar::of(case.takeoff, crew, case.quoted, case.business);
    let work = calendar.stretches.iter().filter(|(one, _)| !one.is_later());
    let dated = work.filter_map(|(stretch, dated)| Some((*stretch, (*dated)?)));
    // The quote has to be read before the work begins.
    let mut free = (case.quoted, format!("the quote is of {}", case.quoted));
    for (stretch, Dated { from, to }) in dated {
        let (until, why) = free;
        // A pour before its quote is told as that.
        if from <= until && case.quoted <= to {
            return said(case, stretch).map_or_else(Vec::new, |day| {
                vec![too_soon(day, from, &stretch.name, &why)]
            });
        }
        free = (to, format!("is at work until {to} to {}", stretch.name));
    }
    Vec::new()
}

/// The day of the pour from which the days of a stretch were counted back, where it is said.
fn said<'a>(case: Case<'a>, stretch: &Stretch) -> Option<&'a At<Day>> {
    let of_it = stretch
        .blocks
        .iter()
        .find(|block| block.step == Step::Place);
    let days = case.takeoff.placements.iter();
    let first = days
        .filter_map(|pour| pour.day.as_ref())
        .min_by_key(|day| day.value);
    match of_it {
        Some(block) => case
            .takeoff
            .placements
            .get(*block.pours.first()?)?
            .day
            .as_ref(),
        None => first,
    }
}

fn too_soon(day: &At<Day>, from: Day, name: &str, why: &str) -> Problem {
    let message = format!(
        "to pour on `{}` the crew begins to {name} on {from}, and {why}",
        day.value
    );
    Problem::new("days-too-few", message)
        .at(day.place)
        .help("take a later day; `flatwork takeoff` shows when each stage falls, by `works` and `days off` of business.yaml")
}
