//! Joints that the owner draws: taken as they are, and run on to the rim or to the next joint.

use super::ground::{Ground, REACH};
use super::layout::{Break, Fault};
use super::plan::{self, Plan};
use super::seam::Seam;
use super::sheet::Piece;
use super::way;
use crate::geometry::line::Line;
use crate::geometry::point::Point;

/// Farther than any slab: 2,000 ft.
const FAR: i64 = 2_000 * 304_800_000;

pub(super) fn plan(ground: &Ground<'_>, lines: &[Line]) -> Plan {
    let seams: Vec<Seam> = lines
        .iter()
        .filter(|line| line.from != line.to)
        .map(Seam::from)
        .collect();
    let mut pieces = vec![ground.whole.clone()];
    let mut made = Vec::new();
    for seam in &seams {
        plan::cut_all(&mut pieces, seam, &mut made);
    }
    // What ended within a panel runs on, straight, as far as that panel does.
    for seam in seams.iter().filter(|seam| seam.curve.is_none()) {
        for part in run_on(&pieces, seam) {
            plan::cut_all(&mut pieces, &part, &mut made);
        }
    }
    Plan::of(ground, pieces, made)
}

fn run_on(pieces: &[Piece], seam: &Seam) -> Vec<Seam> {
    let long = seam.length();
    let whole = seam.part(seam.way.from(seam.from, -FAR), seam.way.from(seam.to, FAR));
    let far = |place: Point| seam.way.along(place - seam.from);
    let stretches = pieces.iter().flat_map(|piece| piece.stretches(&whole));
    let is_drawn = |part: &Seam| far(part.from) < long - REACH && REACH < far(part.to);
    stretches.filter(is_drawn).collect()
}

/// Where a line drawn crosses what is solid.
pub(super) fn in_solid(ground: &Ground<'_>, lines: &[Line]) -> Vec<Break> {
    let solid = ground.asked.solid.iter().map(super::ground::inside_of);
    let solid: Vec<Piece> = solid.collect();
    let crossed = lines.iter().flat_map(|line| {
        let seam = Seam::from(line);
        solid
            .iter()
            .filter_map(move |piece| piece.stretches(&seam).first().copied())
    });
    let middle = |part: Seam| {
        let half = |a: i64, b: i64| i64::midpoint(a, b);
        Point::new(half(part.from.x, part.to.x), half(part.from.y, part.to.y))
    };
    crossed
        .filter(|part| way::distance(part.from, part.to) > REACH)
        .map(|part| Break {
            at: middle(part),
            what: Fault::InSolid,
        })
        .collect()
}
