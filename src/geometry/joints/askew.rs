//! Whether a joint lies askew: along or square to nothing that a finisher could take it from.

use super::ground::{Ground, REACH};
use super::seam::{Seam, edges, heading};
use super::way::{self, Way, is_near};

/// The sine of about one degree.
const TRUE: i64 = way::ONE / 50;

impl Ground<'_> {
    /// True joints lie along or square to a straight side anywhere or between two that draw nearer to
    /// each other, are square to a curved edge that
    /// they end at, or halve a corner that they start from.
    pub fn is_askew(&self, seam: &Seam) -> bool {
        let true_to = |way: Way| {
            let (along, square) = (seam.way.sine(way), seam.way.cosine(way));
            along.abs() < TRUE || square.abs() < TRUE
        };
        if seam.curve.is_some() || self.frames.iter().any(|way| true_to(*way)) {
            return false;
        }
        if self.tapers.iter().any(|taper| taper.holds(seam.way)) {
            return false;
        }
        let rims = self.whole.loops.iter().flat_map(|ring| edges(ring));
        let is_of_edge = |(edge, to): (&super::seam::Edge, _)| {
            if edge.curve.is_none() {
                return heading(edge).is_some_and(true_to);
            }
            let side = edge.seam(to);
            [seam.from, seam.to].into_iter().any(|end| {
                side.is_near(end, REACH)
                    && side
                        .heading(end)
                        .is_some_and(|way| seam.way.cosine(way).abs() < TRUE)
            })
        };
        if rims.into_iter().any(is_of_edge) {
            return false;
        }
        let halves = |need: &super::ground::Need| {
            let starts = is_near(need.at, seam.from, REACH) || is_near(need.at, seam.to, REACH);
            starts && need.ways.iter().any(|way| true_to(*way))
        };
        !self.needs.iter().any(halves)
    }
}
