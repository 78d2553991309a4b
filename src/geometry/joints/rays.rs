//! Joints that could run to inside corners, openings, boxes and places that the takeoff names.

use super::ground::{Ground, REACH};
use super::measure;
use super::seam::{Seam, edges};
use super::way::{Way, distance, is_near};
use crate::geometry::point::Point;

/// More joints than this to places are not weighed against each other.
const MOST: usize = 60;
/// Farther than any slab: 2,000 ft.
const FAR: i64 = 2_000 * 304_800_000;

/// Whether two joints run to one place, so that one can stand for the other.
pub(super) fn share_a_place(one: &Seam, other: &Seam) -> bool {
    let near = |a: Point, b: Point| is_near(a, b, REACH);
    near(one.from, other.from)
        || near(one.from, other.to)
        || near(one.to, other.from)
        || near(one.to, other.to)
}

/// Joints from each place that needs one, through to the rim or to another opening.
pub(super) fn rays(ground: &Ground<'_>) -> Vec<Seam> {
    let mut rays: Vec<Seam> = Vec::new();
    let mut take = |from: Point, way: Way| {
        let seam = Seam::straight(from, way.from(from, FAR));
        let Some(found) = ground.whole.first_crossing(&seam) else {
            return;
        };
        let seam = found.seam;
        let same = |a: Point, b: Point| is_near(a, b, REACH);
        let is_known = |known: &Seam| {
            same(known.from, seam.from) && same(known.to, seam.to)
                || same(known.from, seam.to) && same(known.to, seam.from)
        };
        if rays.len() < MOST && !rays.iter().any(is_known) {
            rays.push(seam);
        }
    };
    for meet in ground.asked.meet.iter().filter(|meet| meet.must) {
        for (edge, to) in ground.whole.loops.iter().flat_map(|ring| edges(ring)) {
            let side = edge.seam(to);
            if side.is_near(meet.at, REACH)
                && let Some(way) = side.heading(meet.at)
            {
                take(meet.at, way.left());
            }
        }
    }
    let frames = measure::frames(&ground.whole);
    for thing in ground.things.iter().filter(|thing| thing.is_round) {
        let middle = thing.middle();
        for way in frames.iter().take(2) {
            for way in [*way, way.left(), way.back(), way.left().back()] {
                take(middle, way);
            }
        }
    }
    for need in &ground.needs {
        // From the middles of short sides, and from corners where a side is long.
        for side in &need.beside {
            let (from, to) = (side.from, side.to);
            let middle = Point::new(i64::midpoint(from.x, to.x), i64::midpoint(from.y, to.y));
            take(middle, side.way.left());
        }
        if need.beside.len() < 2 {
            for way in &need.ways {
                take(need.at, *way);
            }
        }
    }
    // From one inside corner across to another.
    for (number, need) in ground.needs.iter().enumerate() {
        for other in &ground.needs[number + 1..] {
            let across = distance(need.at, other.at);
            if need.thing.is_some() && need.thing == other.thing || 3 * ground.longest < 2 * across
            {
                continue;
            }
            if let Some(way) = Way::between(need.at, other.at)
                && need.is_open(way)
                && other.is_open(way.back())
            {
                take(need.at, way);
            }
        }
    }
    rays.sort_by_cached_key(|ray| {
        (
            ray.length() / 1_000_000,
            ground.off_middle(&[ray.from, ray.to]),
        )
    });
    rays
}
