//! Is a pour in the cold or in the heat, and is what that asks for in the price?

use std::sync::Arc;

use super::{Case, DECIDES};
use crate::input::book::Curing;
use crate::input::job::{Slab, Takeoff};
use crate::input::phrases::Air;
use crate::reading::{Place, Problem};
use crate::tables::Source;
use crate::tables::weather::{COLD, HOT, HOT_FROM, HOTTEST};
use crate::trade::curing::season;
use crate::values::Day;

/// A pour with its weather and its slabs.
struct Pour<'a> {
    day: Day,
    place: Place,
    air: Air,
    outdoors: Vec<&'a Slab>,
    inside: Vec<&'a Slab>,
}

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // A choice may keep a slab wet, or pour one more.
    case.of_each(|job| of_job(case, job))
}

fn of_job(case: Case<'_>, job: &Takeoff) -> Vec<Problem> {
    let pours = job.pours().filter_map(|(number, pour)| {
        let day = case.days.get(number)?.day;
        let slabs = job.slabs.iter().map(Arc::as_ref);
        let slabs = slabs.filter(|slab: &&Slab| slab.placement == number);
        let (inside, outdoors) = slabs.partition(|slab| slab.is_inside());
        Some(Pour {
            day,
            place: pour.day.as_ref().map_or(job.place, |day| day.place),
            air: season::air(day, &case.business.cure, &case.book.rules),
            outdoors,
            inside,
        })
    });
    let mut answers = Vec::new();
    for pour in pours {
        let is_cold = case.business.cure.is_cold(pour.air);
        if is_cold {
            answers.extend(under_no_roof(&pour));
        }
        if pour.outdoors.is_empty() {
            continue;
        }
        if is_cold {
            answers.extend(unprotected(case, &pour));
            answers.extend(wet(&pour));
        }
        if HOT_FROM < pour.air.day {
            answers.push(hot(&pour));
        }
    }
    answers
}

fn unprotected(case: Case<'_>, pour: &Pour<'_>) -> Option<Problem> {
    let message = format!(
        "nights are `{} °F` on `{}`, and the book has no blankets: nothing keeps frost off",
        pour.air.night, pour.day
    );
    (!season::has_blankets(&case.book.rules)).then(|| {
        Problem::new("cold-pour", message)
            .at(pour.place)
            .also(case.business.cure.cold_below.place, "your limit")
            .help(format!(
                "name an item by the sq ft for `blankets` under `use` of the book, and rates for `cover slabs` and `lift covers`; until then the quote says that keeping frost off is not included; source: {COLD}; {DECIDES}"
            ))
    })
}

/// What counts as inside by its kind is often poured before there is a roof.
fn under_no_roof(pour: &Pour<'_>) -> Option<Problem> {
    let is_said = |slab: &Slab| slab.inside.is_some() && !slab.usual.contains(&"inside");
    let slab = pour.inside.iter().find(|slab| !is_said(slab))?;
    let message = format!(
        "nights are `{} °F` on `{}`, and `{}` counts as inside by what it is: nothing keeps frost off",
        pour.air.night, pour.day, slab.key
    );
    Some(Problem::new("no-roof-yet", message).at(slab.place).help(format!(
        "if no roof and walls stand when it is poured, write `inside: no` below it, and blankets are counted; if they do, write `inside: yes` ({})",
        Source::PRACTICE
    )))
}

fn wet(pour: &Pour<'_>) -> Option<Problem> {
    let mut slabs = pour.outdoors.iter();
    let slab = slabs.find(|slab| slab.curing.value == Curing::Wet)?;
    let message = format!(
        "`{}` is kept wet where nights are `{} °F`",
        slab.key, pour.air.night
    );
    Some(
        Problem::new("wet-in-the-cold", message)
            .at(slab.curing.place)
            .help(format!(
                "water freezes in it: write `curing: compound` or `cover` ({}); {DECIDES}",
                Source::PRACTICE
            )),
    )
}

fn hot(pour: &Pour<'_>) -> Problem {
    let message = format!("days are `{} °F` on `{}`", pour.air.day, pour.day);
    Problem::new("hot-pour", message)
        .at(pour.place)
        .help(format!(
            "pour early, wet the base, keep wind and sun off, and ask the plant for a retarder or cold water, as a rule of `also` that goes by the `concrete`; over {HOTTEST} °F no concrete is placed; source: {HOT}; {DECIDES}"
        ))
}
