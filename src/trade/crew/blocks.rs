//! The work of a job in blocks: what is done at a stretch for one reason, in the order of the work.
//!
//! The forms of all pours are made before the first of them: one inspection sees them all, and pours
//! may follow each other from one day to the next. Pours of the same day are one block.

use rust_decimal::Decimal;

use super::covers::days_under;
use super::step::Step;
use super::visit::Visit;
use super::{TaskHours, Work};
use crate::input::business::SetLids;
use crate::trade::order::{List, Section};
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Work of one kind that is done at a stretch.
#[derive(Clone, Debug)]
pub struct Block {
    pub step: Step,
    /// `form`, `place pour 2`, `seal after 28 days`.
    pub name: String,
    /// Pours it is for; of forms and what is removed, all.
    pub pours: Vec<usize>,
    /// Person hours of its tasks.
    pub worked: Quantity,
    /// Visits that are asked for, however few hours they take.
    pub asked: Option<Quantity>,
    /// Days from the pour until it may be done.
    pub wait: Option<u32>,
    /// Person hours in which those who pour wait until it sets, where that takes longer than a day.
    pub waiting: Option<Quantity>,
}

/// Tasks of the job, cut up by what is done when.
struct Cut<'a> {
    tasks: &'a [TaskHours],
    /// What the owner made of all hours together, by what they were.
    scale: Option<(Quantity, Quantity)>,
}

impl Cut<'_> {
    /// Hours of a step where its parts of the job are `here`; none where there is no such work.
    fn hours(&self, step: Step, name: &str, here: &dyn Fn(Section) -> bool) -> Option<Quantity> {
        self.of(&|task| task.step == step, name, here)
    }

    /// Hours of these tasks where their parts of the job are `here`.
    fn of(
        &self,
        is_meant: &dyn Fn(&TaskHours) -> bool,
        name: &str,
        here: &dyn Fn(Section) -> bool,
    ) -> Option<Quantity> {
        let tasks = self.tasks.iter().filter(|task| is_meant(task));
        let parts: Vec<Quantity> = tasks.filter_map(|task| part(task, name, here)).collect();
        if parts.is_empty() {
            return None;
        }
        let (rule, hours) = match &self.scale {
            Some((set, before)) => (
                "tasks added up × hours worked as you set them ÷ as computed",
                // As a number: only one quantity goes by the name of what was computed.
                sum(&parts) * set / number(before.value()),
            ),
            None => ("tasks of it added up", sum(&parts)),
        };
        Some(Quantity::by(
            rule,
            format!("hours to {name}"),
            Unit::Hour,
            hours,
        ))
    }
}

/// Hours of a task in the parts of the job that are `here`, for the block of this name.
fn part(task: &TaskHours, block: &str, here: &dyn Fn(Section) -> bool) -> Option<Quantity> {
    let all: Decimal = task.shares.iter().map(|(_, share)| share).sum();
    let its = task.shares.iter().filter(|(section, _)| here(*section));
    let its: Decimal = its.map(|(_, share)| share).sum();
    if its == all {
        return Some(task.hours.clone());
    }
    if its.is_zero() {
        return None;
    }
    let rule = "its part of the task, by what it has of the work";
    let hours = of(&task.hours) * number(its) / number(all);
    let name = format!("{} to {block}", task.hours.name());
    Some(Quantity::by(rule, name, Unit::Hour, hours))
}

impl Block {
    /// How long those who do it are there.
    pub(super) fn there(&self) -> Decimal {
        let waiting = self.waiting.as_ref().map_or(Decimal::ZERO, Quantity::value);
        self.worked.value() + waiting
    }
}

/// Every block of the job in its order; visits that the owner set are one block.
pub(super) fn blocks(
    work: &Work<'_>,
    tasks: &[TaskHours],
    worked: &Quantity,
    visits: &[Visit],
    asked: Option<&Quantity>,
    list: &List<'_>,
) -> Vec<Block> {
    let scale = worked.overruled().filter(|all| !all.value().is_zero());
    let scale = scale.map(|before| (worked.clone(), before.clone()));
    let cut = Cut { tasks, scale };
    let days = days_of_pours(work, list);
    let all: Vec<usize> = days.iter().flatten().copied().collect();
    let mut blocks = before_pours(&cut, &all);
    let pour_of = |section: Section| match section {
        Section::Slab(i) => Some(work.takeoff.slabs[i].placement),
        Section::Removal | Section::Extras | Section::Whole => None,
    };
    let is_set = asked.is_some_and(|asked| asked.overruled().is_some());
    let (lids, visits): (Vec<&Visit>, Vec<&Visit>) =
        visits.iter().partition(|visit| visit.step == Step::Lid);
    // Pours whose forms are up.
    let mut standing: Vec<usize> = Vec::new();
    for (nth, pours) in days.iter().enumerate() {
        let made = |step: Step, pours: &[usize], wait: Option<u32>, whole: bool| {
            let name = called(step, pours, work, None);
            let here = |section: Section| match pour_of(section) {
                Some(pour) => pours.contains(&pour),
                None => whole,
            };
            let worked = cut.hours(step, &name, &here)?;
            let pours = pours.to_vec();
            Some(Block {
                waiting: None,
                step,
                name,
                pours,
                worked,
                asked: None,
                wait,
            })
        };
        // What belongs to no slab is done with the first pour, and cleaned up after the last.
        blocks.extend(made(Step::Place, pours, None, nth == 0));
        standing.extend(pours);
        let wait = wait(&standing, work, list);
        let next = days.get(nth + 1).and_then(|pours| pours.first());
        if next.is_some_and(|next| is_before(*next, &standing, wait, list)) {
            continue;
        }
        let is_last = nth + 1 == days.len();
        for step in [Step::Strip, Step::Lift] {
            blocks.extend(made(step, &standing, wait, is_last));
        }
        let washed = visits
            .iter()
            .filter(|one| !is_set && one.step == Step::Finish);
        let washed = washed.filter(|one| standing.contains(&one.pours[0]));
        blocks.extend(washed.map(|visit| {
            let name = called(visit.step, &visit.pours, work, None);
            block_of(visit, name, None)
        }));
        standing.clear();
    }
    if is_set {
        blocks.extend(set_together(&cut, asked));
        return blocks;
    }
    let later = visits
        .into_iter()
        .filter(|visit| visit.step != Step::Finish)
        .map(|visit| {
            let name = called(visit.step, &visit.pours, work, visit.wait);
            // What belongs to no slab is done after the first pour; what waits, after the last.
            let whole = if visit.wait.is_some() {
                all.last()
            } else {
                all.first()
            };
            let whole = whole.is_some_and(|pour| visit.pours.contains(pour));
            let here = |section: Section| {
                pour_of(section).map_or(whole, |pour| visit.pours.contains(&pour))
            };
            let is_meant = |task: &TaskHours| task.step == visit.step && task.wait == visit.wait;
            let worked = cut.of(&is_meant, &name, &here);
            block_of(visit, name, worked)
        });
    let lids = lids.into_iter().map(|visit| {
        let name = visit.step.name().to_owned();
        let worked = cut.hours(visit.step, &name, &|_| true);
        block_of(visit, name, worked)
    });
    if list.by.crew.lids == SetLids::WithStripping {
        blocks.extend(lids);
        blocks.extend(later);
    } else {
        blocks.extend(later);
        blocks.extend(lids);
    }
    blocks.retain(|block| !block.worked.value().is_zero() || block.asked.is_some());
    blocks
}

