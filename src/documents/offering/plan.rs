//! The plan of this job: slabs, joints, edges and falls as the takeoff has them.

use super::phrases::{area, capital, length, sides, size};
use super::{Offering, falls, openings, sections};
use crate::documents::figures::plan::{
    self, BoxView, Crossed, EdgeView, OpeningView, PanelView, PlanView, SlabView,
};
use crate::geometry::joints::Panel;
use crate::geometry::{Direction, Outline, Side};
use crate::input::job::{EdgeKind, Fall, Pin, Slab};
use crate::press::drawing::{Drawing, Rgb};
use crate::trade::measure::{SlabQuantities, panel_size};
use crate::values::{Length, rounding};

pub(super) fn figure(of: Offering<'_>, accent: Rgb) -> Drawing {
    let measured = of.offer.quoted().needs.slabs.iter();
    let slabs: Vec<SlabView> = of
        .takeoff
        .slabs
        .iter()
        .zip(measured)
        .flat_map(|(slab, measured)| [Some(view(of, slab, measured)), flight(slab)])
        .flatten()
        .collect();
    let flat = || {
        let slabs = of.takeoff.slabs.iter();
        slabs.filter(|slab| slab.on.is_none() && !slab.sections.is_stoop())
    };
    let thickness = one_for_all(flat().map(|slab| sections::thickness(slab)))
        .map(|thickness| format!("{thickness} thick"));
    let slope = one_for_all(flat().flat_map(|slab| slab.falls.iter().map(|fall| fall.rise.value)))
        .map(|rise| format!("{} per ft", length(rise)));
    let unplaced = 1 < of
        .takeoff
        .slabs
        .iter()
        .filter(|slab| slab.stands_alone)
        .count();
    plan::plan(&PlanView {
        slabs,
        thickness: thickness.unwrap_or_default(),
        slope: slope.unwrap_or_default(),
        unplaced,
        accent,
        words: &plan::ENGLISH,
    })
}

fn one_for_all<T: PartialEq>(mut values: impl Iterator<Item = T>) -> Option<T> {
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}

fn view(of: Offering<'_>, slab: &Slab, measured: &SlabQuantities) -> SlabView {
    let layout = measured.joints.as_ref().map(|joints| &joints.layout);
    SlabView {
        name: capital(&slab.called),
        note: if slab.is_upon() {
            size(slab)
        } else {
            area(measured.area.value())
        },
        outline: slab.outline.clone(),
        is_step: slab.is_upon(),
        boxes: boxes(of, slab),
        treads: Vec::new(),
        joints: layout.map_or_else(Vec::new, |layout| {
            let lines = layout.lines.iter();
            lines.map(|line| Side::from(*line).places()).collect()
        }),
        is_sawn: slab.is_sawn(),
        edges: slab
            .edges
            .iter()
            .filter(|part| part.kind != EdgeKind::Open)
            .map(|part| edge(slab, part))
            .collect(),
        // Of several the words say where they are; an arrow would say it of the whole slab.
        fall: match &slab.falls[..] {
            [only] => only.to.side().map(Direction::from),
            [one, other] if slab.levels.is_some() => both_ways(one, other),
            _ => None,
        },
        levels: falls::levels(slab),
        panels: layout.map_or_else(Vec::new, |layout| layout.panels.iter().map(panel).collect()),
        openings: openings(slab),
    }
}

/// Where water of two falls runs: between both, or where the one is far steeper its way.
fn both_ways(one: &Fall, other: &Fall) -> Option<Direction> {
    let (east, north) = (one.to.side()?, other.to.side()?);
    // The tangent of 67.5 degrees, from where on the nearer of the eight ways is the steep one.
    let far = |steep: &Fall, flat: &Fall| flat.rise.value * 12 < steep.rise.value * 5;
    if far(one, other) {
        return Some(east.into());
    }
    if far(other, one) {
        return Some(north.into());
    }
    format!("{}{}", north.name(), east.name()).parse().ok()
}

fn panel(panel: &Panel) -> PanelView {
    let (long, short) = panel_size(panel);
    // The end of each side is the beginning of the next.
    let around = panel.sides.iter().flat_map(|line| {
        let mut places = Side::from(*line).places();
        places.pop();
        places
    });
    PanelView {
        corners: around.collect(),
        size: sides(long, short),
    }
}

