//! Thick ends, thickened edges, stoops and steps as a homeowner reads them.

use super::phrases::{length, list, size};
use crate::geometry::{Direction, Point};
use crate::input::job::{Slab, Takeoff};
use crate::input::phrases::{EdgeName, EdgesPhrase, StoopPhrase};
use crate::input::sections::EdgeSort;
use crate::values::Length;

/// As crews say it: 12 in and 36 in rather than 1 ft and 3 ft.
fn inches(value: Length) -> String {
    let feet = value.feet();
    if feet.fract().is_zero() && value <= Length::feet_whole(4) {
        return format!("{}\u{a0}in", value.inches().normalize());
    }
    length(value)
}

/// `4 in`, or `4 to 6 in` where one end is thicker.
pub(super) fn thickness(slab: &Slab) -> String {
    let Some((thick, _)) = slab.thickness.value.thick else {
        return length(slab.thickness.value.thin);
    };
    let (thin, thick) = (inches(slab.thickness.value.thin), inches(thick));
    // The unit once, where both ends have the same.
    match (
        thin.strip_suffix("\u{a0}in"),
        thick.strip_suffix("\u{a0}in"),
    ) {
        (Some(low), Some(high)) if !low.contains("ft") && !high.contains("ft") => {
            format!("{low}\u{a0}to\u{a0}{high}\u{a0}in")
        }
        _ => format!("{thin} to {thick}"),
    }
}

/// `stoop 5 × 5 ft, 21 in high`; none for a slab on the ground.
pub(super) fn stoop(slab: &Slab) -> Option<String> {
    let steps = slab.sections.steps.as_ref()?;
    let how = match &slab.sections.stoop.as_ref()?.value {
        StoopPhrase::None => return None,
        StoopPhrase::Solid => "solid".to_owned(),
        StoopPhrase::Filled { walls, .. } => format!("on {} walls around fill", inches(*walls)),
    };
    Some(format!(
        "{} {}, {} high, {how}",
        slab.called,
        size(slab),
        inches(steps.height())
    ))
}

/// What goes deeper at the edges; the walls of a stoop are said with it.
pub(super) fn edges(slab: &Slab) -> Option<String> {
    let edge = slab.sections.thickened.as_ref()?;
    if slab.sections.is_filled() {
        return None;
    }
    let where_to = match &edge.edges.value {
        EdgesPhrase::All => "all round".to_owned(),
        EdgesPhrase::AllOpen => "along all open edges".to_owned(),
        EdgesPhrase::Named(names) => along(names),
    };
    let sort = match edge.sort {
        EdgeSort::Thickened => "thickened to a depth of",
        EdgeSort::Turndown => "turned down to a depth of",
    };
    let bars = edge.bars.as_ref().map(|bars| {
        let thick = length(bars.value.bar.diameter());
        match bars.value.count {
            1 => format!(", with a {thick} bar"),
            count => format!(", with {count} bars of {thick}"),
        }
    });
    Some(format!(
        "{sort} {}, {} wide, {where_to}{}",
        inches(edge.depth.value),
        inches(edge.width.value),
        bars.unwrap_or_default()
    ))
}

fn along(names: &[EdgeName]) -> String {
    let looking: Vec<String> = names
        .iter()
        .filter_map(|name| match name {
            EdgeName::Looking(side) => Some(side.to_string()),
            EdgeName::Number(_) | EdgeName::Long(_) | EdgeName::Called(_) => None,
        })
        .collect();
    let sides = |count: usize| if count == 1 { "side" } else { "sides" };
    // A walked side's number is for the tape measure; the customer reads how many.
    let numbered = names.len() - looking.len();
    if looking.is_empty() {
        return format!("along {numbered} {}", sides(numbered));
    }
    let also = if numbered == 0 {
        String::new()
    } else {
        format!(" and {numbered} more")
    };
    format!("on the {} {}{also}", list(&looking), sides(looking.len()))
}

/// `3 risers of 7 in, 12 in treads, 5 ft wide, to the south of the stoop`.
pub(super) fn steps(takeoff: &Takeoff) -> String {
    let flights = takeoff.slabs.iter().filter_map(|slab| {
        let steps = slab.sections.steps.as_ref()?;
        let risers = match steps.risers.value {
            1 => "1 riser".to_owned(),
            count => format!("{count} risers"),
        };
        let treads = steps.tread.as_ref().filter(|_| steps.treads() != 0);
        let treads = treads.map(|tread| format!(", {} treads", inches(tread.value)));
        let base = steps.base.as_ref().filter(|_| steps.treads() != 0);
        let base = base.map(|base| {
            format!(
                ", on {} of {}",
                inches(base.depth.value),
                base.material.value
            )
        });
        Some(format!(
            "{risers} of {}{}, {} wide, down to the {} of the {}{}",
            inches(steps.rise.value),
            treads.unwrap_or_default(),
            length(steps.width.value),
            steps.edge.name(),
            slab.called,
            base.unwrap_or_default()
        ))
    });
    flights.collect::<Vec<String>>().join("; ")
}

/// Fill that nobody buys has to come from somewhere.
pub(super) fn assumptions(takeoff: &Takeoff) -> Vec<String> {
    let soil = takeoff
        .slabs
        .iter()
        .filter(|slab| slab.sections.is_filled() && slab.sections.fill().is_none());
    soil.map(|slab| {
        format!(
            "Clean soil from your site fills the inside of the {}",
            slab.called
        )
    })
    .collect()
}

/// Nobody has priced a rail.
pub(super) fn not_included(takeoff: &Takeoff) -> Option<String> {
    let has_steps = |slab: &Slab| slab.sections.steps.is_some();
    let any = takeoff.slabs.iter().any(|slab| has_steps(slab));
    any.then(|| "Handrails at the steps".to_owned())
}

/// A flight as it lies on the plan: two corners of its box, and a line at the foot of each step.
pub(super) struct Flight {
    pub low: Point,
    pub high: Point,
    pub treads: Vec<(Point, Point)>,
}

pub(super) fn flight(slab: &Slab) -> Option<Flight> {
    let steps = slab.sections.steps.as_ref()?;
    let tread = steps.tread.as_ref()?.value;
    let (a, b) = steps.top;
    let Point { x, y } = Direction::from(steps.edge).step(tread);
    let down = |point: Point, steps: u32| {
        let times = i64::from(steps);
        Point::new(point.x + x * times, point.y + y * times)
    };
    let many = steps.treads();
    if many == 0 {
        return None;
    }
    let foot = down(b, many);
    Some(Flight {
        low: Point::new(a.x.min(foot.x), a.y.min(foot.y)),
        high: Point::new(a.x.max(foot.x), a.y.max(foot.y)),
        treads: (1..=many).map(|n| (down(a, n), down(b, n))).collect(),
    })
}
