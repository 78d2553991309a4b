//! A slab as loops of sides, and how a joint cuts it: the same loop falls in two, two loops become one.
//!
//! So panels tile the slab by construction, whatever way joints run.

use super::curve::Curve;
use super::way::{self, Way, distance, narrow};
use crate::geometry::point::Point;
use crate::values::Length;

/// Nearer than this is the same place: two thousandths of a millimetre.
pub(super) const NEAR: i64 = 2_000;
/// No joint is shorter: a millimetre.
const SHORT: i64 = 1_000_000;
/// The sine under which a joint runs along a side and not into the slab.
const ALONG: i64 = way::ONE / 10_000;

/// What lies on the right of a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Beyond {
    Rim,
    Joint,
    /// An opening, a box or something solid, by its number.
    Thing(usize),
}

/// A side of a panel from here to where the next one begins, the panel on its left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Edge {
    pub at: Point,
    pub curve: Option<Curve>,
    pub beyond: Beyond,
    /// Of a straight one, kept since it is asked for often.
    pub way: Way,
}

/// A joint or a stretch of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Seam {
    pub from: Point,
    pub to: Point,
    pub curve: Option<Curve>,
    /// Straight from end to end.
    pub way: Way,
}

/// A part of the slab: the loop around it, counter-clockwise, then those of what is left out of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Piece {
    pub loops: Vec<Vec<Edge>>,
    low: Point,
    high: Point,
}

/// Where a joint meets the side of a piece.
#[derive(Clone, Copy, Debug)]
struct Event {
    far: i64,
    ring: usize,
    edge: usize,
    at: Point,
    is_corner: bool,
    /// Whether the piece lies ahead of here along the joint, and behind.
    ahead: bool,
    behind: bool,
}

/// A stretch of joint across one piece, and whether its ends lie on other joints.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch {
    pub seam: Seam,
    pub on_joint: [bool; 2],
}

impl Seam {
    pub fn new(from: Point, to: Point, curve: Option<Curve>) -> Self {
        Self {
            from,
            to,
            curve,
            way: Way::between(from, to).unwrap_or(Way::EAST),
        }
    }

    pub fn straight(from: Point, to: Point) -> Self {
        Self::new(from, to, None)
    }

    /// The part between two of its places.
    pub fn part(&self, from: Point, to: Point) -> Self {
        match self.curve {
            None => Self { from, to, ..*self },
            Some(_) => Self::new(from, to, self.curve),
        }
    }

    pub fn length(&self) -> i64 {
        match &self.curve {
            None => self.way.along(self.to - self.from),
            Some(curve) => curve.length(self.from, self.to),
        }
    }

    pub fn bulge(&self) -> Length {
        let bulge = self
            .curve
            .map_or(0, |curve| curve.bulge(self.from, self.to));
        Length::nanometres(bulge)
    }

    /// Its direction where it begins and where it ends.
    pub fn heading(&self, at: Point) -> Option<Way> {
        match &self.curve {
            None => Some(self.way),
            Some(curve) => curve.heading(at),
        }
    }

    pub fn reversed(&self) -> Self {
        Self {
            from: self.to,
            to: self.from,
            curve: self.curve.map(Curve::reversed),
            way: self.way.back(),
        }
    }

    /// The nearest it comes to a place, when that is no farther than `reach`.
    pub fn near(&self, place: Point, reach: i64) -> Option<i64> {
        let rise = self.curve.map_or(0, |_| self.bulge().as_nanometres().abs());
        let (a, b, out) = (self.from, self.to, reach + rise);
        if place.x < a.x.min(b.x) - out
            || a.x.max(b.x) + out < place.x
            || place.y < a.y.min(b.y) - out
            || a.y.max(b.y) + out < place.y
        {
            return None;
        }
        let off = match &self.curve {
            None => {
                let far = self.way.along(place - a);
                if far < 0 {
                    distance(a, place)
                } else if self.way.along(b - a) < far {
                    distance(b, place)
                } else {
                    self.way.aside(place - a).abs()
                }
            }
            Some(curve) => {
                let out = Way::between(curve.center, place);
                let on = out.map(|way| way.from(curve.center, curve.radius));
                if on.is_some_and(|on| curve.holds(a, b, on)) {
                    (distance(curve.center, place) - curve.radius).abs()
                } else {
                    distance(a, place).min(distance(b, place))
                }
            }
        };
        (off <= reach).then_some(off)
    }

    pub fn is_near(&self, place: Point, reach: i64) -> bool {
        self.near(place, reach).is_some()
    }
}

