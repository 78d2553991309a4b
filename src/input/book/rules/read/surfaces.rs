//! Reads finishes, colors and sealers.

use super::words::item;
use crate::input::book::rules::{Color, Finish, Sealer, SurfaceItem};
use crate::input::book::tables;
use crate::input::phrases::{Dose, Ratio};
use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::{Amount, Unit};

pub(super) fn finish(node: &Node, problems: &mut Problems) -> Option<Finish> {
    let fields = node.fields(&tables::FINISH, problems).ok()?;
    let before = problems.len();
    let says = fields.read::<String>("says", problems).map(|at| at.value);
    let hours = hours(&fields, problems);
    let items = fields
        .node("items")
        .map(|node| items(node, problems))
        .unwrap_or_default();
    let trips = trips(&fields, problems);
    let (color, seal) = (
        fields.read::<String>("color", problems),
        fields.read::<String>("seal", problems),
    );
    let curing = fields.read("curing", problems);
    let troweled = fields.yes("troweled", problems);
    (problems.len() == before).then_some(Finish {
        says,
        hours,
        items,
        trips: trips?,
        color,
        seal,
        curing,
        troweled,
    })
}

fn items(node: &Node, problems: &mut Problems) -> Vec<SurfaceItem> {
    let mut found = Vec::new();
    for (item, node) in node.named("`items`", problems) {
        let Some(value) = node.read::<Dose>(problems).ok() else {
            continue;
        };
        if value.is_mixed_in() {
            let message = format!("`{}` goes into the concrete, not onto it", item.value);
            problems.push(Problem::new("mixed-in", message).at(node.place).help(
                "name it under `colors` of the price book, and say here `color: ` and its name",
            ));
            continue;
        }
        found.push(SurfaceItem {
            item,
            dose: At {
                value,
                place: node.place,
            },
        });
    }
    found
}

pub(super) fn color(node: &Node, problems: &mut Problems) -> Option<Color> {
    let fields = node.fields(&tables::COLOR, problems).ok()?;
    let says = fields.read::<String>("says", problems).map(|at| at.value);
    let item = item(&fields, problems);
    let dose: At<Dose> = fields.need("dose", problems).ok()?;
    if !dose.value.is_mixed_in() {
        problems.push(
            Problem::new("not-mixed-in", "this dose is put on, not mixed in")
                .at(dose.place)
                .help("write `3% of cement` or `5 lb per cu yd`; what is put on belongs to the `items` of a finish"),
        );
        return None;
    }
    Some(Color {
        says,
        what: SurfaceItem { item: item?, dose },
    })
}

pub(super) fn sealer(node: &Node, problems: &mut Problems) -> Option<Sealer> {
    let fields = node.fields(&tables::SEALER, problems).ok()?;
    let before = problems.len();
    let says = fields.read::<String>("says", problems).map(|at| at.value);
    let item = item(&fields, problems);
    let coverage: Option<At<Dose>> = fields.read("coverage", problems);
    if let Some(dose) = &coverage
        && !matches!(dose.value, Dose::Area { .. } | Dose::Coverage { .. })
    {
        problems.push(
            Problem::new("bad-dose", "a sealer goes by the square foot")
                .at(dose.place)
                .help("write `250 sq ft per gal`, or `250 sq ft per gal, 2 coats`"),
        );
    }
    let hours = hours(&fields, problems);
    let after = fields.need("after", problems).ok();
    let trips = trips(&fields, problems);
    (problems.len() == before).then_some(Sealer {
        says,
        item: item?,
        coverage,
        hours,
        after: after?,
        trips: trips?,
    })
}

/// Person or crew hours for so many square feet.
fn hours(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<Ratio>> {
    let rate: At<Ratio> = fields.read("hours", problems)?;
    let time = matches!(rate.value.much.unit, Unit::Hour | Unit::CrewHour);
    if time && rate.value.per.unit == Unit::SquareFoot {
        return Some(rate);
    }
    problems.push(
        Problem::new("wrong-unit", "`hours` is measured in hours per sq ft")
            .at(rate.place)
            .help("write, for example, `4 hours per 100 sq ft`"),
    );
    None
}

/// Whole times.
fn trips(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<Amount>> {
    let trips: At<Amount> = fields.need("trips", problems).ok()?;
    let trips = crate::input::checks::in_unit(trips, Unit::Plain, "trips", problems).ok()?;
    if trips.value.value.fract().is_zero() {
        return Some(trips);
    }
    problems.push(
        Problem::new("not-whole", "nobody comes back half a time")
            .at(trips.place)
            .help("write a whole number; the hours it takes belong to `hours`"),
    );
    None
}
