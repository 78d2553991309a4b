//! The stages of a job: the crew comes, and comes again, for each of them.

use super::TaskHours;
use crate::trade::term::{number, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub use crate::input::book::Stage;

/// The work of one stage.
#[derive(Clone, Debug)]
pub struct StageHours {
    pub stage: Stage,
    /// Person hours of its tasks.
    pub worked: Quantity,
    /// Crew days up to the owner's step, where days are counted by stage.
    pub days: Option<Quantity>,
}

/// The hours of every stage that occurs.
pub(super) fn hours(tasks: &[TaskHours]) -> Vec<StageHours> {
    let stages = Stage::ALL.into_iter().filter_map(|stage| {
        let of_it: Vec<&Quantity> = tasks
            .iter()
            .filter(|task| task.stage == stage)
            .map(|task| &task.hours)
            .collect();
        (!of_it.is_empty()).then(|| StageHours {
            stage,
            worked: Quantity::by(
                "tasks of this stage added up",
                format!("hours to {}", stage.name()),
                Unit::Hour,
                sum(of_it),
            ),
            days: None,
        })
    });
    stages.collect()
}

/// A stage that takes visits, though the hours of its work are counted elsewhere.
pub(super) fn without_hours(stage: Stage) -> StageHours {
    StageHours {
        stage,
        worked: Quantity::by(
            "no task of its own",
            format!("hours to {}", stage.name()),
            Unit::Hour,
            number(0),
        ),
        days: None,
    }
}