impl Edge {
    pub fn seam(&self, to: Point) -> Seam {
        match self.curve {
            None => Seam {
                from: self.at,
                to,
                curve: None,
                way: self.way,
            },
            Some(_) => Seam::new(self.at, to, self.curve),
        }
    }
}

impl Piece {
    pub fn new(loops: Vec<Vec<Edge>>) -> Self {
        let mut piece = Self {
            loops,
            low: Point::default(),
            high: Point::default(),
        };
        let outer = &piece.loops[0];
        let (mut low, mut high) = (outer[0].at, outer[0].at);
        for (edge, to) in edges(outer) {
            // An arc stands off its chord by no more than its rise.
            let rise = edge.curve.map_or(0, |curve| curve.bulge(edge.at, to).abs());
            low = Point::new(
                low.x.min(edge.at.x - rise).min(to.x - rise),
                low.y.min(edge.at.y - rise).min(to.y - rise),
            );
            high = Point::new(
                high.x.max(edge.at.x + rise).max(to.x + rise),
                high.y.max(edge.at.y + rise).max(to.y + rise),
            );
        }
        (piece.low, piece.high) = (low, high);
        piece
    }

    pub fn bounds(&self) -> (Point, Point) {
        (self.low, self.high)
    }

    /// Twice its area, curves by their formula.
    pub fn doubled_area(&self) -> i128 {
        self.loops.iter().map(|ring| doubled_area(ring)).sum()
    }

    /// Whether a place off all sides lies in it.
    pub fn holds(&self, place: Point) -> bool {
        let mut rings = self.loops.iter().map(|ring| ring_holds(ring, place));
        rings.next() == Some(true) && rings.all(|open| !open)
    }

    fn may_meet(&self, seam: &Seam) -> bool {
        let rise = seam.bulge().as_nanometres().abs() + NEAR;
        let (a, b) = (seam.from, seam.to);
        a.x.min(b.x) - rise <= self.high.x
            && self.low.x <= a.x.max(b.x) + rise
            && a.y.min(b.y) - rise <= self.high.y
            && self.low.y <= a.y.max(b.y) + rise
    }

    /// The pieces that a joint leaves of this one; what it cuts is added to `made`.
    pub fn cut(self, seam: &Seam, made: &mut Vec<Stretch>, left: &mut Vec<Self>) {
        let mut open = vec![self];
        while let Some(piece) = open.pop() {
            match piece.first_stretch(seam) {
                None => left.push(piece),
                Some((start, end)) => {
                    let on = |event: &Event| {
                        let ring = &piece.loops[event.ring];
                        let before = ring[(event.edge + ring.len() - 1) % ring.len()];
                        ring[event.edge].beyond == Beyond::Joint
                            && (!event.is_corner || before.beyond == Beyond::Joint)
                    };
                    made.push(Stretch {
                        seam: seam.part(start.at, end.at),
                        on_joint: [on(&start), on(&end)],
                    });
                    piece.split(start, end, seam, &mut open);
                }
            }
        }
    }

    /// Where a line from a place on the rim, or from beyond, first enters this piece, and where it leaves.
    pub fn first_crossing(&self, seam: &Seam) -> Option<Stretch> {
        self.first_stretch(seam).map(|(start, end)| Stretch {
            seam: seam.part(start.at, end.at),
            on_joint: [false; 2],
        })
    }

    fn first_stretch(&self, seam: &Seam) -> Option<(Event, Event)> {
        if !self.may_meet(seam) {
            return None;
        }
        let events = self.events(seam);
        let mut groups: Vec<&[Event]> = Vec::new();
        let mut rest = &events[..];
        while let Some(first) = rest.first() {
            let many = rest
                .iter()
                .take_while(|e| e.far <= first.far + 4 * NEAR)
                .count();
            groups.push(&rest[..many]);
            rest = &rest[many..];
        }
        groups.windows(2).find_map(|pair| {
            let start = pair[0].iter().find(|event| event.ahead)?;
            let end = pair[1].iter().find(|event| event.behind)?;
            (SHORT < distance(start.at, end.at)).then_some((*start, *end))
        })
    }

