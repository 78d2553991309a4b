//! The scale of a plan, and the way from the site to the sheet.

use crate::geometry::Point as Site;
use crate::press::drawing::{PagePoint, point};
use crate::values::Length;

/// A scale an architect's rule has.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    /// Points on paper to a foot on site.
    pub foot: f32,
    /// What an inch on paper is.
    pub says: &'static str,
    /// Feet between two marks of the scale bar, which has four.
    pub mark: u8,
}

/// Largest first: 1/2, 1/4, 3/16, 1/8, 3/32, 1/16, 1/32 in and so on to the foot.
pub(super) const SCALES: [Scale; 11] = [
    scale(36.0, "1 in = 2 ft", 1),
    scale(18.0, "1 in = 4 ft", 2),
    scale(13.5, "1 in = 5 ft 4 in", 2),
    scale(9.0, "1 in = 8 ft", 4),
    scale(6.75, "1 in = 10 ft 8 in", 4),
    scale(4.5, "1 in = 16 ft", 8),
    scale(2.25, "1 in = 32 ft", 16),
    scale(1.125, "1 in = 64 ft", 32),
    scale(0.5625, "1 in = 128 ft", 60),
    scale(0.28125, "1 in = 256 ft", 120),
    scale(0.140_625, "1 in = 512 ft", 250),
];

const fn scale(foot: f32, says: &'static str, mark: u8) -> Scale {
    Scale { foot, says, mark }
}

impl Scale {
    /// A length on site, in points on paper.
    pub fn length(self, length: Length) -> f32 {
        self.points(length.as_nanometres())
    }

    /// A place on site on the paper: y turns over, the origin stays.
    pub fn place(self, site: Site) -> PagePoint {
        point(self.points(site.x), -self.points(site.y))
    }

    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        reason = "paper needs a thousandth of a point, not a nanometre"
    )]
    fn points(self, nanometres: i64) -> f32 {
        (nanometres as f64 / 304_800_000.0 * f64::from(self.foot)) as f32
    }
}
