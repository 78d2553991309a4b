//! What a layout does not keep, for whoever reads the takeoff.

use rust_decimal::Decimal;

use super::cut::Stretch;
use super::ground::{Ground, REACH};
use super::layout::{Break, Fault};
use super::measure::Measured;
use super::score::{SLIVER, ends, is_relieved};
use super::sheet::Piece;
use super::way::is_near;
use crate::geometry::point::Point;
use crate::values::{Length, rounding};

impl Ground<'_> {
    /// All that a layout does not keep, the gravest first.
    pub fn faults(&self, pieces: &[Piece], lines: &[Stretch]) -> Vec<Break> {
        let mut found = Vec::new();
        let mut take = |at: Point, what: Fault| found.push(Break { at, what });
        for piece in pieces {
            let measured = self.measured(piece);
            let score = self.of_panel(&measured);
            let at = inner(piece);
            if 0 < score.long {
                let long = Length::nanometres(measured.size[0]);
                take(at, Fault::TooLong { long });
            }
            let thin = self.thin(measured.cut_wide);
            if thin.map_or(0, |_| SLIVER) < score.cracks {
                let ratio = ratio_of(&measured);
                take(at, Fault::Stretched { ratio });
            }
            if let Some(wide) = thin {
                let wide = Length::nanometres(wide);
                take(at, Fault::Sliver { wide });
            }
            for (corner, cosine) in &measured.sharp {
                let degrees = super::measure::degrees(*cosine);
                take(*corner, Fault::Sharp { degrees });
            }
        }
        for need in &self.needs {
            if !is_relieved(need, lines) {
                take(need.at, Fault::Corner);
            }
            for off in lines.iter().filter_map(|line| self.passes(need, line)) {
                let off = Length::nanometres(off);
                take(need.at, Fault::Near { off });
            }
        }
        for number in 0..self.things.len() {
            let at = self.things[number].ring[0].at;
            if 0 < self.short_of_ends(number, lines) {
                take(at, Fault::Corner);
            }
            for off in lines
                .iter()
                .filter_map(|line| self.passes_round(number, line))
            {
                let off = Length::nanometres(off);
                take(at, Fault::Near { off });
            }
        }
        for meet in self.asked.meet {
            if meet.must && !ends(lines).any(|(end, _)| is_near(end, meet.at, REACH)) {
                take(meet.at, Fault::Unmet);
            }
        }
        for end in self.ends_in_panels(lines) {
            take(end, Fault::Ends);
        }
        found.sort_by_key(|one| (one.what.weight(), one.at));
        found
    }
}

pub(super) fn ratio_of(measured: &Measured) -> Decimal {
    let [long, short] = measured.mean;
    rounding::to_places(Decimal::from(long) / Decimal::from(short.max(1)), 6)
}

/// About the middle of a panel: of the corners around it.
fn inner(piece: &Piece) -> Point {
    let corners: Vec<Point> = piece.loops[0].iter().map(|edge| edge.at).collect();
    super::ground::middle(&corners)
}