    /// All meetings with the sides, along the joint.
    fn events(&self, seam: &Seam) -> Vec<Event> {
        let way = seam.way;
        let long = way.along(seam.to - seam.from);
        // Positive to the left of a straight joint, within the circle of a curved one.
        let off = |place: Point| match &seam.curve {
            None => way.aside(place - seam.from),
            Some(curve) => curve.radius - distance(curve.center, place),
        };
        let mut found = Vec::new();
        let mut take = |ring: usize, edge: usize, at: Point, out: Way, into: Option<Way>| {
            let far = way.along(at - seam.from);
            let beside = seam.curve.is_some_and(|curve| {
                NEAR < off(at).abs()
                    || !curve.holds(seam.from, seam.to, at) && NEAR < far && far < long - NEAR
            });
            if far < -NEAR || long + NEAR < far || beside {
                return;
            }
            let heading = match &seam.curve {
                None => way,
                Some(curve) => match curve.heading(at) {
                    Some(heading) => heading,
                    None => return,
                },
            };
            let back = into.unwrap_or(out).back();
            found.push(Event {
                far,
                ring,
                edge,
                at,
                is_corner: into.is_some(),
                ahead: between(out, back, heading),
                behind: between(out, back, heading.back()),
            });
        };
        for (number, ring) in self.loops.iter().enumerate() {
            let mut here = off(ring[0].at);
            for (index, (edge, to)) in edges(ring).enumerate() {
                let there = off(to);
                let (on, next_on) = (here.abs() <= NEAR, there.abs() <= NEAR);
                if on {
                    let before = (index + ring.len() - 1) % ring.len();
                    let into = heading_at_end(ring, before);
                    if let (Some(out), Some(into)) = (heading(edge), into) {
                        take(number, index, edge.at, out, Some(into));
                    }
                }
                if edge.curve.is_none() && seam.curve.is_none() {
                    if !on && !next_on && (here < 0) != (there < 0) {
                        let (a, b) = (i128::from(here), i128::from(there));
                        let part = |from: i64, to: i64| {
                            let run = i128::from(to - from) * a;
                            from + narrow(way::rounded(run * (a - b).signum(), (a - b).abs()))
                        };
                        let at = Point::new(part(edge.at.x, to.x), part(edge.at.y, to.y));
                        if let Some(out) = heading(edge) {
                            take(number, index, at, out, None);
                        }
                    }
                } else {
                    for at in meetings(edge, to, seam, way) {
                        let clear = NEAR < distance(at, edge.at) && NEAR < distance(at, to);
                        let out = edge.curve.map_or_else(|| heading(edge), |c| c.heading(at));
                        if let (true, Some(out)) = (clear, out) {
                            take(number, index, at, out, None);
                        }
                    }
                }
                here = there;
            }
        }
        found.sort_by_key(|event| event.far);
        found
    }

    /// Joins two places of the rim; the parts go to `open`.
    fn split(mut self, start: Event, end: Event, seam: &Seam, open: &mut Vec<Self>) {
        let (from, to) = self.corners_at(start, end);
        let joint = |at, curve, way| Edge {
            at,
            curve,
            beyond: Beyond::Joint,
            way,
        };
        let there = joint(start.at, seam.curve, seam.way);
        let back = joint(end.at, seam.curve.map(Curve::reversed), seam.way.back());
        if start.ring != end.ring {
            let (first, second) = (start.ring.min(end.ring), start.ring.max(end.ring));
            let one = self.loops[start.ring].clone();
            let other = self.loops[end.ring].clone();
            let mut merged: Vec<Edge> = around(&one, from, from).collect();
            merged.push(there);
            merged.extend(around(&other, to, to));
            merged.push(back);
            self.loops.remove(second);
            self.loops[first] = merged;
            open.push(Self::new(self.loops));
            return;
        }
        let ring = self.loops.remove(start.ring);
        let mut one: Vec<Edge> = around(&ring, from, to).collect();
        one.push(back);
        let mut other: Vec<Edge> = around(&ring, to, from).collect();
        other.push(there);
        if start.ring == 0 {
            let (mut inner, mut outer) = (vec![one], vec![other]);
            for hole in self.loops {
                let in_one = ring_holds(&inner[0], hole[0].at);
                if in_one { &mut inner } else { &mut outer }.push(hole);
            }
            open.extend([Self::new(inner), Self::new(outer)]);
            return;
        }
        // Two ends on one opening: what lies between them and its hollow side falls off.
        let (solid, hollow) = if 0 < doubled_area(&one) {
            (one, other)
        } else {
            (other, one)
        };
        let (within, mut rest): (Vec<_>, Vec<_>) = self
            .loops
            .drain(1..)
            .partition(|hole| ring_holds(&solid, hole[0].at));
        let mut own = vec![solid];
        own.extend(within);
        rest.push(hollow);
        self.loops.extend(rest);
        open.extend([Self::new(own), Self::new(self.loops)]);
    }

