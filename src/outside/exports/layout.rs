//! Where joints run, slab by slab, so that another program can draw or check them: feet on the site, x east
//! and y north, as decimal text. A bulge is the rise of an arc at its middle, to the right of the way along it.

use rust_decimal::Decimal;
use serde_json::{Value, json};

use crate::documents::views::office::Sheet;
use crate::geometry::joints::{Fault, Line, Panel};
use crate::geometry::{Outline, Point, Side};
use crate::input::job::{EdgePart, Meets, Slab};
use crate::trade::measure::SlabQuantities;
use crate::values::{Length, rounding};

/// Every slab with its outline, its joints and the panels they leave.
pub(super) fn slabs(sheet: &Sheet<'_>) -> Vec<Value> {
    let measured = sheet.offer.quoted().needs.slabs.iter();
    let slabs = sheet.takeoff.slabs.iter().zip(measured);
    slabs.map(|(one, found)| slab(one, found)).collect()
}

fn slab(slab: &Slab, found: &SlabQuantities) -> Value {
    let openings = slab.openings.iter().zip(slab.outline.holes());
    let openings = openings
        .map(|(opening, hole)| json!({"name": opening.name.value, "corners": corners(hole)}));
    let mut value = json!({
        "slab": slab.key,
        "corners": corners(&slab.outline),
        "openings": openings.collect::<Vec<_>>(),
    });
    let mut joints = at_edges(slab);
    if let Some(laid) = &found.joints {
        let made = |line: &Line| {
            let mut joint = joint(Side::from(*line), "contraction");
            joint["depth"] = feet(slab.groove());
            joint["method"] = slab.joint_method().name().into();
            joint
        };
        joints.splice(0..0, laid.layout.lines.iter().map(made));
        let left_out = laid.left_out.iter().map(corners);
        value["left out"] = left_out.collect();
        value["longest"] = feet(laid.longest);
        value["panels"] = laid.layout.panels.iter().map(panel).collect();
        let breaks = laid.layout.breaks.iter();
        let breaks = breaks.map(|one| json!({"what": name(&one.what), "at": place(one.at)}));
        value["not kept"] = breaks.collect();
    }
    value["joints"] = joints.into();
    value
}

/// Where pours end, and where slabs of one pour meet along a joint.
fn at_edges(slab: &Slab) -> Vec<Value> {
    let edges = slab.edges.iter().filter_map(|part| {
        let side = stretch(slab, part)?;
        if part.kind.is_bulkhead() {
            let mut joint = joint(side, "construction");
            joint["depth"] = feet(slab.edge_depth(part));
            joint["method"] = part.kind.name().into();
            return Some(joint);
        }
        (part.meets == Meets::ControlJoint).then(|| {
            let mut joint = joint(side, "contraction at an edge");
            joint["depth"] = feet(slab.groove());
            joint["method"] = slab.joint_method().name().into();
            joint
        })
    });
    edges.collect()
}

/// A side, or the straight part of it that is meant.
fn stretch(slab: &Slab, part: &EdgePart) -> Option<Side> {
    let side = slab.outline.sides()[part.side];
    let Some((from, to)) = part.stretch else {
        return Some(side);
    };
    Some(Side {
        from: side.at(from)?,
        to: side.at(to)?,
        ..side
    })
}

fn joint(side: Side, kind: &str) -> Value {
    json!({
        "kind": kind,
        "from": place(side.from),
        "to": place(side.to),
        "bulge": feet(side.bulge),
    })
}

fn panel(panel: &Panel) -> Value {
    let (long, short) = panel.size;
    let holes = panel.holes.iter().map(|hole| around(hole));
    json!({
        "corners": around(&panel.sides),
        "holes": holes.collect::<Vec<_>>(),
        "size": [feet(long), feet(short)],
        "area": number(panel.area),
    })
}

fn around(lines: &[Line]) -> Vec<Value> {
    let lines = lines.iter();
    lines.map(|line| corner(line.from, line.bulge)).collect()
}

fn corners(outline: &Outline) -> Value {
    let sides = outline.sides().iter();
    sides.map(|side| corner(side.from, side.bulge)).collect()
}

/// A corner, and the bulge of the side that begins there.
fn corner(at: Point, bulge: Length) -> Value {
    let mut value = place(at);
    value["bulge"] = feet(bulge);
    value
}

fn place(at: Point) -> Value {
    let along = |from: i64| feet(Length::nanometres(from));
    json!({"x": along(at.x), "y": along(at.y)})
}

fn feet(length: Length) -> Value {
    number(length.feet())
}

/// Finer than a nanometre.
fn number(number: Decimal) -> Value {
    rounding::to_places(number, 12)
        .normalize()
        .to_string()
        .into()
}

fn name(fault: &Fault) -> &'static str {
    match fault {
        Fault::TooMany { .. } => "too many panels",
        Fault::TooLong { .. } => "panel too long",
        Fault::Stretched { .. } => "panel long for its width",
        Fault::Unmet => "joint not met",
        Fault::InSolid => "joint under what stands on it",
        Fault::Corner => "corner without joint",
        Fault::Near { .. } => "joint passes",
        Fault::Sliver { .. } => "narrow panel",
        Fault::Sharp { .. } => "sharp corner",
        Fault::Ends => "joint ends at another",
    }
}
