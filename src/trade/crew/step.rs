//! What the crew does, in the order of the work.

use crate::input::book::Stage;

/// What is done, in the order of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// Saw, break out, dig.
    Remove,
    /// Base, forms, steel and what is set into the forms.
    Form,
    /// Place and finish.
    Place,
    /// Strip, clean, saw late, fill in along the edges.
    Strip,
    /// Back for a finish: to wash or saw it.
    Finish,
    /// Back as a rule or an item of the owner's says.
    Return,
    /// Back to keep it wet.
    Wet,
    /// Back to take covers or blankets off.
    Lift,
    Seal,
    /// Back for lids on order.
    Lid,
}

impl Step {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Remove => "remove",
            Self::Form => "form",
            Self::Place => "place",
            Self::Strip => "strip",
            Self::Finish => "finish",
            Self::Return => "return",
            Self::Wet => "keep wet",
            Self::Lift => "lift covers",
            Self::Seal => "seal",
            Self::Lid => "set lids",
        }
    }

    /// Whether the crew comes back for it when the work is done.
    pub fn is_later(self) -> bool {
        Self::Finish <= self
    }
}

impl From<Stage> for Step {
    fn from(stage: Stage) -> Self {
        match stage {
            Stage::Remove => Self::Remove,
            Stage::Form => Self::Form,
            Stage::Place => Self::Place,
            Stage::Strip => Self::Strip,
            Stage::Return => Self::Return,
        }
    }
}
