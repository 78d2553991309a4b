//! Does work that the takeoff asks for cost nothing, since the book has no rate for it?

use super::Case;
use crate::input::book::Curing;
use crate::input::phrases::EdgeKind;
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
    let bulkhead = |kind: EdgeKind| {
        let mut slabs = case.takeoff.slabs.iter();
        let slab = slabs.find(|slab| slab.edges.iter().any(|part| part.kind == kind))?;
        Some(slab.outline_place)
    };
    let timed = |names: &[&str]| {
        let mut rules = case.book.rules.also.values();
        rules.any(|rule| {
            let by = rule.by.as_ref().filter(|_| rule.hours.is_some());
            by.is_some_and(|by| names.contains(&&*by.value))
        })
    };
    let keyed = bulkhead(EdgeKind::KeyedBulkhead);
    let keyed = keyed.filter(|_| !timed(&["keyed joints", "construction joints"]));
    let pinned = bulkhead(EdgeKind::DoweledBulkhead).or(bulkhead(EdgeKind::TiedBulkhead));
    let pinned = pinned.filter(|_| !timed(&["dowels", "ties", "construction joints"]));
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
        told(
            keyed,
            "a bulkhead has a key, and the book has no hours for it: it costs what a plain form costs",
            "add a rule of `also` with its hours that goes by `keyed joints`; if they are in the rates of forms, leave it",
        ),
        told(
            pinned,
            "steel goes through a bulkhead, and the book has no hours to drill the form and set it: it costs what a plain form costs",
            "add a rule of `also` with its hours that goes by `dowels` or `construction joints`; if they are in the rates of forms, leave it",
        ),
    ];
    answers.into_iter().flatten().collect()
}
