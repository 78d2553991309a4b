//! The slab before it is jointed, and what its joints have to reach.

use super::curve::Curve;
use super::fan::Taper;
use super::layout::Asked;
use super::seam::{Beyond, Edge, Seam, edges, heading, heading_at_end};
use super::sheet::Piece;
use super::way::{self, Way, distance, narrow};
use crate::geometry::line::Line;
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;
use crate::values::Length;

/// A joint that ends this near a place runs to it: an eighth of an inch.
pub(super) const REACH: i64 = 3_175_000;
/// Nothing passes nearer than this without running to it: a foot. Common practice, no source.
pub(super) const CLEAR: i64 = 304_800_000;
/// An inside corner turns by more than this: the sine of about 20 degrees.
const TURN: i64 = way::ONE / 1000 * 342;

/// A place that a joint has to run to, since a crack starts there.
#[derive(Clone, Debug)]
pub(super) struct Need {
    pub at: Point,
    /// Whose corner it is, when it is not the rim's.
    pub thing: Option<usize>,
    /// Ways into the slab from here.
    pub ways: Vec<Way>,
    /// The sides on from here and back from here: what lies between them is slab.
    pub bounds: [Way; 2],
    /// Short sides beside it: a joint to one of them will do.
    pub beside: Vec<Seam>,
}

/// An opening, a box or something solid, wholly within the slab.
#[derive(Clone, Debug)]
pub(super) struct Thing {
    pub ring: Vec<Edge>,
    pub low: Point,
    pub high: Point,
    /// Too small to give a panel another shape.
    pub is_small: bool,
    /// Without corners: two joints to it will do.
    pub is_round: bool,
    /// With an isolation around it: no joint need run to it.
    pub is_free: bool,
}

impl Need {
    /// Whether a joint this way runs well into the slab.
    pub fn is_open(&self, way: Way) -> bool {
        let clear = self
            .bounds
            .iter()
            .all(|side| side.cosine(way) < way::ONE / 2 + way::ONE / 500);
        clear && self.ways.iter().any(|known| 0 < known.cosine(way))
    }
}

impl Thing {
    pub fn middle(&self) -> Point {
        Point::new(
            i64::midpoint(self.low.x, self.high.x),
            i64::midpoint(self.low.y, self.high.y),
        )
    }

    /// What reaches over the edge of the slab: its corners within are those of the rim.
    fn over(ring: Vec<Edge>) -> Self {
        let (low, high) = super::measure::extent(&ring, Way::EAST);
        Self {
            ring,
            low,
            high,
            is_small: false,
            is_round: false,
            is_free: false,
        }
    }
}

#[derive(Clone, Debug)]
pub(super) struct Ground<'a> {
    pub asked: &'a Asked<'a>,
    pub whole: Piece,
    pub things: Vec<Thing>,
    pub needs: Vec<Need>,
    /// The directions of the slab.
    pub frames: Vec<Way>,
    /// Its corners, and those of what lies in it.
    pub turns: Vec<Point>,
    /// Sides that draw nearer to each other.
    pub tapers: Vec<Taper>,
    pub longest: i64,
    /// The limit, or the width of a slab that is narrower.
    pub spacing: i64,
    /// A strip under this has its joints by the limit alone.
    pub narrow: i64,
}

impl<'a> Ground<'a> {
    pub fn of(asked: &'a Asked<'a>) -> Self {
        let longest = asked.longest.as_nanometres().max(1);
        let rim = ring_of(asked.outline, Beyond::Rim);
        let around: i64 = edges(&rim)
            .map(|(edge, to)| {
                edge.curve
                    .map_or_else(|| distance(edge.at, to), |c| c.length(edge.at, to))
            })
            .sum();
        let mut whole = Piece::new(vec![rim]);
        // Twice the area over the way around: of a strip its width, of a square half of it.
        let wide = narrow(whole.doubled_area() / i128::from(around.max(1)));
        let spacing = longest.min(wide);
        let short = (2 * CLEAR).min(spacing / 3);
        let mut things: Vec<Thing> = Vec::new();
        let boxes = asked.boxes.iter().map(box_of);
        let inside: Vec<Outline> = boxes.chain(asked.solid.iter().cloned()).collect();
        let isolated: Vec<Outline> = asked.isolated.iter().map(box_of).collect();
        let others = asked.outline.holes().iter().chain(&inside);
        let isolated = isolated.iter().map(|one| (one, true));
        for (outline, is_isolated) in others.map(|one| (one, false)).chain(isolated) {
            let number = things.len();
            let mut ring: Vec<Edge> = ring_of(outline, Beyond::Thing(number));
            reverse(&mut ring);
            let apart = |at: Point| {
                whole.holds(at)
                    && whole
                        .loops
                        .iter()
                        .flat_map(|ring| edges(ring))
                        .all(|(edge, to)| !edge.seam(to).is_near(at, REACH))
            };
            if !ring.iter().all(|edge| apart(edge.at)) {
                let over = ring_of(outline, Beyond::Thing(number));
                if let Some(carved) = whole.carved(&over, number) {
                    whole = carved;
                    things.push(Thing::over(over));
                }
                continue;
            }
            let (low, high) = super::measure::extent(&ring, Way::EAST);
            let (wide, tall) = (high.x - low.x, high.y - low.y);
            let is_small = wide.max(tall) <= short;
            let is_free = is_isolated && is_small;
            things.push(Thing {
                is_small,
                is_round: is_free || corners(&ring, short).is_empty(),
                is_free,
                ring: ring.clone(),
                low,
                high,
            });
            whole.loops.push(ring);
        }
        let needs = whole.loops.iter().flat_map(|ring| corners(ring, short));
        let is_free = |number: usize| things[number].is_free;
        let needs = needs.filter(|need| !need.thing.is_some_and(is_free));
        Self {
            asked,
            needs: needs.collect(),
            frames: super::measure::frames(&whole),
            turns: super::measure::turns(&whole),
            tapers: super::fan::tapers(&whole, longest),
            things,
            whole,
            longest,
            spacing,
            narrow: (2 * CLEAR).min(longest / 3),
        }
    }

