//! Work of one kind, wherever the job has it.

use super::step::Step;
use crate::input::phrases::{Days, Ratio};
use crate::reading::At;
use crate::trade::order::Parts;
use crate::values::Unit;

/// Work of one kind, wherever the job has it.
pub(super) struct Task {
    /// The rate of the price book it goes by, unless it has its own.
    pub name: String,
    pub step: Step,
    /// Days from the pour, of what goes on so many days after it.
    pub wait: Option<u32>,
    /// Hours that come with an item, a finish or a sealer of the book.
    pub rate: Option<At<Ratio>>,
    pub parts: Parts,
    /// The same work in other units, for rates that are given by them.
    pub otherwise: Vec<(Unit, Parts)>,
    /// Whether the parts are hours as the owner wrote them, and neither rated nor multiplied.
    pub is_hours: bool,
}

impl Task {
    pub(super) fn rated(name: impl Into<String>, step: impl Into<Step>, parts: Parts) -> Self {
        Self {
            name: name.into(),
            step: step.into(),
            wait: None,
            rate: None,
            parts,
            otherwise: Vec::new(),
            is_hours: false,
        }
    }

    /// The same, which may be rated by another unit too.
    pub(super) fn or(mut self, unit: Unit, parts: Parts) -> Self {
        self.otherwise.push((unit, parts));
        self
    }

    /// The same, which goes on so many days after the pour, if it does.
    pub(super) fn waiting(self, after: Option<&At<Days>>) -> Self {
        match after {
            Some(after) => Self {
                step: Step::Seal,
                wait: Some(after.value.0),
                ..self
            },
            None => self,
        }
    }

    /// The work in the unit it is rated by.
    pub(super) fn rated_by(&mut self, unit: Unit) {
        let mut others = std::mem::take(&mut self.otherwise).into_iter();
        if let Some((_, parts)) = others.find(|(other, _)| *other == unit) {
            self.parts = parts;
        }
    }

    /// The same, at a rate of its own.
    pub(super) fn at(self, rate: At<Ratio>) -> Self {
        let rate = Some(rate);
        Self { rate, ..self }
    }
}