/// What is left open, with the kind of its rim where it is all of one.
fn openings(slab: &Slab) -> Vec<OpeningView> {
    openings::each(slab)
        .map(|(opening, hole)| {
            let first = opening.edges.first().map(|part| part.kind);
            let one_kind = opening.edges.iter().all(|part| Some(part.kind) == first);
            OpeningView {
                name: if opening.of_ring {
                    "Open".to_owned()
                } else {
                    capital(&opening.name.value)
                },
                size: openings::size(opening, hole),
                outline: hole.clone(),
                kind: first
                    .filter(|_| one_kind)
                    .map_or(plan::EdgeMark::Open, kind),
            }
        })
        .collect()
}

/// Boxes whose place is known; those of one name share a number.
fn boxes(of: Offering<'_>, slab: &Slab) -> Vec<BoxView> {
    let all = of.takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    let mut names: Vec<&str> = Vec::new();
    for one in all.filter(|one| one.middle.is_some()) {
        if !names.contains(&one.called.as_str()) {
            names.push(&one.called);
        }
    }
    let boxes = slab.boxes.iter().filter_map(|one| {
        let middle = one.middle.as_ref()?.value;
        let stock = of.rules.boxes.get(&one.stock.value)?;
        let number = names.iter().position(|name| *name == one.called)? + 1;
        Some(BoxView {
            number,
            name: one.called.clone(),
            outline: stock.opening.value.around(middle, Length::ZERO),
        })
    });
    boxes.collect()
}

/// Steps that lead down from a slab, as one more thing on the plan.
fn flight(slab: &Slab) -> Option<SlabView> {
    let found = sections::flight(slab)?;
    let (wide, tall) = (
        between(found.low.x, found.high.x),
        between(found.low.y, found.high.y),
    );
    let risers = slab.sections.steps.as_ref()?.risers.value;
    Some(SlabView {
        name: "Steps".to_owned(),
        note: format!("{risers} risers"),
        outline: Outline::rectangle(wide, tall).moved(found.low),
        is_step: true,
        boxes: Vec::new(),
        treads: found.treads,
        joints: Vec::new(),
        is_sawn: false,
        edges: Vec::new(),
        fall: None,
        levels: Vec::new(),
        panels: Vec::new(),
        openings: Vec::new(),
    })
}

fn between(low: i64, high: i64) -> Length {
    Length::nanometres(high - low)
}

fn edge(slab: &Slab, part: &crate::input::job::EdgePart) -> EdgeView {
    let side = slab.outline.sides()[part.side];
    let whole = || {
        let nanometres = rounding::to_places(
            side.length() * rust_decimal::Decimal::from(Length::feet_whole(1).as_nanometres()),
            0,
        );
        Length::nanometres(i64::try_from(nanometres).expect("no side is over 1,000 ft by far"))
    };
    let (from, to) = part.stretch.unwrap_or_else(|| (Length::ZERO, whole()));
    EdgeView {
        side: part.side,
        from,
        to,
        kind: kind(part.kind),
        crossed: match part.kind.pin() {
            None => Crossed::Nothing,
            Some(Pin::Dowels) => Crossed::Dowels,
            Some(Pin::Ties) => Crossed::Ties,
        },
    }
}

fn kind(kind: EdgeKind) -> plan::EdgeMark {
    match kind {
        EdgeKind::Open => plan::EdgeMark::Open,
        EdgeKind::House => plan::EdgeMark::House,
        EdgeKind::Existing | EdgeKind::DoweledExisting | EdgeKind::TiedExisting => {
            plan::EdgeMark::Existing
        }
        EdgeKind::Curb => plan::EdgeMark::Curb,
        EdgeKind::Isolated => plan::EdgeMark::Isolated,
        EdgeKind::Joined => plan::EdgeMark::Joined,
        EdgeKind::Bulkhead
        | EdgeKind::DoweledBulkhead
        | EdgeKind::TiedBulkhead
        | EdgeKind::KeyedBulkhead => plan::EdgeMark::Bulkhead,
    }
}
