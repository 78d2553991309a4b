//! Does work that the takeoff asks for cost nothing, since the book has no rate for it?

use super::Case;
use crate::input::book::Curing;
use crate::reading::{Place, Problem};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let sawn = case.slabs().find_map(|(slab, found)| {
        found.joints.as_ref()?.sawn.as_ref()?;
        Some(slab.sawn.as_ref()?.place)
    });
    let wet = case
        .slabs()
        .find(|(slab, _)| slab.curing.value == Curing::Wet);
    let wet = wet.map(|(slab, _)| slab.curing.place);
    let own = |names: &[&str]| {
        let mut rules = case.book.rules.also.values();
        rules.any(|rule| {
            rule.by
                .as_ref()
                .is_some_and(|by| names.contains(&&*by.value))
        })
    };
    let is_rated = |task: &str| case.book.rules.rates.get(task).is_some();
    let sawn = sawn.filter(|_| {
        let own_rule = own(&[
            "joints",
            "sawn joints",
            "joints sawn early",
            "sawn joint face",
        ]);
        !is_rated("joints by saw") && !is_rated("joints by early saw") && !own_rule
    });
    let wet = wet.filter(|_| !is_rated("keep wet"));
    let cover = case
        .slabs()
        .find(|(slab, _)| slab.curing.value == Curing::Cover);
    let cover = cover.map(|(slab, _)| slab.curing.place);
    let cover = cover.filter(|_| !is_rated("lift covers"));
    let told = |place: Option<Place>, what: &str, help: &str| {
        place.map(|place| Problem::new("work-without-rate", what).at(place).help(help))
    };
    let answers = [
        told(
            sawn,
            "joints are sawn, and the book has no hours for it: it costs nothing",
            "add a rate, for example `joints by saw: 1.2 hours per 100 ft`, or a rule of `also` that goes by `sawn joints`; if it is in the finish, leave it",
        ),
        told(
            wet,
            "concrete is kept wet, and the book has no hours for it: it costs nothing",
            "add a rate, `keep wet: 1 hour per 100 sq ft`, or `keep wet: 1/2 hour per trip` where the crew comes every day; if the customer does it, leave it",
        ),
        told(
            cover,
            "concrete lies under a cover, and the book has no hours to take it off: nobody comes back for it",
            "add a rate, `lift covers: 1/2 hour per trip`, which counts a visit to each pour; if the cover comes off with the forms, leave it",
        ),
    ];
    answers.into_iter().flatten().collect()
}
