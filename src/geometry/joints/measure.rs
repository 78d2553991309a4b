//! How long and wide a panel is, and where it is too sharp.

use std::borrow::Cow;

use super::curve::Curve;
use super::seam::{Beyond, Edge, edges, heading, heading_at_end};
use super::sheet::Piece;
use super::way::{self, Way, distance, is_near, narrow};
use crate::geometry::point::Point;

/// A side turns by less than this where it goes on: the cosine of 20 degrees.
const ON: i64 = way::ONE / 1000 * 940;
/// Sines of about half a degree.
const SQUARE: i64 = way::ONE / 115;

/// The measures of one panel.
#[derive(Clone, Debug)]
pub(super) struct Measured {
    /// Twice its area.
    pub doubled: i128,
    /// The longer way, then the shorter, where each is longest.
    pub size: [i64; 2],
    /// The same by their middles.
    pub mean: [i64; 2],
    /// How wide it is at the least where a joint bounds it; `None` where none does.
    pub cut_wide: Option<i64>,
    /// Whether only the rim bounds it along its longer way.
    pub is_strip: bool,
    /// The four corners of a rectangle, in order.
    pub rectangle: Option<[Point; 4]>,
    /// Corners sharper than 60 degrees beside a joint, and the cosine.
    pub sharp: Vec<(Point, i64)>,
}

/// A corner of the panel, and the side on from it to the next corner.
struct Chain {
    from: Point,
    length: i64,
    is_straight: bool,
    has_joint: bool,
    heading: Way,
}

impl Measured {
    /// `is_small` tells what is too small to give a panel another shape.
    pub fn of(piece: &Piece, is_small: &dyn Fn(usize) -> bool) -> Self {
        let doubled = piece.doubled_area();
        let ring = plain(&piece.loops[0], is_small);
        let mut measured = Self {
            doubled,
            size: [0; 2],
            mean: [0; 2],
            cut_wide: None,
            is_strip: false,
            rectangle: None,
            sharp: piece.loops.iter().flat_map(|ring| sharp(ring)).collect(),
        };
        match chains(&ring) {
            Some(chains) => measured.by_sides(&chains),
            None => measured.by_box(&ring),
        }
        measured
    }

    /// Four sides: each way by the sides that run along it.
    fn by_sides(&mut self, chains: &[Chain; 4]) {
        let way = |one: usize| {
            let (a, b) = (&chains[one], &chains[one + 2]);
            let bounds = [&chains[one + 1], &chains[(one + 3) % 4]];
            (
                a.length.max(b.length),
                i64::midpoint(a.length, b.length),
                bounds.iter().any(|chain| chain.has_joint),
            )
        };
        let (first, second) = (way(0), way(1));
        let (long, short) = if second.1 <= first.1 {
            (first, second)
        } else {
            (second, first)
        };
        self.size = [long.0.max(short.0), long.0.min(short.0)];
        self.mean = [long.1, short.1];
        self.cut_wide = [long, short]
            .iter()
            .filter(|way| way.2)
            .map(|way| way.1)
            .min();
        self.is_strip = !short.2;
        let is_square =
            |n: usize| chains[n].heading.cosine(chains[(n + 1) % 4].heading).abs() < SQUARE;
        if chains.iter().all(|chain| chain.is_straight) && (0..4).all(is_square) {
            self.rectangle = Some([0, 1, 2, 3].map(|n| chains[n].from));
        }
    }

    /// Any other shape: the box around it that is nearest to square, along one of its sides.
    fn by_box(&mut self, ring: &[Edge]) {
        let boxes = directions(ring).into_iter().map(|way| {
            let (low, high) = extent(ring, way);
            let sides = [high.x - low.x, high.y - low.y];
            [sides[0].max(sides[1]), sides[0].min(sides[1])]
        });
        let size = boxes.min().unwrap_or_default();
        (self.size, self.mean) = (size, size);
        // A wedge is as wide as its middle, twice.
        let wide = narrow(self.doubled / i128::from(size[0].max(1)));
        self.cut_wide = ring
            .iter()
            .any(|edge| edge.beyond == Beyond::Joint)
            .then_some(wide.min(size[1]));
    }
}