/// What is done for all pours before the first of them.
fn before_pours(cut: &Cut<'_>, all: &[usize]) -> Vec<Block> {
    let steps = [Step::Remove, Step::Form].into_iter();
    let blocks = steps.filter_map(|step| {
        let name = step.name().to_owned();
        Some(Block {
            step,
            worked: cut.hours(step, &name, &|_| true)?,
            name,
            pours: all.to_vec(),
            asked: None,
            wait: None,
            waiting: None,
        })
    });
    blocks.collect()
}

fn block_of(visit: &Visit, name: String, worked: Option<Quantity>) -> Block {
    let none = || {
        let name = format!("hours to {name}");
        Quantity::by("no task of its own", name, Unit::Hour, number(0))
    };
    Block {
        step: visit.step,
        worked: worked.unwrap_or_else(none),
        name,
        pours: visit.pours.clone(),
        asked: visit.asked.clone(),
        wait: visit.wait,
        waiting: None,
    }
}

/// All visits after the pour, where the owner says how many they are.
fn set_together(cut: &Cut<'_>, asked: Option<&Quantity>) -> Option<Block> {
    let steps = [Step::Return, Step::Wet, Step::Seal, Step::Lid];
    let name = Step::Return.name().to_owned();
    let hours = steps.map(|step| cut.hours(step, &name, &|_| true));
    let hours: Vec<Quantity> = hours.into_iter().flatten().collect();
    Some(Block {
        step: Step::Return,
        worked: Quantity::by(
            "tasks of all visits after the pour added up",
            format!("hours to {name}"),
            Unit::Hour,
            sum(&hours),
        ),
        name,
        pours: Vec::new(),
        asked: Some(asked?.clone()),
        wait: None,
        waiting: None,
    })
}

/// Days from the last of these pours until the blankets of all may come off.
fn wait(pours: &[usize], work: &Work<'_>, list: &List<'_>) -> Option<u32> {
    let day = |pour: usize| list.by.pours.get(pour).copied();
    let last = day(*pours.last()?)?;
    let off = pours.iter().filter_map(|pour| {
        let days = days_under(work, *pour, list.by)?;
        Some(day(*pour)?.plus(i64::from(days) + 1))
    });
    u32::try_from(off.max()?.days_since(last)).ok()
}

/// Whether a pour comes before what these pours wait for, or on its day, when all hands pour.
fn is_before(next: usize, pours: &[usize], wait: Option<u32>, list: &List<'_>) -> bool {
    let day = |pour: usize| list.by.pours.get(pour);
    let (Some(wait), Some(next)) = (wait, day(next)) else {
        return false;
    };
    let last = pours.last().and_then(|last| day(*last));
    last.is_some_and(|last| *next <= last.plus(i64::from(wait)))
}

/// The pours of each day, in the order of their days.
fn days_of_pours(work: &Work<'_>, list: &List<'_>) -> Vec<Vec<usize>> {
    let pours = work.takeoff.pours().map(|(pour, _)| pour);
    let day = |pour: usize| list.by.pours.get(pour).copied();
    let mut pours: Vec<usize> = pours.collect();
    if pours.is_empty() {
        // A job without a slab has work that belongs to none.
        return vec![Vec::new()];
    }
    pours.sort_by_key(|pour| (day(*pour), *pour));
    let days = pours.chunk_by(|one, other| day(*one) == day(*other));
    days.map(<[usize]>::to_vec).collect()
}

/// Its name, with its pours where the job has several, and the day it waits for.
fn called(step: Step, pours: &[usize], work: &Work<'_>, wait: Option<u32>) -> String {
    let mut name = step.name().to_owned();
    if 1 < work.takeoff.pours().count() {
        let numbers: Vec<String> = pours.iter().map(|pour| (pour + 1).to_string()).collect();
        let several = if numbers.len() == 1 { "pour" } else { "pours" };
        name = format!("{name} {several} {}", numbers.join(" and "));
    }
    match wait {
        Some(days) => format!("{name} after {days} days"),
        None => name,
    }
}
