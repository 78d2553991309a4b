//! Is a pour in the cold or in the heat, and is what that asks for in the price?

use super::{Case, DECIDES};
use crate::input::book::Curing;
use crate::input::job::Slab;
use crate::input::phrases::Air;
use crate::reading::{Place, Problem};
use crate::tables::Source;
use crate::tables::weather::{COLD, HOT, HOT_FROM, HOTTEST};
use crate::trade::curing::season;
use crate::values::Day;

/// A pour with its weather, and its slabs outdoors.
struct Pour<'a> {
    number: usize,
    day: Day,
    place: Place,
    air: Air,
    slabs: Vec<&'a Slab>,
}

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let pours = case
        .takeoff
        .pours()
        .zip(case.days)
        .map(|((number, pour), prices)| {
            let place = pour
                .day
                .as_ref()
                .map_or(case.takeoff.place, |day| day.place);
            let slabs = case.slabs().map(|(slab, _)| slab);
            Pour {
                number,
                day: prices.day,
                place,
                air: season::air(prices.day, &case.business.cure, &case.book.rules),
                slabs: slabs.filter(|slab| !slab.is_inside()).collect(),
            }
        });
    let mut answers = Vec::new();
    for mut pour in pours {
        pour.slabs.retain(|slab| slab.placement == pour.number);
        if pour.slabs.is_empty() {
            continue;
        }
        if case.business.cure.is_cold(pour.air) {
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

fn wet(pour: &Pour<'_>) -> Option<Problem> {
    let mut slabs = pour.slabs.iter();
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
