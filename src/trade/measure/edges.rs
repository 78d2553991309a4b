//! Edges by what stands beyond them: forms here, isolation strip there.

use crate::geometry::{Facing, Side};
use crate::input::job::{EdgeKind, EdgePart, Slab};
use crate::trade::sets::Sets;
use crate::trade::term::sum;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Debug)]
pub struct EdgeQuantities {
    /// Straight edge that needs a form; a deep one is counted apart.
    pub straight: Quantity,
    /// Straight edge that needs a form deeper than the owner's limit.
    pub deep: Quantity,
    /// Curved edge that needs a form.
    pub curved: Quantity,
    /// Edge that needs an isolation strip.
    pub strip: Quantity,
    /// Separate pieces of form, for the stakes.
    pub formed: Vec<Quantity>,
    /// Feet of each kind of edge that occurs.
    pub by_kind: Vec<(EdgeKind, Quantity)>,
}

impl EdgeQuantities {
    /// The open edge, where there is any.
    pub fn open(&self) -> Option<&Quantity> {
        let open = self
            .by_kind
            .iter()
            .find(|(kind, _)| *kind == EdgeKind::Open);
        open.map(|(_, length)| length)
    }
}

pub(super) fn measure(slab: &Slab, deep_over: Option<Length>, sets: Sets<'_>) -> EdgeQuantities {
    let is_deep = |part: &EdgePart| deep_over.is_some_and(|limit| limit < slab.edge_depth(part));
    let parts: Vec<(EdgePart, bool, Quantity)> = slab
        .edges
        .iter()
        .map(|part| {
            (
                *part,
                slab.outline.sides()[part.side].is_straight(),
                along(slab, part.side, part.stretch),
            )
        })
        .collect();
    let named = |what: &str, fits: &dyn Fn(&EdgePart, bool) -> bool| {
        let fitting: Vec<&Quantity> = parts
            .iter()
            .filter(|(part, straight, _)| fits(part, *straight))
            .map(|(.., length)| length)
            .collect();
        sets.settle(Quantity::by(
            "sides added up",
            format!("{} {what}", slab.key),
            Unit::Foot,
            sum(fitting),
        ))
    };
    let by_kind = EdgeKind::ALL
        .into_iter()
        .filter(|(kind, _)| parts.iter().any(|(part, ..)| part.kind == *kind));
    EdgeQuantities {
        straight: named("straight form", &|part, straight| {
            part.kind.has_form() && straight && !is_deep(part)
        }),
        deep: named("deep form", &|part, straight| {
            part.kind.has_form() && straight && is_deep(part)
        }),
        curved: named("curved form", &|part, straight| {
            part.kind.has_form() && !straight
        }),
        strip: named("isolation strip", &|part, _| part.kind.has_strip()),
        formed: parts
            .iter()
            .filter(|(part, ..)| part.kind.has_form())
            .map(|(.., length)| length.clone())
            .collect(),
        by_kind: by_kind
            .map(|(kind, name)| {
                (
                    kind,
                    named(&format!("{name} edge"), &|part, _| part.kind == kind),
                )
            })
            .collect(),
    }
}

/// Feet of a side, or of a stretch of it.
pub(super) fn along(slab: &Slab, side: usize, stretch: Option<(Length, Length)>) -> Quantity {
    let side = slab.outline.sides()[side];
    let name = side_name(slab, &side);
    let (value, how) = match stretch {
        Some((from, to)) => {
            let length: Length = to - from;
            (length.feet(), format!("part of the {name}"))
        }
        None if side.is_straight() => (side.length(), format!("the {name}")),
        None => (side.length(), format!("the {name}, along its curve")),
    };
    Quantity::new(
        format!("{} {name}", slab.key),
        Amount::new(value, Unit::Foot),
        Working::Shape {
            how,
            place: slab.place,
        },
    )
}

/// As the owner would point at it: a rectangle's by where it looks, a walked one by its number.
fn side_name(slab: &Slab, side: &Side) -> String {
    let looks = match side.facing() {
        Facing::North => "north side",
        Facing::East => "east side",
        Facing::South => "south side",
        Facing::West => "west side",
        Facing::Slanted => "slanted side",
    };
    match slab.outline.is_rectangle() {
        Some(_) => looks.to_owned(),
        None if slab.outline.is_circle().is_some() => "half of the circle".to_owned(),
        None => format!("side {}", side.leg + 1),
    }
}
