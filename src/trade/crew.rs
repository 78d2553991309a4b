//! Hours by production rate, then trips, crew days, and the hours that are charged.

mod set;
mod tasks;

use rust_decimal::Decimal;

use tasks::TaskName;

use crate::input::book::Role;
use crate::input::business::DayRule;
use crate::input::job::{Extra, Takeoff};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, List, Need, NeedItem, Section};
use crate::trade::term::{of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// One task of the job and its hours.
#[derive(Clone, Debug)]
pub struct TaskHours {
    pub name: String,
    /// How much work there is.
    pub work: Quantity,
    /// Person hours, difficulty included unless the owner set them.
    pub hours: Quantity,
}

/// Everything about the crew's time.
#[derive(Clone, Debug)]
pub struct Crew {
    pub tasks: Vec<TaskHours>,
    /// All tasks together.
    pub worked: Quantity,
    pub trips: Quantity,
    pub travel: Quantity,
    /// Person hours as computed.
    pub hours: Quantity,
    pub days: Quantity,
    /// Person hours that set the price.
    pub charged: Quantity,
}

impl Crew {
    pub(super) fn roots(&self) -> Vec<Quantity> {
        vec![
            self.worked.clone(),
            self.trips.clone(),
            self.travel.clone(),
            self.hours.clone(),
            self.days.clone(),
            self.charged.clone(),
        ]
    }
}

/// What there is to do.
pub(super) struct Work<'a> {
    pub takeoff: &'a Takeoff,
    pub slabs: &'a [SlabQuantities],
    pub removals: &'a [RemovalQuantities],
    pub orders: &'a [ConcreteOrder],
    pub extras: &'a [&'a Extra],
}

pub(super) fn crew(work: &Work<'_>, list: &mut List<'_>) -> Crew {
    let mut tasks: Vec<(TaskHours, Vec<(Section, Decimal)>)> = Vec::new();
    for (name, parts) in tasks::listed(work, list.ways.rules) {
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
            tasks.push(task(name.text(), &parts, &rate, work, list));
        }
    }
    let shares: Vec<(Section, Decimal)> = tasks
        .iter()
        .flat_map(|(_, shares)| shares.iter().copied())
        .collect();
    let tasks: Vec<TaskHours> = tasks.into_iter().map(|(task, _)| task).collect();
    let crew = time(tasks, list);
    charge(&crew, shares, list);
    crew
}

fn task(
    name: &str,
    parts: &[(Section, Quantity)],
    rate: &At<Ratio>,
    work: &Work<'_>,
    list: &List<'_>,
) -> (TaskHours, Vec<(Section, Decimal)>) {
    let unit = rate.value.per.unit;
    let total = if name.starts_with("place by") {
        // What is placed is what is ordered; its parts only say where the hours belong.
        Quantity::by(
            "ordered yards",
            format!("{name} work"),
            unit,
            sum(work.orders.iter().map(|order| &order.order)),
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
        let people = &list.ways.crew.people;
        term = term * &Quantity::given("people", people.value, people.place);
    }
    let difficulty = work
        .takeoff
        .difficulty
        .as_ref()
        .unwrap_or(&list.ways.crew.difficulty);
    if difficulty.value.number() != Decimal::ONE_HUNDRED {
        term = term * &Quantity::percent("difficulty", difficulty);
    }
    // A number of hours that the owner sets is final, and not multiplied.
    let hours = list.sets.settle(Quantity::by(
        "work × rate",
        format!("{name} hours"),
        Unit::Hour,
        term,
    ));
    let whole: Decimal = parts.iter().map(|(_, part)| part.value()).sum();
    let shares = parts
        .iter()
        .map(|(section, part)| {
            (
                *section,
                if whole.is_zero() {
                    Decimal::ZERO
                } else {
                    hours.value() * part.value() / whole
                },
            )
        })
        .collect();
    (
        TaskHours {
            name: name.to_owned(),
            work: total,
            hours,
        },
        shares,
    )
}

fn time(tasks: Vec<TaskHours>, list: &List<'_>) -> Crew {
    let policy = list.ways.crew;
    let people = Quantity::given("people", policy.people.value, policy.people.place);
    let day = Quantity::given(
        "hours in a day",
        Amount::new(policy.hours_in_a_day.value.value, Unit::Hour),
        policy.hours_in_a_day.place,
    );
    let travel_each = Quantity::given(
        "travel a person and day",
        policy.travel.value,
        policy.travel.place,
    );
    let worked = list.sets.settle(Quantity::by(
        "tasks added up",
        "hours worked",
        Unit::Hour,
        sum(tasks.iter().map(|task| &task.hours)),
    ));
    let trips = list.sets.settle(Quantity::by(
        "hours ÷ (people × a day without travel), up to a whole one",
        "trips",
        Unit::Trip,
        (of(&worked) / (of(&people) * (of(&day) - &travel_each))).whole(),
    ));
    let travel = list.sets.settle(Quantity::by(
        "trips × people × travel",
        "travel hours",
        Unit::Hour,
        of(&trips) * &people * &travel_each,
    ));
    let hours = Quantity::by(
        "work and travel",
        "hours",
        Unit::Hour,
        of(&worked) + &travel,
    );
    let days = of(&hours) / (of(&people) * &day);
    let days = match policy.day_rule.value {
        DayRule::ByTheHour => days,
        DayRule::UpTo(step) => days.up_to(&Quantity::given(
            "round days up to",
            Amount::new(step, Unit::Plain),
            policy.day_rule.place,
        )),
    };
    let days = list.sets.settle(Quantity::by(
        "hours ÷ (people × a day), up to the owner's step",
        "crew days",
        Unit::Day,
        days,
    ));
    let charged = match policy.day_rule.value {
        DayRule::ByTheHour => of(&hours),
        DayRule::UpTo(_) => of(&days) * &people * &day,
    };
    let charged = list.sets.settle(Quantity::by(
        "crew days × people × a day",
        "labor",
        Unit::Hour,
        charged,
    ));
    Crew {
        tasks,
        worked,
        trips,
        travel,
        hours,
        days,
        charged,
    }
}

fn charge(crew: &Crew, shares: Vec<(Section, Decimal)>, list: &mut List<'_>) {
    if crew.charged.value().is_zero() {
        return;
    }
    if let Some(item) = list.role(Role::Labor) {
        list.needs.push(Need {
            item: NeedItem::Item(item),
            quantity: crew.charged.clone(),
            placement: None,
            shares,
        });
    }
    list.buy_role(
        Role::Trip,
        "trips",
        "every day on site",
        &[(Section::Whole, crew.trips.clone())],
        None,
    );
}