    /// The numbers of the corners at both ends, which are made where there are none.
    fn corners_at(&mut self, start: Event, end: Event) -> (usize, usize) {
        let place = |event: &Event| {
            let begin = self.loops[event.ring][event.edge].at;
            (
                event.edge,
                !event.is_corner,
                begin.distance_squared(event.at),
            )
        };
        let start_is_later = place(&end) < place(&start);
        let (first, later) = if start_is_later {
            (end, start)
        } else {
            (start, end)
        };
        // The later one first, so that the number of the earlier stays true.
        let mut after = self.corner_at(later);
        let before = self.corner_at(first);
        if start.ring == end.ring && !first.is_corner {
            after += 1;
        }
        if start_is_later {
            (after, before)
        } else {
            (before, after)
        }
    }

    fn corner_at(&mut self, event: Event) -> usize {
        let ring = &mut self.loops[event.ring];
        if event.is_corner {
            return event.edge;
        }
        let edge = ring[event.edge];
        ring.insert(
            event.edge + 1,
            Edge {
                at: event.at,
                ..edge
            },
        );
        event.edge + 1
    }
}

/// Edges from one corner on to another, once around when they are one.
fn around(ring: &[Edge], from: usize, to: usize) -> impl Iterator<Item = Edge> + '_ {
    let many = (to + ring.len() - from - 1) % ring.len() + 1;
    ring.iter().cycle().skip(from).take(many).copied()
}

/// Each edge of a loop with its end.
pub(super) fn edges(ring: &[Edge]) -> impl Iterator<Item = (&Edge, Point)> {
    let ends = ring.iter().cycle().skip(1).map(|edge| edge.at);
    ring.iter().zip(ends)
}

/// The direction in which an edge begins.
pub(super) fn heading(edge: &Edge) -> Option<Way> {
    match &edge.curve {
        None => Some(edge.way),
        Some(curve) => curve.heading(edge.at),
    }
}

/// The direction in which an edge ends.
pub(super) fn heading_at_end(ring: &[Edge], edge: usize) -> Option<Way> {
    let to = ring[(edge + 1) % ring.len()].at;
    match &ring[edge].curve {
        None => Some(ring[edge].way),
        Some(curve) => curve.heading(to),
    }
}

/// Whether a way lies truly between two others, counted to the left from the first.
fn between(first: Way, last: Way, way: Way) -> bool {
    if 0 <= first.sine(last) {
        ALONG < first.sine(way) && ALONG < way.sine(last)
    } else {
        !(-ALONG <= last.sine(way) && -ALONG <= way.sine(first))
    }
}

fn meetings(edge: &Edge, to: Point, seam: &Seam, way: Way) -> Vec<Point> {
    let met = match (&edge.curve, &seam.curve) {
        (Some(curve), None) => curve.met_by(seam.from, way),
        (None, Some(curve)) => curve.met_by(edge.at, edge.way),
        (Some(one), Some(other)) => one.met_by_circle(other),
        (None, None) => None,
    };
    let on_edge = |at: &Point| match &edge.curve {
        Some(curve) => curve.holds(edge.at, to, *at),
        None => {
            let far = edge.way.along(*at - edge.at);
            0 <= far && far <= edge.way.along(to - edge.at)
        }
    };
    met.into_iter().flatten().filter(on_edge).collect()
}

/// Twice the area within a loop, positive when it runs counter-clockwise.
pub(super) fn doubled_area(ring: &[Edge]) -> i128 {
    let origin = ring[0].at;
    edges(ring)
        .map(|(edge, to)| {
            let bow = edge.curve.map_or(0, |c| c.doubled_segment(edge.at, to));
            origin.turn(edge.at, to) + bow
        })
        .sum()
}

/// Whether a place off the loop lies within it, however it runs.
fn ring_holds(ring: &[Edge], place: Point) -> bool {
    let mut inside = false;
    for (edge, to) in edges(ring) {
        let (low, high) = if edge.at.y <= to.y {
            (edge.at, to)
        } else {
            (to, edge.at)
        };
        if low.y <= place.y && place.y < high.y && 0 < low.turn(high, place) {
            inside = !inside;
        }
        if let Some(curve) = &edge.curve {
            let radius = i128::from(curve.radius);
            // On the chord it lies where the test above puts it: a hair to the right, and less up.
            let turn = match edge.at.turn(to, place) {
                0 if edge.at.y == to.y => i128::from(to.x - edge.at.x),
                0 => i128::from(edge.at.y - to.y),
                turn => turn,
            };
            let beyond = if curve.right { turn < 0 } else { 0 < turn };
            if beyond && curve.center.distance_squared(place) < radius * radius {
                inside = !inside;
            }
        }
    }
    inside
}
