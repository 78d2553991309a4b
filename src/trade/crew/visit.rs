//! Coming back after the pours.

use super::step::Step;
use crate::trade::working::Quantity;

/// Coming back after the pours for one thing.
#[derive(Clone, Debug)]
pub struct Visit {
    pub step: Step,
    pub pours: Vec<usize>,
    /// Days from the pour, for what goes on so many days after it.
    pub wait: Option<u32>,
    /// How often, however few hours it takes; none where its hours alone say it.
    pub asked: Option<Quantity>,
}

impl Visit {
    pub(super) fn after(pour: usize, step: Step, asked: Option<Quantity>) -> Self {
        Self {
            step,
            pours: vec![pour],
            wait: None,
            asked,
        }
    }
}
