//! The joints that may run to inside corners, openings and boxes, and how they may be put together.

use std::collections::BTreeSet;

use super::ground::{Ground, REACH};
use super::plan;
use super::score::{Score, relieves};
use super::seam::{Seam, edges};
use super::way::{self, Way, distance, is_near};
use crate::geometry::point::Point;

/// More joints than this to places are not weighed against each other.
const MOST: usize = 60;
/// So many ways to run to every place are written down.
const COVERS: usize = 400;
/// Farther than any slab: 2,000 ft.
const FAR: i64 = 2_000 * 304_800_000;

/// A joint to a place that needs one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ray {
    pub seam: Seam,
    /// The joint that it ends at; else it runs through to the rim or to another opening.
    pub at: Option<usize>,
}

impl Ray {
    /// This joint and the one it ends at, each by its number.
    fn with_what_it_ends_at(&self, number: usize) -> u64 {
        self.at.map_or(0, |at| 1 << at) | 1 << number
    }
}

/// Joints from each place that needs one, through to the rim or to another opening.
pub(super) fn rays(ground: &Ground<'_>) -> Vec<Ray> {
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
    for thing in ground.things.iter().filter(|thing| thing.is_round) {
        let middle = thing.middle();
        for way in ground.frames.iter().take(2) {
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
        let far = ground.off_middle(&[ray.from, ray.to]);
        (ray.length() / 1_000_000, far)
    });
    let through = rays.iter().map(|seam| Ray {
        seam: *seam,
        at: None,
    });
    // Last, when what they end at is there.
    let all = through.chain(ending(ground, &rays));
    all.take(MOST).collect()
}

/// The same joints, each ending at another that it crosses, the shortest first.
fn ending(ground: &Ground<'_>, rays: &[Seam]) -> Vec<Ray> {
    let mut found = Vec::new();
    for ray in rays {
        for (number, other) in rays.iter().enumerate() {
            if let Some(at) = plan::crossing(ray, other) {
                let seam = ray.part(ray.from, at);
                found.push(Ray {
                    seam,
                    at: Some(number),
                });
            }
        }
    }
    found.sort_by_cached_key(|ray| {
        let far = ground.off_middle(&[ray.seam.from, ray.seam.to]);
        (ray.seam.length() / 1_000_000, far)
    });
    found
}

/// Every way to run a joint to each place, as far as they are not too many, what is sure to be joint
/// the least first.
pub(super) fn covers(ground: &Ground<'_>, rays: &[Ray]) -> Vec<u64> {
    let corners = ground.needs.iter();
    let corners = corners.map(|need| options(rays, |seam| relieves(need, seam)));
    let round = (0..ground.things.len()).filter(|thing| ground.things[*thing].is_round);
    let round = round.map(|thing| pairs(&options(rays, |seam| ground.ends_on(thing, seam))));
    let mut places: Vec<Vec<u64>> = corners.chain(round).filter(|one| !one.is_empty()).collect();
    // Where the choice is least, first.
    places.sort_by_key(Vec::len);
    let mut open = BTreeSet::from([named(ground, rays)]);
    for options in &places {
        let is_met = |set: u64| options.iter().any(|option| set & option == *option);
        let mut next = BTreeSet::new();
        for set in open {
            if is_met(set) {
                next.insert(set);
                continue;
            }
            next.extend(options.iter().map(|option| set | option));
        }
        open = cheapest(ground, rays, next);
    }
    let mut found: Vec<(Score, u64)> = open
        .into_iter()
        .map(|set| (cost(ground, rays, set), set))
        .collect();
    found.sort_unstable();
    found.into_iter().map(|(_, set)| set).collect()
}

/// The joints that run to a place, each with what it ends at.
fn options(rays: &[Ray], runs: impl Fn(&Seam) -> bool) -> Vec<u64> {
    let all = rays.iter().enumerate().filter(|(_, ray)| runs(&ray.seam));
    all.map(|(number, ray)| ray.with_what_it_ends_at(number))
        .collect()
}

/// A round place needs two joints.
fn pairs(options: &[u64]) -> Vec<u64> {
    let mut pairs = Vec::new();
    for (number, one) in options.iter().enumerate() {
        pairs.extend(options[number + 1..].iter().map(|other| one | other));
    }
    pairs
}

fn cheapest(ground: &Ground<'_>, rays: &[Ray], sets: BTreeSet<u64>) -> BTreeSet<u64> {
    if sets.len() <= COVERS {
        return sets;
    }
    let mut by_cost: Vec<(Score, u64)> = sets
        .into_iter()
        .map(|set| (cost(ground, rays, set), set))
        .collect();
    by_cost.sort_unstable();
    by_cost
        .into_iter()
        .take(COVERS)
        .map(|(_, set)| set)
        .collect()
}

/// What a set is sure to be charged.
fn cost(ground: &Ground<'_>, rays: &[Ray], set: u64) -> Score {
    let mut cost = Score::default();
    for (number, ray) in rays.iter().enumerate() {
        if set >> number & 1 == 1 {
            cost += ground.least(&ray.seam);
        }
    }
    cost
}

/// Beside those: all along one direction, all square to it, all of both.
pub(super) fn starts(ground: &Ground<'_>, rays: &[Ray]) -> Vec<u64> {
    let of = |keep: &dyn Fn(&Seam) -> bool| -> u64 {
        let kept = rays.iter().enumerate();
        let kept = kept.filter(|(_, ray)| ray.at.is_none() && keep(&ray.seam));
        kept.fold(named(ground, rays), |set, (number, _)| set | 1 << number)
    };
    let mut sets = Vec::new();
    for frame in &ground.frames {
        let along = |seam: &Seam| seam.way.sine(*frame).abs() < way::ONE / 50;
        let square = |seam: &Seam| seam.way.cosine(*frame).abs() < way::ONE / 50;
        sets.push(of(&along));
        sets.push(of(&square));
        sets.push(of(&|seam| along(seam) || square(seam)));
    }
    sets.sort_unstable();
    sets.dedup();
    sets
}

/// The joints to the places that the takeoff names.
fn named(ground: &Ground<'_>, rays: &[Ray]) -> u64 {
    let must = ground.asked.meet.iter().filter(|meet| meet.must);
    let must: Vec<Point> = must.map(|meet| meet.at).collect();
    let runs = |ray: &Ray| ray.at.is_none() && must.iter().any(|at| ray.seam.is_near(*at, REACH));
    let all = rays.iter().enumerate().filter(|(_, ray)| runs(ray));
    all.fold(0, |set, (number, _)| set | 1 << number)
}
