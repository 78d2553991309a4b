//! Hours by production rate, then trips, crew days, and the hours that are charged.

mod blocks;
mod charge;
mod covers;
mod crew_day;
mod machines;
mod pack;
mod placing;
mod pour_day;
mod removal;
mod sealing;
mod set;
mod step;
mod surfaces;
mod task;
mod tasks;
mod time;
mod visit;
mod visitors;

pub use blocks::Block;
pub use pack::Stretch;
pub(super) use placing::placing;
pub use pour_day::{Over, PourDay};
pub use step::Step;

use std::sync::Arc;

use rust_decimal::Decimal;

use charge::charge;
use task::Task;
use visit::Visit;

use crate::input::business::CrewPolicy;
use crate::input::job::{Extra, Takeoff};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::also::{AlsoDone, left_to_do};
use crate::trade::order::{
    ConcreteOrder, List, Once, Parts, Section, Shares, hire_pump, once, shares,
};
use crate::trade::tally::Listed;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// One task of the job and its hours.
#[derive(Clone, Debug)]
pub struct TaskHours {
    pub name: String,
    step: Step,
    /// Days from the pour, of what goes on so many days after it.
    wait: Option<u32>,
    /// How much work there is.
    pub work: Quantity,
    /// Person hours, difficulty included unless the owner set them.
    pub hours: Quantity,
    /// Hours in each part of the job.
    pub shares: Shares,
}

/// Everything about the crew's time.
#[derive(Clone, Debug)]
pub struct Crew {
    /// In the crew on this job.
    pub people: Quantity,
    /// The day of each pour.
    pub pours: Vec<PourDay>,
    pub tasks: Vec<TaskHours>,
    /// The work in its order, by the nights in it.
    pub stretches: Vec<Stretch>,
    /// All tasks together.
    pub worked: Quantity,
    /// Those that fill the days before visits after the pour.
    pub before: Quantity,
    /// Every day on site, visits after the pour included.
    pub trips: Quantity,
    /// Visits after the pour, for finishes and sealers; none where none is asked for.
    pub returns: Option<Quantity>,
    /// Who makes each of them, and the visit that takes the forms off.
    pub back: Vec<Quantity>,
    pub travel: Quantity,
    /// Set-up and clean-up, where the owner counts it.
    pub set_up: Option<Quantity>,
    /// On the days of pours that take longer on the clock than a working day.
    pub waiting: Option<Quantity>,
    /// Person hours as computed.
    pub hours: Quantity,
    pub days: Quantity,
    /// Whole days before the last visits, of those that are charged; the customer reads them.
    pub at_house: Quantity,
    /// Person hours that set the price.
    pub charged: Quantity,
    /// The work of every task, as it is shown.
    pub work_listed: Arc<[Listed]>,
    /// From work to what is charged, as it is shown.
    pub time_listed: Arc<[Listed]>,
}

impl Crew {
    /// Whether fewer people than the crew make a visit after the pour.
    pub fn has_few_back(&self) -> bool {
        self.back
            .iter()
            .any(|few| few.value() != self.people.value())
    }

    /// Whether it is formed and poured on one day, before which there is nothing to do.
    pub fn is_short(&self) -> bool {
        let pours = self.stretches.iter().filter(|one| one.has(Step::Place));
        let first = self.stretches.first();
        first.is_some_and(|first| {
            first.has(Step::Place) && first.on_site.value() <= Decimal::ONE && pours.count() == 1
        })
    }
}

/// What there is to do on the slabs.
pub(super) struct Work<'a> {
    pub takeoff: &'a Takeoff,
    pub slabs: &'a [SlabQuantities],
    pub orders: &'a [ConcreteOrder],
}

/// The work that follows from the slabs alone.
#[derive(Debug)]
pub(super) struct SlabTasks {
    making: Vec<TaskHours>,
    around: Vec<TaskHours>,
    visits: Vec<Visit>,
}

/// Tasks of the very same work, in any choice.
#[derive(Debug, Default)]
pub(super) struct KnownHours(Once<TaskHours>);

