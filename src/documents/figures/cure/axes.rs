//! Where things stand: the axis of days, the scale of strength, the rows of bars.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::view::CureView;
use crate::press::frame::Frame;
use crate::trade::curing::Use;

pub const WIDTH: f32 = 516.0;
/// Left and right of the axis; names stand left of it, ends of curves right of it.
pub const LEFT: f32 = 88.0;
pub const RIGHT: f32 = 440.8;
/// Top of the grid and foot of the curves.
pub const TOP: f32 = 3.0;
pub const FOOT: f32 = 155.0;
/// Baseline of the day numbers.
pub const DAYS: f32 = 168.0;

const FIRST_BAR: f32 = 176.0;
const BAR_HEIGHT: f32 = 12.0;
const BAR_PITCH: f32 = 20.0;

/// Both scales, fitted to one view.
#[derive(Clone, Debug)]
pub struct Axes {
    /// Last day of the axis.
    pub until: u32,
    /// Days from one vertical line to the next.
    step: u32,
    /// Percent at the top of the grid.
    top_percent: f32,
    /// How many rows there are: one for each use, and the deicer's below them.
    rows: usize,
}

impl Axes {
    pub fn new(view: &CureView, until: u64, step: u64) -> Self {
        let until = u32::try_from(until).unwrap_or(u32::MAX);
        let end = view.timeline.at(Decimal::from(until));
        Self {
            until,
            step: u32::try_from(step).unwrap_or(u32::MAX),
            // Room above the 100% line for its words, and above the warm curve for air.
            top_percent: (float(end.warm.number()) + 3.0).max(112.0),
            rows: view.milestones().len() + usize::from(view.deicer),
        }
    }

    pub fn x(&self, day: Decimal) -> f32 {
        LEFT + float(day) * (RIGHT - LEFT) / float(Decimal::from(self.until))
    }

    pub fn y(&self, percent: Decimal) -> f32 {
        FOOT - float(percent) * (FOOT - TOP) / self.top_percent
    }

    /// Days with a vertical line.
    pub fn ticks(&self) -> impl Iterator<Item = u32> {
        let step = usize::try_from(self.step).unwrap_or(usize::MAX);
        (0..=self.until).step_by(step)
    }

    /// Top and bottom of a row, over the whole axis.
    pub fn row(row: usize) -> Frame {
        let down: f32 = (0..row).map(|_| BAR_PITCH).sum();
        let top = FIRST_BAR + down;
        Frame::new(LEFT, top, RIGHT, top + BAR_HEIGHT)
    }

    /// The row below all others: that of the deicer, where there is one.
    pub fn last_row(&self) -> Frame {
        Self::row(self.rows.saturating_sub(1))
    }

    /// Baseline of the key.
    pub fn key(&self) -> f32 {
        self.last_row().bottom + 16.0
    }

    pub fn height(&self) -> f32 {
        self.key() + 4.0
    }
}

/// Whether a use waits for strength, so that it has a dot on the curve.
pub fn waits_for_strength(use_: Use) -> bool {
    match use_ {
        Use::Walk | Use::Car | Use::Heavy => true,
        Use::Seal => false,
    }
}

pub fn float(number: Decimal) -> f32 {
    number
        .to_f32()
        .expect("days and percentages are near some float")
}
