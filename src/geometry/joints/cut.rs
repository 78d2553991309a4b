//! How a joint cuts a piece: the same loop falls in two, two loops become one.
//!
//! So panels tile the slab by construction, whatever way joints run.

use super::curve::Curve;
use super::seam::{Beyond, Edge, Seam, edges, heading, heading_at_end};
use super::sheet::{Piece, doubled_area, ring_holds};
use super::way::{self, NEAR, Way, distance, narrow};
use crate::geometry::point::Point;

/// No joint is shorter: a millimetre.
const SHORT: i64 = 1_000_000;
/// The sine under which a joint runs along a side and not into the slab.
const ALONG: i64 = way::ONE / 10_000;

/// Where a joint meets the side of a piece.
#[derive(Clone, Copy, Debug)]
pub(super) struct Event {
    pub far: i64,
    pub ring: usize,
    pub edge: usize,
    pub at: Point,
    pub is_corner: bool,
    /// Whether the piece lies ahead of here along the joint, and behind.
    pub ahead: bool,
    pub behind: bool,
}

/// A stretch of joint across one piece, and whether its ends lie on other joints.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stretch {
    pub seam: Seam,
    pub on_joint: [bool; 2],
}

impl Piece {
    /// The pieces that a joint leaves of this one; what it cuts is added to `made`.
    pub fn cut(self, seam: &Seam, made: &mut Vec<Stretch>, left: &mut Vec<Self>) {
        let pairs = self.paired(seam);
        let Some(&(start, end)) = pairs.first() else {
            left.push(self);
            return;
        };
        let on = |event: &Event| {
            let ring = &self.loops[event.ring];
            let before = ring[(event.edge + ring.len() - 1) % ring.len()];
            ring[event.edge].beyond == Beyond::Joint
                && (!event.is_corner || before.beyond == Beyond::Joint)
        };
        made.push(Stretch {
            seam: seam.part(start.at, end.at),
            on_joint: [on(&start), on(&end)],
        });
        // A straight one that crosses but once is through.
        let is_through = pairs.len() == 1 && seam.curve.is_none();
        let (one, other) = self.split(start, end, seam);
        for piece in other.into_iter().chain([one]) {
            if is_through {
                left.push(piece);
            } else {
                piece.cut(seam, made, left);
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
        self.paired(seam).first().copied()
    }

    /// Where a joint enters the piece and where it leaves it, each time.
    fn paired(&self, seam: &Seam) -> Vec<(Event, Event)> {
        let mut pairs = Vec::new();
        if !self.may_meet(seam) {
            return pairs;
        }
        let events = self.events(seam);
        let mut rest = &events[..];
        let mut before: &[Event] = &[];
        while let Some(first) = rest.first() {
            let many = rest
                .iter()
                .take_while(|e| e.far <= first.far + 4 * NEAR)
                .count();
            let (here, after) = rest.split_at(many);
            let start = before.iter().find(|event| event.ahead);
            let end = here.iter().find(|event| event.behind);
            if let (Some(start), Some(end)) = (start, end)
                && SHORT < end.far - start.far
            {
                pairs.push((*start, *end));
            }
            (before, rest) = (here, after);
        }
        pairs
    }

    /// All the stretches a joint would have here, none of them cut.
    pub fn stretches(&self, seam: &Seam) -> Vec<Seam> {
        let pairs = self.paired(seam);
        pairs
            .iter()
            .map(|pair| seam.part(pair.0.at, pair.1.at))
            .collect()
    }

    /// All meetings with the sides, along the joint.
    pub(super) fn events(&self, seam: &Seam) -> Vec<Event> {
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
            let (ahead, behind) = if let Some(into) = into {
                let back = into.back();
                let is_within = |heading| between(out, back, heading);
                (is_within(heading), is_within(heading.back()))
            } else {
                let turn = out.sine(heading);
                (ALONG < turn, turn < -ALONG)
            };
            found.push(Event {
                far,
                ring,
                edge,
                at,
                is_corner: into.is_some(),
                ahead,
                behind,
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
                            if to == from {
                                return from;
                            }
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

    /// Joins two places of the rim; one part is left, or two.
    fn split(mut self, start: Event, end: Event, seam: &Seam) -> (Self, Option<Self>) {
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
            let mut merged = around(&self.loops[start.ring], &start, &start);
            merged.push(there);
            merged.extend(around(&self.loops[end.ring], &end, &end));
            merged.push(back);
            self.loops.remove(second);
            self.loops[first] = merged;
            return (Self::new(self.loops), None);
        }
        let ring = self.loops.remove(start.ring);
        let mut one = around(&ring, &start, &end);
        one.push(back);
        let mut other = around(&ring, &end, &start);
        other.push(there);
        if start.ring == 0 {
            let (mut inner, mut outer) = (vec![one], vec![other]);
            for hole in self.loops {
                let in_one = ring_holds(&inner[0], hole[0].at);
                if in_one { &mut inner } else { &mut outer }.push(hole);
            }
            return (Self::new(inner), Some(Self::new(outer)));
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
        (Self::new(own), Some(Self::new(self.loops)))
    }
}

/// Edges from one place of a loop on to another, once around when they are one; with room for one more.
pub(super) fn around(ring: &[Edge], from: &Event, to: &Event) -> Vec<Edge> {
    let many = ring.len();
    let begin = ring[from.edge];
    let far = |event: &Event| begin.at.distance_squared(event.at);
    let on_one_edge = from.edge == to.edge && !from.is_corner && !to.is_corner;
    let more = if on_one_edge && far(to) <= far(from) {
        many
    } else {
        (to.edge + usize::from(!to.is_corner) + many - from.edge - 1) % many
    };
    let mut found = Vec::with_capacity(more + 2);
    found.push(Edge {
        at: from.at,
        ..begin
    });
    let next = from.edge + 1;
    let first = more.min(many - next);
    found.extend_from_slice(&ring[next..next + first]);
    found.extend_from_slice(&ring[..more - first]);
    found
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
    let on_edge = |at: &Point| {
        if let Some(curve) = &edge.curve {
            return curve.holds(edge.at, to, *at);
        }
        let far = edge.way.along(*at - edge.at);
        0 <= far && far <= edge.way.along(to - edge.at)
    };
    met.into_iter().flatten().filter(on_edge).collect()
}
