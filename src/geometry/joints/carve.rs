//! What is solid and reaches over the edge of the slab: the slab ends where it begins.

use super::cut::{Event, around};
use super::seam::{Beyond, Edge, edges};
use super::sheet::{Piece, doubled_area, ring_holds};
use super::way::NEAR;
use crate::geometry::point::Point;

/// An edge of the loop after this many places where it meets the rim is left as it is.
const MOST: usize = 8;

impl Piece {
    /// This piece less what lies within a loop that runs counter-clockwise and meets its rim; `None`
    /// when they do not meet, or when only a part beyond would be left.
    pub fn carved(&self, ring: &[Edge], number: usize) -> Option<Self> {
        let mut piece = self.clone();
        for _ in 0..MOST {
            let Some((start, end, corners)) = piece.way_through(ring) else {
                break;
            };
            piece = piece.without(start, end, &corners, number)?;
        }
        let gone = self.doubled_area() - piece.doubled_area();
        // A hair more, since corners were rounded.
        let most = doubled_area(ring) + doubled_area(ring) / 1_000_000;
        (0 < gone && gone <= most).then_some(piece)
    }

    /// Where the loop first enters the piece, where it leaves it, and its edges from there to there.
    fn way_through(&self, ring: &[Edge]) -> Option<(Event, Event, Vec<Edge>)> {
        let mut met: Vec<(usize, Event)> = Vec::new();
        for (side, (edge, to)) in edges(ring).enumerate() {
            let seam = edge.seam(to);
            let long = seam.way.along(seam.to - seam.from);
            let events = self.events(&seam).into_iter().map(|event| Event {
                // Nothing of this side lies ahead of its end, nor behind where it begins.
                ahead: event.ahead && event.far < long - NEAR,
                behind: event.behind && NEAR < event.far,
                ..event
            });
            met.extend(events.map(|event| (side, event)));
        }
        let enters = |event: &Event| event.ahead && !event.behind;
        let leaves = |event: &Event| event.behind && !event.ahead;
        let first = met.iter().position(|one| enters(&one.1))?;
        let (side, start) = met[first];
        let mut later = met.iter().cycle().skip(first + 1).take(met.len());
        let &(last, end) = later.find(|one| leaves(&one.1))?;
        let many = ring.len();
        let mut passed = (last + many - side) % many;
        if passed == 0 && end.far < start.far {
            passed = many;
        }
        let corner = |step: usize| ring[(side + step) % many];
        let begin = Edge {
            at: start.at,
            ..corner(0)
        };
        let edges = std::iter::once(begin).chain((1..=passed).map(corner));
        Some((start, end, edges.collect()))
    }

    /// Without what lies to the left of this way from one place of the rim to another.
    fn without(mut self, start: Event, end: Event, way: &[Edge], number: usize) -> Option<Self> {
        if start.ring != end.ring {
            return None;
        }
        let mut kept = around(&self.loops[start.ring], &start, &end);
        kept.extend(back(way, end.at, number));
        if start.ring == 0 {
            let rim = self.loops.remove(0);
            self.loops.retain(|hole| ring_holds(&kept, hole[0].at));
            self.loops.insert(0, rim);
        }
        self.loops[start.ring] = kept;
        Some(Self::new(self.loops))
    }
}

/// The same way walked back from its end.
fn back(way: &[Edge], end: Point, number: usize) -> Vec<Edge> {
    let ends = way.iter().skip(1).map(|edge| edge.at).chain([end]);
    let turned = way.iter().zip(ends).map(|(edge, to)| Edge {
        at: to,
        curve: edge.curve.map(super::curve::Curve::reversed),
        beyond: Beyond::Thing(number),
        way: edge.way.back(),
    });
    let mut turned: Vec<Edge> = turned.collect();
    turned.reverse();
    turned
}