pub(super) fn of_slabs(
    work: &Work<'_>,
    placing: Vec<TaskHours>,
    list: &mut List<'_>,
    memo: &mut KnownHours,
) -> SlabTasks {
    let mut making = timed(
        built_in(tasks::before_placing(work, list.by.rules), list),
        work,
        list,
        memo,
    );
    making.extend(placing);
    let after = built_in(tasks::after_placing(work, list.by), list);
    making.extend(timed(after, work, list, memo));
    SlabTasks {
        making,
        around: timed(built_in(set::listed(work, list.by), list), work, list, memo),
        visits: surfaces::visits(work, list),
    }
}

/// Work beside that on the slabs.
pub(super) struct Beside<'a> {
    pub removals: &'a [RemovalQuantities],
    pub extras: &'a [&'a Extra],
    pub also: Vec<AlsoDone<'a>>,
}

pub(super) fn crew(
    work: &Work<'_>,
    of_slabs: &SlabTasks,
    beside: Beside<'_>,
    list: &mut List<'_>,
    memo: &mut KnownHours,
) -> Crew {
    let rules = list.by.rules;
    let Beside {
        removals,
        extras,
        also,
    } = beside;
    let mut tasks = timed(
        built_in(removal::tasks(removals, rules), list),
        work,
        list,
        memo,
    );
    tasks.extend(of_slabs.making.iter().cloned());
    tasks.extend(timed(tasks::of_extras(extras, list), work, list, memo));
    let also = also.into_iter();
    let also = also.map(|one| Task::rated(one.name, one.stage, one.parts).at(one.rate));
    tasks.extend(timed(also.collect(), work, list, memo));
    tasks.extend(of_slabs.around.iter().cloned());
    let shares = tasks.iter().flat_map(|task| task.shares.iter().copied());
    let shares: Shares = shares.collect();
    let pours = pour_day::pour_days(work, &tasks, list);
    let mut visits = of_slabs.visits.clone();
    visits.extend(sealing::visits(work, extras, list));
    visits.extend(surfaces::lid_visit(work, list));
    let crew = time::time(work, tasks, &visits, pours, list);
    charge(&crew, shares, list);
    let placing = |pour| {
        let mut days = crew.pours.iter();
        days.find(|day| day.pour == pour).map(|day| &day.placing)
    };
    hire_pump(work.takeoff, work.orders, placing, list);
    machines::buggies(work, list);
    machines::breaker(removals, &crew, list);
    crew
}

/// What of these tasks is left beside the owner's own rules.
fn built_in(mut tasks: Vec<Task>, list: &List<'_>) -> Vec<Task> {
    for task in &mut tasks {
        let before = std::mem::take(&mut task.parts);
        task.parts = left_to_do(&task.name, before.clone(), &list.replaced);
        for (unit, parts) in &mut task.otherwise {
            let all = std::mem::take(parts).into_iter();
            let left = all.filter_map(|(section, other)| {
                Some((section, share(section, other, *unit, &before, &task.parts)?))
            });
            *parts = left.collect();
        }
    }
    tasks
}

/// What is left of the same work in another unit: as much of it as is left in its own.
fn share(
    section: Section,
    other: Quantity,
    unit: Unit,
    before: &Parts,
    left: &Parts,
) -> Option<Quantity> {
    let here = |parts: &Parts| {
        let here = parts.iter().filter(|(one, _)| *one == section);
        sum(here.map(|(_, part)| part))
    };
    let (before, left) = (here(before), here(left));
    if before.value() == left.value() {
        return Some(other);
    }
    let rule = "all of it × what is left ÷ all, by its usual unit";
    let is_some = !left.value().is_zero();
    let name = other.name().to_owned();
    is_some.then(|| Quantity::by(rule, name, unit, of(&other) * left / before))
}

