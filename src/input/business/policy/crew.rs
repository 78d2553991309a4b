//! How the crew works: its people, its day, and which hours are charged.

use std::str::FromStr;

use rust_decimal::Decimal;

use super::{divisor, group, in_unit};
use crate::input::business::tables;
use crate::reading::{At, Node, Place, Problem, Problems};
use crate::values::{Amount, Percent, Unit, Unreadable};

#[derive(Clone, Debug)]
pub struct CrewPolicy {
    pub people: At<Amount>,
    pub hours_in_a_day: At<Amount>,
    /// Hours for each person and day.
    pub travel: At<Amount>,
    /// Set-up and clean-up, hours for each person and day.
    pub set_up: At<Amount>,
    pub day_rule: At<DayRule>,
    pub day_count: At<DayCount>,
    pub charge: At<Charge>,
    pub labor_lines: LaborLines,
    pub difficulty: At<Percent>,
}

/// How hours become days that are charged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayRule {
    ByTheHour,
    /// Crew days up to a multiple of this.
    UpTo(Decimal),
}

/// Whether days go up once for the job, or for each stage of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayCount {
    ByTheJob,
    ByStage,
}

/// Which of the two figures sets the price; both are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Charge {
    CrewDays,
    Hours,
}

/// How labor stands among the lines of the estimate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LaborLines {
    One,
    ByTask,
}

crate::reading::written::written! { DayCount = "word"; }

impl FromStr for DayCount {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let words = [("by the job", Self::ByTheJob), ("by stage", Self::ByStage)];
        one_of("count days", text, words)
    }
}

crate::reading::written::written! { Charge = "word"; }

impl FromStr for Charge {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let words = [("crew days", Self::CrewDays), ("hours", Self::Hours)];
        one_of("charge", text, words)
    }
}

crate::reading::written::written! { LaborLines = "word"; }

impl FromStr for LaborLines {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let words = [("one", Self::One), ("by task", Self::ByTask)];
        one_of("labor lines", text, words)
    }
}

fn one_of<T>(key: &str, text: &str, words: [(&str, T); 2]) -> Result<T, Unreadable> {
    let help = format!("write `{}` or `{}`", words[0].0, words[1].0);
    let found = words.into_iter().find(|(word, _)| *word == text);
    found
        .map(|(_, value)| value)
        .ok_or_else(|| Unreadable::new("unknown-word", format!("`{key}` is not `{text}`"), help))
}

pub(in crate::input::business) fn crew(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<CrewPolicy> {
    let fields = group(node, &tables::CREW, heading, problems)?;
    let people =
        in_unit(&fields, "people", Unit::Plain, problems).and_then(|at| divisor(at, problems));
    let hours_in_a_day = in_unit(&fields, "hours in a day", Unit::Plain, problems)
        .and_then(|at| divisor(at, problems));
    let travel = in_unit(&fields, "travel", Unit::Hour, problems);
    let set_up = in_unit(&fields, "set up and clean up", Unit::Hour, problems);
    let step = in_unit(&fields, "round days up to", Unit::Plain, problems);
    let difficulty = fields.need("difficulty", problems).ok();
    let day_count = fields.need("count days", problems).ok();
    let charge = fields.need("charge", problems).ok();
    let labor_lines: Option<At<LaborLines>> = fields.need("labor lines", problems).ok();
    let (hours, travel, set_up) = (hours_in_a_day?, travel?, set_up?);
    if hours.value.value <= travel.value.value + set_up.value.value {
        let problem = Problem::new("no-time-left", "travel and set-up take the whole day")
            .at(travel.place)
            .help("give `travel` as hours for each person and day, for example `3/4 hour`");
        problems.push(problem);
        return None;
    }
    let day_rule = step?.map(|step| {
        if step.value.is_zero() {
            DayRule::ByTheHour
        } else {
            DayRule::UpTo(step.value)
        }
    });
    Some(CrewPolicy {
        people: people?,
        hours_in_a_day: hours,
        travel,
        set_up,
        day_rule,
        day_count: day_count?,
        charge: charge?,
        labor_lines: labor_lines?.value,
        difficulty: difficulty?,
    })
}
