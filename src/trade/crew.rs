//! Hours by production rate, then trips, crew days, and the hours that are charged.

mod removal;
mod set;
mod stages;
mod surfaces;
mod tasks;
mod time;

pub use stages::{Stage, StageHours};

use rust_decimal::Decimal;

use tasks::TaskName;

use crate::input::book::Role;
use crate::input::business::LaborLines;
use crate::input::job::{Extra, Takeoff};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, List, Need, NeedItem, Section, Ways};
use crate::trade::sets::Sets;
use crate::trade::term::{of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// One task of the job and its hours.
#[derive(Clone, Debug)]
pub struct TaskHours {
    pub name: String,
    /// How much work there is.
    pub work: Quantity,
    /// Person hours, difficulty included unless the owner set them.
    pub hours: Quantity,
    /// Hours in each part of the job.
    pub shares: Vec<(Section, Decimal)>,
}

/// Everything about the crew's time.
#[derive(Clone, Debug)]
pub struct Crew {
    pub tasks: Vec<TaskHours>,
    pub stages: Vec<StageHours>,
    /// All tasks together.
    pub worked: Quantity,
    /// Every day on site, visits after the pour included.
    pub trips: Quantity,
    /// Visits after the pour, for finishes and sealers; none where none is asked for.
    pub returns: Option<Quantity>,
    pub travel: Quantity,
    /// Set-up and clean-up, where the owner counts it.
    pub set_up: Option<Quantity>,
    /// Person hours as computed.
    pub hours: Quantity,
    pub days: Quantity,
    /// Person hours that set the price.
    pub charged: Quantity,
}

impl Crew {
    /// From work to what is charged, in the order it is computed.
    pub fn roots(&self) -> Vec<Quantity> {
        let mut roots = vec![self.worked.clone()];
        roots.extend(self.returns.clone());
        roots.extend([self.trips.clone(), self.travel.clone()]);
        roots.extend(self.set_up.clone());
        roots.push(self.hours.clone());
        roots.extend(self.stages.iter().filter_map(|one| one.days.clone()));
        roots.extend([self.days.clone(), self.charged.clone()]);
        roots
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
    returns: Option<Quantity>,
}

pub(super) fn of_slabs(work: &Work<'_>, list: &mut List<'_>) -> SlabTasks {
    SlabTasks {
        making: timed(tasks::listed(work, list.ways.rules), work, list),
        around: timed(set::listed(work, list.ways), work, list),
        returns: surfaces::returns(work, list),
    }
}

pub(super) fn crew(
    work: &Work<'_>,
    of_slabs: &SlabTasks,
    removals: &[RemovalQuantities],
    extras: &[&Extra],
    list: &mut List<'_>,
) -> Crew {
    let rules = list.ways.rules;
    let mut tasks = timed(removal::tasks(removals, rules), work, list);
    tasks.extend(of_slabs.making.iter().cloned());
    tasks.extend(timed(tasks::of_extras(extras, rules), work, list));
    tasks.extend(of_slabs.around.iter().cloned());
    let shares: Vec<(Section, Decimal)> = tasks
        .iter()
        .flat_map(|task| task.shares.iter().copied())
        .collect();
    let crew = time::time(tasks, of_slabs.returns.clone(), list);
    charge(&crew, shares, list);
    crew
}

/// The hours of every task that there is work for.
fn timed(
    listed: Vec<(TaskName, Vec<(Section, Quantity)>)>,
    work: &Work<'_>,
    list: &mut List<'_>,
) -> Vec<TaskHours> {
    let mut tasks: Vec<TaskHours> = Vec::new();
    for (name, parts) in listed {
        let parts: Vec<(Section, Quantity)> = parts
            .into_iter()
            .filter(|(_, part)| !part.value().is_zero())
            .collect();
        if parts.is_empty() {
            continue;
        }
        let rate = match &name {
            TaskName::Rated(task) => list.rate(task),
            TaskName::Item(_, rate) => Some(rate.clone()),
        };
        if let Some(rate) = rate {
            let (ways, sets) = (list.ways, list.sets);
            // What is placed is what is ordered, whatever its parts are.
            if name.is_placing() {
                tasks.push(task(name.text(), &parts, &rate, work, ways, sets));
            } else {
                let make = || task(name.text(), &parts, &rate, work, ways, sets);
                tasks.push(list.worked.task(name.text(), &parts, make));
            }
        }
    }
    tasks
}

fn task(
    name: &str,
    parts: &[(Section, Quantity)],
    rate: &At<Ratio>,
    work: &Work<'_>,
    ways: Ways<'_>,
    sets: Sets<'_>,
) -> TaskHours {
    let unit = rate.value.per.unit;
    let total = if name.starts_with("place by") {
        // What is placed is what is ordered; its parts only say where the hours belong.
        Quantity::by(
            "ordered yards",
            format!("{name} work"),
            unit,
            sum(work
                .orders
                .iter()
                .filter(|order| name.ends_with(order.by.name()))
                .map(|order| &order.order)),
        )
    } else {
        Quantity::by(
            "added up",
            format!("{name} work"),
            unit,
            sum(parts.iter().map(|(_, part)| part)),
        )
    };
    let much = Quantity::given(format!("{name} rate"), rate.value.much, rate.place);
    let per = Quantity::given("for each", rate.value.per, rate.place);
    let mut term = of(&total) * &much / &per;
    if rate.value.much.unit == Unit::CrewHour {
        let people = &ways.crew.people;
        term = term * &Quantity::given("people", people.value, people.place);
    }
    let difficulty = work
        .takeoff
        .head
        .difficulty
        .as_ref()
        .unwrap_or(&ways.crew.difficulty);
    if difficulty.value.number() != Decimal::ONE_HUNDRED {
        term = term * &Quantity::percent("difficulty", difficulty);
    }
    // A number of hours that the owner sets is final, and not multiplied.
    let hours = sets.settle(Quantity::by(
        "work × rate",
        format!("{name} hours"),
        Unit::Hour,
        term,
    ));
    let whole: Decimal = parts.iter().map(|(_, part)| part.value()).sum();
    let shares = parts.iter().map(|(section, part)| {
        let share = if whole.is_zero() {
            Decimal::ZERO
        } else {
            hours.value() * part.value() / whole
        };
        (*section, share)
    });
    TaskHours {
        shares: shares.collect(),
        name: name.to_owned(),
        work: total,
        hours,
    }
}

fn charge(crew: &Crew, shares: Vec<(Section, Decimal)>, list: &mut List<'_>) {
    if crew.charged.value().is_zero() {
        return;
    }
    if let Some(item) = list.role(Role::Labor) {
        let parts = match list.ways.crew.labor_lines {
            LaborLines::One => vec![(crew.charged.clone(), shares)],
            LaborLines::ByTask => by_task(crew, shares),
        };
        list.needs
            .extend(parts.into_iter().map(|(quantity, shares)| Need {
                item: NeedItem::Item(item.clone()),
                quantity,
                placement: None,
                shares,
            }));
    }
    list.buy_role(
        Role::Trip,
        "trips",
        "every day on site",
        &[(Section::Whole, crew.trips.clone())],
        None,
    );
}

/// A line a task; what is charged beside them, travel and the rounding of days, is the last.
fn by_task(
    crew: &Crew,
    shares: Vec<(Section, Decimal)>,
) -> Vec<(Quantity, Vec<(Section, Decimal)>)> {
    let mut lines: Vec<(Quantity, Vec<(Section, Decimal)>)> = Vec::new();
    for task in &crew.tasks {
        lines.push((task.hours.clone(), task.shares.clone()));
    }
    let tasks = Quantity::by(
        "tasks added up",
        "hours of tasks",
        Unit::Hour,
        sum(crew.tasks.iter().map(|task| &task.hours)),
    );
    let rest = Quantity::by(
        "charged hours − hours of tasks: travel, set-up, days up to the owner's step",
        "other labor",
        Unit::Hour,
        of(&crew.charged) - &tasks,
    );
    if !rest.value().is_zero() {
        lines.push((rest, shares));
    }
    lines
}