/// The hours of every task that there is work for.
fn timed(
    listed: Vec<Task>,
    work: &Work<'_>,
    list: &mut List<'_>,
    memo: &mut KnownHours,
) -> Vec<TaskHours> {
    let mut tasks: Vec<TaskHours> = Vec::new();
    for mut one in listed {
        one.parts.retain(|(_, part)| !part.value().is_zero());
        if one.parts.is_empty() {
            continue;
        }
        if one.is_hours {
            tasks.push(as_written(&one, list));
            continue;
        }
        let Some(rate) = one.rate.take().or_else(|| list.rate(&one.name)) else {
            continue;
        };
        one.rated_by(rate.value.per.unit);
        if one.parts.is_empty() {
            continue;
        }
        tasks.push(once(&mut memo.0, &one.name, &one.parts, || {
            task(&one, &rate, work, list)
        }));
    }
    tasks
}

/// Hours that the owner adds are final, and not multiplied.
fn as_written(task: &Task, list: &List<'_>) -> TaskHours {
    let name = &task.name;
    let added = sum(task.parts.iter().map(|(_, part)| part));
    let work = Quantity::by("added up", format!("{name} work"), Unit::Hour, added);
    let rule = "hours as the takeoff adds them";
    let hours = Quantity::by(rule, format!("{name} hours"), Unit::Hour, of(&work));
    TaskHours {
        shares: shares(&task.parts),
        name: name.clone(),
        step: task.step,
        wait: task.wait,
        work,
        hours: list.sets.settle(hours),
    }
}

fn task(task: &Task, rate: &At<Ratio>, work: &Work<'_>, list: &List<'_>) -> TaskHours {
    let (name, unit) = (&task.name, rate.value.per.unit);
    let parts = sum(task.parts.iter().map(|(_, part)| part));
    let total = Quantity::by("added up", format!("{name} work"), unit, parts);
    let hours = hours(name, &total, None, rate, work.takeoff, list);
    TaskHours {
        shares: divided(&hours, shares(&task.parts)),
        name: name.clone(),
        step: task.step,
        wait: task.wait,
        work: total,
        hours,
    }
}

/// Person hours of so much work; `way` multiplies what takes longer the farther it is.
fn hours(
    name: &str,
    total: &Quantity,
    way: Option<&Quantity>,
    rate: &At<Ratio>,
    takeoff: &Takeoff,
    list: &List<'_>,
) -> Quantity {
    let crew = list.by.crew;
    let mut term = of(total).at_rate((format!("{name} rate"), "for each"), rate);
    if let Some(way) = way {
        term = term * way;
    }
    let written = rate.value.much.unit;
    if written == Unit::CrewHour {
        term = term * &people(crew);
    } else if written == Unit::Minute {
        term = term / number(60);
    }
    let difficulty = takeoff.head.difficulty.as_ref();
    let difficulty = difficulty.unwrap_or(&crew.difficulty);
    if difficulty.value.number() != Decimal::ONE_HUNDRED {
        term = term * &Quantity::said("difficulty", difficulty);
    }
    let rule = match way {
        Some(_) => "work × rate × way",
        None => "work × rate",
    };
    // A number of hours that the owner sets is final, not multiplied, and in the unit of the rate.
    let hours = Quantity::by(rule, format!("{name} hours"), Unit::Hour, term);
    let usual = match written {
        Unit::CrewHour => Unit::CrewHour,
        _ => Unit::Hour,
    };
    list.sets.settle_in(usual, hours)
}

/// Hours by what each part of the job has of the work.
fn divided(hours: &Quantity, mut shares: Shares) -> Shares {
    let whole: Decimal = shares.iter().map(|(_, share)| share).sum();
    for (_, share) in &mut shares {
        *share = (hours.value() * *share)
            .checked_div(whole)
            .unwrap_or_default();
    }
    shares
}

fn people(policy: &CrewPolicy) -> Quantity {
    Quantity::said("people", &policy.people)
}

fn hours_in_a_day(policy: &CrewPolicy) -> Quantity {
    let hours = policy.hours_in_a_day.clone();
    let hours = hours.map(|hours| Amount::new(hours.value, Unit::Hour));
    Quantity::said("hours in a day", &hours)
}