/// The directions to cut a piece in: of the straight sides around it and within it; of a round one
/// with something round in it, toward that.
pub(super) fn frames(piece: &Piece) -> Vec<Way> {
    let mut all = piece.loops.iter().flatten();
    if all.all(|edge| edge.curve.is_some()) {
        let middle = |ring: &[Edge]| {
            let (low, high) = extent(ring, Way::EAST);
            Point::new(i64::midpoint(low.x, high.x), i64::midpoint(low.y, high.y))
        };
        let own = middle(&piece.loops[0]);
        let others = piece.loops[1..].iter().map(|ring| middle(ring));
        let farthest = others.max_by_key(|other| own.distance_squared(*other));
        let toward = farthest.filter(|other| 1_000_000 < distance(own, *other));
        let toward = toward.and_then(|other| Way::between(own, other));
        let circles = piece.loops[0].iter().filter_map(|edge| edge.curve);
        let centers: Vec<Point> = circles.map(|curve| curve.center).collect();
        let is_circle = centers
            .iter()
            .all(|center| is_near(*center, centers[0], 1_000_000));
        return match toward {
            // Where a circle is said to begin tells nothing of how to cut it.
            Some(way) if is_circle => vec![way],
            _ => directions(&piece.loops[0])
                .into_iter()
                .chain(toward)
                .collect(),
        };
    }
    let mut ways = directions(&piece.loops[0]);
    if piece.loops[0].iter().all(|edge| edge.curve.is_some()) {
        ways.clear();
    }
    for ring in &piece.loops[1..] {
        for way in directions(ring) {
            let is_known =
                |known: &Way| known.sine(way).abs().min(known.cosine(way).abs()) < 2 * SQUARE;
            let is_straight = ring.iter().any(|edge| edge.curve.is_none());
            if is_straight && ways.len() < 3 && !ways.iter().any(is_known) {
                ways.push(way);
            }
        }
    }
    ways
}

/// The corners of a piece, without the places where a side goes on as another.
pub(super) fn turns(piece: &Piece) -> Vec<Point> {
    let mut found = Vec::new();
    for ring in &piece.loops {
        for index in 0..ring.len() {
            let before = (index + ring.len() - 1) % ring.len();
            let ways = heading_at_end(ring, before).zip(heading(&ring[index]));
            if ways.is_some_and(|(into, out)| into.cosine(out) < ON) {
                found.push(ring[index].at);
            }
        }
    }
    found
}

/// Up to three directions of the straight sides, the longest first; of a round shape, of its arcs.
pub(super) fn directions(ring: &[Edge]) -> Vec<Way> {
    let is_round = ring.iter().all(|edge| edge.curve.is_some());
    let mut sides: Vec<(i64, Way)> = edges(ring)
        .filter(|(edge, _)| edge.curve.is_some() == is_round)
        .map(|(edge, to)| {
            let way = edge.seam(to).way;
            (way.along(to - edge.at), way)
        })
        .collect();
    sides.sort_by_key(|side| std::cmp::Reverse(side.0 / 1_000_000));
    let mut ways: Vec<Way> = Vec::new();
    for (_, way) in sides {
        let is_known = |known: &Way| {
            let (sine, cosine) = (known.sine(way).abs(), known.cosine(way).abs());
            sine.min(cosine) < 2 * SQUARE
        };
        if ways.len() < 3 && !ways.iter().any(is_known) {
            ways.push(way);
        }
    }
    ways
}

/// The corners of the box around a loop, along a way and aside of it.
pub(super) fn extent(ring: &[Edge], way: Way) -> (Point, Point) {
    let place = |at: Point| Point::new(way.along(at), way.aside(at));
    let first = place(ring[0].at);
    let (mut low, mut high) = (first, first);
    let mut take = |at: Point| {
        low = Point::new(low.x.min(at.x), low.y.min(at.y));
        high = Point::new(high.x.max(at.x), high.y.max(at.y));
    };
    for (edge, to) in edges(ring) {
        take(place(edge.at));
        if let Some(curve) = &edge.curve {
            for out in [way, way.left(), way.back(), way.left().back()] {
                let top = out.from(curve.center, curve.radius);
                if curve.holds(edge.at, to, top) {
                    take(place(top));
                }
            }
        }
    }
    (low, high)
}

