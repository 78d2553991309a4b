//! How the crew works: its people, its day, and which hours are charged.

use rust_decimal::Decimal;

use crate::input::checks::{hours, number_above_zero, plain, written};
use crate::input::phrases::{DaysOff, Week};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Problem, Problems, Read, words};
use crate::tables::holidays::holiday;
use crate::values::{Amount, Day, Percent};

keys! {
    pub struct CrewPolicy in "`crew`" {
        people: At<Amount> = "people", usual "2", "in the crew", "3", then number_above_zero;
        hours_in_a_day: At<Amount> = "hours in a day", usual "8", "worked in a full day, 16 at most", "8",
            then hours_of_a_day;
        /// Hours for each person and day.
        travel: At<Amount> = "travel" as "hours", usual "0 hours",
            "each person, each day; set-up too if you count it here", "3/4 hour", then hours;
        /// Set-up and clean-up, hours for each person and day.
        set_up: At<Amount> = "set up and clean up" as "hours", usual "0 hours",
            "each person, each day, where `travel` does not hold it", "1/4 hour", then hours;
        day_rule: At<DayRule> = "round days up to" as "number", usual "1/2",
            "crew days go up to such steps; 0 charges the hours", "1/2", by day_rule;
        day_count: At<DayCount> = "count days", usual "by stage",
            "by stage: what has a night before it goes up by itself; or by the job, all of it once",
            "by the job";
        /// Common practice, no source: an inspector looks at forms and steel before they are covered.
        night: NightBefore = "night before a pour", usual "with a permit",
            "whether forms stand for a night, to be inspected: with a permit, always or never", "always";
        lids: SetLids = "set lids", usual "on a visit of their own",
            "when lids on order are set: on a visit of their own, or when we strip", "when we strip";
        on_a_visit: Option<At<Amount>> = "people on a visit" as "number", else "as few as are charged least",
            "who strips on a day of its own, and comes back to seal or to set a lid; no more than the crew", "1", then written(number_above_zero);
        works: Week = "works", usual "Monday to Friday", "days of the week on which the crew works",
            "Monday to Saturday";
        days_off: DaysOff = "days off", usual "none", "when you are closed",
            "2026-07-03, 2026-12-24 to 2027-01-01";
        holidays: Holidays = "holidays", usual "off", "federal holidays: off or worked", "worked";
        charge: At<Charge> = "charge", usual "crew days", "crew days or hours; you see both", "hours";
        labor_lines: LaborLines = "labor lines", usual "one", "one, or by task", "by task";
        difficulty: At<Percent> = "difficulty", usual "100%", "multiplies every task except travel", "110%";
    } then somebody_at_work
}

/// The longest day that is no slip of the pen; common practice, no source.
const LONGEST_DAY: Decimal = Decimal::from_parts(16, 0, 0, false, 0);

fn hours_of_a_day(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let at = number_above_zero(at, key, problems)?;
    if at.value.value <= LONGEST_DAY {
        return Ok(at);
    }
    let message = format!("nobody works {} hours in a day", at.value.number());
    let problem = Problem::new("day-too-long", message).at(at.place);
    Err(problems.push(problem.help(format!(
        "write the hours of a full day, {LONGEST_DAY} at most, for example `8`"
    ))))
}

fn somebody_at_work(
    crew: CrewPolicy,
    fields: &Fields<'_>,
    problems: &mut Problems,
) -> Read<CrewPolicy> {
    let many = crew.on_a_visit.as_ref();
    if let Some(many) = many.filter(|many| crew.people.value.value < many.value.value) {
        let message = format!(
            "{} people come on a visit, and the crew has {}",
            many.value.number(),
            crew.people.value.number()
        );
        let problem = Problem::new("more-than-the-crew", message).at(many.place);
        return Err(problems.push(problem.help(
            "write no more than `people`, or leave the line out: as few as are charged least",
        )));
    }
    some_time_left(crew, fields, problems)
}

fn day_rule(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<At<DayRule>> {
    let step = plain(fields.need(key, problems)?, key, problems)?;
    Ok(step.map(|step| {
        if step.value.is_zero() {
            DayRule::ByTheHour
        } else {
            DayRule::UpTo(step.value)
        }
    }))
}

fn some_time_left(crew: CrewPolicy, _: &Fields<'_>, problems: &mut Problems) -> Read<CrewPolicy> {
    let away = crew.travel.value.value + crew.set_up.value.value;
    if away < crew.hours_in_a_day.value.value {
        return Ok(crew);
    }
    let problem = Problem::new("no-time-left", "travel and set-up take the whole day");
    let help = "give `travel` as hours for each person and day, for example `3/4 hour`";
    Err(problems.push(problem.at(crew.travel.place).help(help)))
}

impl CrewPolicy {
    /// Why the crew does not work on a day; none where it does.
    pub fn off(&self, day: Day) -> Option<&'static str> {
        if self.days_off.has(day) {
            return Some("one of your days off");
        }
        if !self.works.has(day) {
            return Some("no working day of yours");
        }
        holiday(day).filter(|_| self.holidays == Holidays::Off)
    }
}

/// How hours become days that are charged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayRule {
    ByTheHour,
    /// Crew days up to a multiple of this.
    UpTo(Decimal),
}

words! {
    /// Whether days go up once for the job, or for each stage of it.
    pub enum DayCount("unknown-word", "`count days` is not `{}`", choose) {
        ByTheJob "by the job";
        ByStage "by stage";
    }
}

words! {
    /// When the forms stand for a night before the pour, though the crew had time for both.
    pub enum NightBefore("unknown-word", "`night before a pour` is not `{}`", choose) {
        WithPermit "with a permit";
        Always "always";
        Never "never";
    }
}

words! {
    /// When the crew sets the lids that come later.
    pub enum SetLids("unknown-word", "`set lids` is not `{}`", choose) {
        ByThemselves "on a visit of their own";
        WithStripping "when we strip";
    }
}

words! {
    /// Whether the crew works on federal holidays.
    pub enum Holidays("unknown-word", "`holidays` is not `{}`", choose) {
        Off "off";
        Worked "worked";
    }
}

words! {
    /// Which of the two figures sets the price; both are shown.
    pub enum Charge("unknown-word", "`charge` is not `{}`", choose) {
        CrewDays "crew days";
        Hours "hours";
    }
}

words! {
    /// How labor stands among the lines of the estimate.
    pub enum LaborLines("unknown-word", "`labor lines` is not `{}`", choose) {
        One "one";
        ByTask "by task";
    }
}

placeless! { LaborLines Holidays NightBefore SetLids Week DaysOff }
