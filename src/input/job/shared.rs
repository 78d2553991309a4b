//! What slabs that touch are to each other: one piece, a strip between them, or two pours.

use super::positions::{Contact, divided};
use super::takeoff::Slab;
use super::{EdgeKind, EdgePart, Meets};
use crate::input::phrases::EdgesPhrase;
use crate::reading::{Problem, Problems};
use crate::values::Length;

/// One side of a contact.
#[derive(Clone, Copy)]
struct End<'a> {
    slab: &'a Slab,
    side: usize,
}

/// The edges of every slab, where those that are there share them; a slab that is left out is none.
pub(super) fn edges(slabs: &[Option<&Slab>], contacts: &[Contact]) -> Vec<Vec<EdgePart>> {
    let mut edges: Vec<Vec<EdgePart>> = slabs
        .iter()
        .map(|slab| slab.map(|slab| slab.edges.clone()).unwrap_or_default())
        .collect();
    for contact in contacts {
        let ends = [contact.placed(), contact.base()];
        let [Some(placed), Some(base)] =
            ends.map(|(i, side)| slabs[i].map(|slab| End { slab, side }))
        else {
            continue;
        };
        let (mut mine, mut theirs) = between(placed, base);
        if let Some((drop, _)) = &placed.slab.lower {
            // Their edge is the face of a step: no joint of panels runs there. A form holds the slab
            // whose edge it is alone: the other lies lower, or upon it.
            mine.1 = Meets::Nothing;
            theirs.1 = faced(theirs.0, drop.value);
        }
        for ((i, number), end, kind) in [(ends[0], placed, mine), (ends[1], base, theirs)] {
            let side = end.slab.outline.sides()[number];
            edges[i] = divided(&edges[i], number, &side, &contact.stretch(), kind);
        }
    }
    edges
}

/// What stands at the edge of the slab that was placed, and at that of the one it was placed against.
fn between(placed: End<'_>, base: End<'_>) -> ((EdgeKind, Meets), (EdgeKind, Meets)) {
    let is_one_pour = placed.slab.placement == base.slab.placement
        && placed.slab.mix.value == base.slab.mix.value;
    if is_one_pour {
        return one_pour(placed, base);
    }
    if placed.slab.placement < base.slab.placement {
        two_pours(placed, base)
    } else {
        let (first, second) = two_pours(base, placed);
        (second, first)
    }
}

/// What the upper of two slabs meets: a form that stands there already holds the face too.
fn faced(kind: EdgeKind, drop: Length) -> Meets {
    if kind.has_form() {
        Meets::Depth(drop)
    } else {
        Meets::Face(drop)
    }
}

/// Only what somebody wants to stand there does; a form, a strip and bars are counted once.
fn one_pour(placed: End<'_>, base: End<'_>) -> ((EdgeKind, Meets), (EdgeKind, Meets)) {
    let joined = (EdgeKind::Joined, Meets::Nothing);
    let stands = |kind: EdgeKind| kind != EdgeKind::Open && kind != EdgeKind::Joined;
    let with = |end: End<'_>, beyond: End<'_>| {
        let kind = end.said();
        let meets = if kind.has_form() {
            beyond.held()
        } else {
            Meets::Nothing
        };
        (kind, meets)
    };
    if stands(placed.said()) {
        (with(placed, base), joined)
    } else if stands(base.said()) {
        (joined, with(base, placed))
    } else {
        // Panels of both end here, so the layout of either asks for a joint.
        let jointed = (EdgeKind::Joined, Meets::ControlJoint);
        if placed.slab.wants_joints() {
            (jointed, joined)
        } else if base.slab.wants_joints() {
            (joined, jointed)
        } else {
            (joined, joined)
        }
    }
}

/// The first pour ends at a form whatever else stands there, and the second has none; a strip
/// goes between them when the form is off. Bars go through the form of whoever names them.
fn two_pours(first: End<'_>, second: End<'_>) -> ((EdgeKind, Meets), (EdgeKind, Meets)) {
    let (one, other) = (first.said(), second.said());
    if other.has_form() && other.pin().is_some() && one.pin().is_none() {
        return ((EdgeKind::Joined, Meets::Nothing), (other, first.held()));
    }
    let is_crossed = one.pin().is_some();
    let left = if !is_crossed && (other.has_strip() || other.pin().is_some()) {
        other
    } else if one.has_strip() || other.has_strip() {
        EdgeKind::Isolated
    } else {
        EdgeKind::Joined
    };
    // A key is nailed to the form of the first pour, whoever names it.
    let is_keyed = [one, other].contains(&EdgeKind::KeyedBulkhead) && !is_crossed;
    let form = if is_keyed {
        EdgeKind::KeyedBulkhead
    } else {
        EdgeKind::bulkhead(one.pin())
    };
    ((form, second.held()), (left, Meets::Nothing))
}

impl<'a> End<'a> {
    /// What the takeoff says of the whole side, whoever else touches it.
    fn said(self) -> EdgeKind {
        self.part().map_or(EdgeKind::Open, |part| part.kind)
    }

    fn part(self) -> Option<&'a EdgePart> {
        let mut parts = self.slab.edges.iter();
        parts.find(|part| part.side == self.side)
    }

    /// A form beyond which this slab is placed too holds both.
    fn held(self) -> Meets {
        Meets::Depth(self.depth())
    }

    /// Where it touches another the edge is not open, so not thickened with those that are.
    fn depth(self) -> Length {
        let plain = || self.slab.deepest_along(&self.slab.outline, self.side);
        match &self.slab.sections.thickened {
            Some(edge) if edge.edges.value != EdgesPhrase::AllOpen => {
                let part = self.part();
                part.map_or_else(plain, |part| self.slab.own_edge_depth(part))
            }
            _ => plain(),
        }
    }
}

/// A face goes no deeper than the slab whose edge it is.
pub(super) fn check_face(upper: &Slab, side: usize, lower: &Slab, problems: &mut Problems) {
    let Some((drop, _)) = &lower.lower else {
        return;
    };
    let depth = End { slab: upper, side }.depth();
    if drop.value <= depth {
        return;
    }
    let (upper_key, lower_key) = (&upper.key, &lower.key);
    let message = format!(
        "`{lower_key}` lies {} lower, and the edge of `{upper_key}` there is only {depth} deep",
        drop.value
    );
    let along = match upper.outline.sides()[side].facing() {
        Some(way) => way.name().to_owned(),
        None => format!("side {}", upper.outline.sides()[side].leg + 1),
    };
    let problem = Problem::new("bad-position", message).at(drop.place);
    problems.push(problem.help(format!(
        "thicken the edge of `{upper_key}` where `{lower_key}` lies: under `{upper_key}` write, for example, `thickened: {along}, 12 in wide, {} deep`",
        drop.value
    )));
}