    /// How far places lie from the middle of the rim's corners, in millimetres: the same of a turned slab.
    pub fn off_middle(&self, places: &[Point]) -> i64 {
        let middle = middle(
            &self.whole.loops[0]
                .iter()
                .map(|edge| edge.at)
                .collect::<Vec<_>>(),
        );
        let off = places.iter().map(|place| distance(*place, middle));
        off.sum::<i64>() / 1_000_000
    }

    /// About how many panels the limit alone asks for.
    pub fn panels(&self) -> i64 {
        let longest = i128::from(self.longest);
        let by_area = self.whole.doubled_area() / (2 * longest * longest);
        let around: i64 = edges(&self.whole.loops[0])
            .map(|(edge, to)| edge.seam(to).length())
            .sum();
        narrow(by_area.max(i128::from(around) / (2 * longest)))
    }

    pub fn is_small(&self, thing: usize) -> bool {
        self.things.get(thing).is_some_and(|thing| thing.is_small)
    }
}

fn box_of(&(low, high): &(Point, Point)) -> Outline {
    let (wide, tall) = (high.x - low.x, high.y - low.y);
    Outline::rectangle(Length::nanometres(wide), Length::nanometres(tall)).moved(low)
}

fn ring_of(outline: &Outline, beyond: Beyond) -> Vec<Edge> {
    let edge = |side: &crate::geometry::side::Side| Edge {
        at: side.from,
        curve: Curve::of(side.from, side.to, side.bulge),
        beyond,
        way: Way::between(side.from, side.to).unwrap_or(Way::EAST),
    };
    outline.sides().iter().map(edge).collect()
}

/// The middle of some places.
pub(super) fn middle(places: &[Point]) -> Point {
    let many = i64::try_from(places.len()).unwrap_or(1).max(1);
    let sum = |of: fn(&Point) -> i64| places.iter().map(of).sum::<i64>() / many;
    Point::new(sum(|at| at.x), sum(|at| at.y))
}

/// A piece of what lies within an outline.
pub(super) fn inside_of(outline: &Outline) -> Piece {
    Piece::new(vec![ring_of(outline, Beyond::Rim)])
}

/// Walks the other way around.
fn reverse(ring: &mut Vec<Edge>) {
    let turned: Vec<Edge> = edges(ring)
        .map(|(edge, to)| Edge {
            at: to,
            curve: edge.curve.map(Curve::reversed),
            way: edge.way.back(),
            ..*edge
        })
        .collect();
    *ring = turned;
    ring.reverse();
}

/// Where a loop turns into the slab.
fn corners(ring: &[Edge], short: i64) -> Vec<Need> {
    let many = ring.len();
    let corner = |index: usize| {
        let before = (index + many - 1) % many;
        let (at, to, from) = (ring[index].at, ring[(index + 1) % many].at, ring[before].at);
        let out = heading(&ring[index])?;
        let into = heading_at_end(ring, before)?;
        if -TURN <= into.sine(out) && 0 <= into.cosine(out) || 0 <= into.sine(out) {
            return None;
        }
        // On along both sides, square to both, and halfway between; those that lie well within.
        let half = Way::between(
            Point::new(0, 0),
            Point::new(into.left().x + out.left().x, into.left().y + out.left().y),
        )?;
        let mut ways: Vec<Way> = Vec::new();
        // From a square corner the sides go on; halfway between would only make sharp corners.
        let is_square = into.cosine(out).abs() < way::ONE / 100;
        for way in [into, out.back(), into.left(), out.left(), half] {
            let within = |side: Way| side.cosine(way) < way::ONE / 2 + way::ONE / 500;
            let apart = |known: &Way| known.cosine(way) < way::ONE - way::ONE / 1000;
            if within(out)
                && within(into.back())
                && ways.iter().all(apart)
                && !(is_square && way == half)
            {
                ways.push(way);
            }
        }
        let thing = [before, index]
            .iter()
            .find_map(|edge| match ring[*edge].beyond {
                Beyond::Thing(number) => Some(number),
                Beyond::Rim | Beyond::Joint => None,
            });
        let side = |a: Point, b: Point| {
            (thing.is_some() && distance(a, b) <= short).then(|| Seam::straight(a, b))
        };
        Some(Need {
            at,
            thing,
            ways,
            bounds: [out, into.back()],
            beside: [side(from, at), side(at, to)]
                .into_iter()
                .flatten()
                .collect(),
        })
    };
    (0..many).filter_map(corner).collect()
}

impl From<&Line> for Seam {
    fn from(line: &Line) -> Self {
        Self::new(
            line.from,
            line.to,
            Curve::of(line.from, line.to, line.bulge),
        )
    }
}