/// The loop without the corners of what is too small to count.
fn plain<'a>(ring: &'a [Edge], is_small: &dyn Fn(usize) -> bool) -> Cow<'a, [Edge]> {
    let small = |edge: &Edge| matches!(edge.beyond, Beyond::Thing(number) if is_small(number));
    if !ring.iter().any(small) {
        return Cow::Borrowed(ring);
    }
    let many = ring.len();
    let mut kept = Vec::with_capacity(many);
    for (index, edge) in ring.iter().enumerate() {
        let before = &ring[(index + many - 1) % many];
        if small(edge) || small(before) {
            continue;
        }
        let next = &ring[(index + 1) % many];
        // The way past it is a joint that it only interrupts.
        let edge = if small(next) {
            Edge {
                beyond: Beyond::Joint,
                ..*edge
            }
        } else {
            *edge
        };
        kept.push(edge);
    }
    if kept.len() < 2 {
        Cow::Borrowed(ring)
    } else {
        Cow::Owned(kept)
    }
}

/// The four sides between four corners, when all turn outward.
fn chains(ring: &[Edge]) -> Option<[Chain; 4]> {
    let many = ring.len();
    let mut corners = [(0, Way::EAST); 4];
    let mut known = 0;
    for index in 0..many {
        let out = heading(&ring[index])?;
        let into = heading_at_end(ring, (index + many - 1) % many)?;
        if ON <= into.cosine(out) {
            continue;
        }
        if into.sine(out) <= 0 || known == 4 {
            return None;
        }
        corners[known] = (index, out);
        known += 1;
    }
    if known != 4 {
        return None;
    }
    let chain = |n: usize| {
        let (first, heading) = corners[n];
        let last = corners[(n + 1) % 4].0;
        let count = (last + many - first - 1) % many + 1;
        let mut chain = Chain {
            from: ring[first].at,
            length: 0,
            is_straight: true,
            has_joint: false,
            heading,
        };
        for step in 0..count {
            let edge = &ring[(first + step) % many];
            let to = ring[(first + step + 1) % many].at;
            let long = |curve: &Curve| curve.length(edge.at, to);
            chain.length += edge
                .curve
                .as_ref()
                .map_or_else(|| edge.way.along(to - edge.at), long);
            chain.is_straight &= edge.curve.is_none();
            chain.has_joint |= edge.beyond == Beyond::Joint;
        }
        // Straight from corner to corner, or a side with a bend that no eye calls a corner.
        let straight = distance(chain.from, ring[last].at);
        chain.is_straight &= chain.length - straight < 100_000;
        chain
    };
    Some([chain(0), chain(1), chain(2), chain(3)])
}

/// Corners under 60 degrees beside a joint, with their cosine.
fn sharp(ring: &[Edge]) -> Vec<(Point, i64)> {
    let many = ring.len();
    let corner = |index: usize| {
        let before = (index + many - 1) % many;
        if ring[index].beyond != Beyond::Joint && ring[before].beyond != Beyond::Joint {
            return None;
        }
        let out = heading(&ring[index])?;
        let into = heading_at_end(ring, before)?;
        let cosine = into.back().cosine(out);
        let is_sharp = 0 < into.sine(out) && way::ONE / 2 + way::ONE / 1000 < cosine;
        is_sharp.then_some((ring[index].at, cosine))
    };
    (0..many).filter_map(corner).collect()
}

/// The nearest whole degrees of an angle under 60 by its cosine; half of one goes up.
pub(super) fn degrees(cosine: i64) -> i64 {
    let first = (1..60)
        .rev()
        .find(|degree| cosine <= super::curve::cosine_of_halves(2 * degree - 1));
    first.unwrap_or(0)
}
