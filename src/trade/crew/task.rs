//! Work of one kind, wherever the job has it.

use super::stages::Stage;
use crate::input::job::Method;
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::order::Parts;

/// Work of one kind, wherever the job has it.
pub(super) struct Task {
    /// The rate of the price book it goes by, unless it has its own.
    pub name: String,
    pub stage: Stage,
    /// Hours that come with an item, a finish or a sealer of the book.
    pub rate: Option<At<Ratio>>,
    /// How the concrete is placed, where that is the task.
    pub places: Option<Method>,
    pub parts: Parts,
    /// Whether the parts are hours as the owner wrote them, and neither rated nor multiplied.
    pub is_hours: bool,
}

impl Task {
    pub(super) fn rated(name: impl Into<String>, stage: Stage, parts: Parts) -> Self {
        Self {
            name: name.into(),
            stage,
            rate: None,
            places: None,
            parts,
            is_hours: false,
        }
    }

    /// The same, at a rate of its own.
    pub(super) fn at(self, rate: At<Ratio>) -> Self {
        let rate = Some(rate);
        Self { rate, ..self }
    }
}
