//! Hours by production rate, then trips, crew days, and the hours that are charged.

use rust_decimal::Decimal;

use crate::input::book::{Role, Rules};
use crate::input::business::DayRule;
use crate::input::job::{Extra, ExtraWhat, RemovalMaterial, Takeoff};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, List, Need, NeedItem, Section};
use crate::trade::working::{Quantity, Working, number, of, sum};
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
    for (name, parts) in listed(work, list.ways.rules) {
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

enum TaskName {
    Rated(String),
    /// Hours that come with an item of the book.
    Item(String, At<Ratio>),
}

impl TaskName {
    fn text(&self) -> &str {
        match self {
            Self::Rated(name) | Self::Item(name, _) => name,
        }
    }
}

/// Every task that may occur, with its work in each part of the job.
fn listed(work: &Work<'_>, rules: &Rules) -> Vec<(TaskName, Vec<(Section, Quantity)>)> {
    let mut tasks: Vec<(TaskName, Vec<(Section, Quantity)>)> = Vec::new();
    let removed = |material: RemovalMaterial, what: &dyn Fn(&RemovalQuantities) -> Quantity| {
        work.removals
            .iter()
            .filter(|one| one.material == material)
            .map(|one| (Section::Removal, what(one)))
            .collect::<Vec<_>>()
    };
    tasks.push((
        TaskName::Rated("break out concrete".into()),
        removed(RemovalMaterial::Concrete, &|one| one.area.clone()),
    ));
    tasks.push((
        TaskName::Rated("dig".into()),
        removed(RemovalMaterial::Soil, &|one| one.solid.clone()),
    ));
    let slabs = |fits: &dyn Fn(usize, &SlabQuantities) -> Option<Quantity>| {
        work.slabs
            .iter()
            .enumerate()
            .filter_map(|(i, slab)| fits(i, slab).map(|quantity| (Section::Slab(i), quantity)))
            .collect::<Vec<_>>()
    };
    tasks.push((
        TaskName::Rated("base".into()),
        slabs(&|_, slab| slab.base.clone()),
    ));
    // A step is formed and finished as one piece of work, by its own rate.
    tasks.push((
        TaskName::Rated("form straight".into()),
        slabs(&|_, slab| (!slab.is_step).then(|| slab.edges.straight.clone())),
    ));
    tasks.push((
        TaskName::Rated("form curved".into()),
        slabs(&|_, slab| (!slab.is_step).then(|| slab.edges.curved.clone())),
    ));
    tasks.push((
        TaskName::Rated("bars".into()),
        slabs(&|_, slab| slab.bars.as_ref().map(|bars| bars.placed.clone())),
    ));
    tasks.push((
        TaskName::Rated("mesh".into()),
        slabs(&|_, slab| slab.mesh.as_ref().map(|_| slab.area.clone())),
    ));
    let placed = format!("place by {}", work.takeoff.access.by.value.name());
    let ordered = work.orders.iter().flat_map(|order| {
        let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
        let one_slab = order.shares.len() == 1;
        order.shares.iter().map(move |(section, share)| {
            let part = if one_slab || net.is_zero() {
                order.order.clone()
            } else {
                share_of(order, *share, net)
            };
            (*section, part)
        })
    });
    tasks.push((TaskName::Rated(placed), ordered.collect()));
    let mut finishes: Vec<&String> = work
        .takeoff
        .slabs
        .iter()
        .map(|slab| &slab.finish.value)
        .collect();
    finishes.sort();
    finishes.dedup();
    for finish in finishes {
        tasks.push((
            TaskName::Rated(format!("finish {finish}")),
            slabs(&|i, slab| {
                (!slab.is_step && work.takeoff.slabs[i].finish.value == *finish)
                    .then(|| slab.area.clone())
            }),
        ));
    }
    let one = Quantity::by("each step", "step", Unit::Piece, number(1));
    tasks.push((
        TaskName::Rated("step".into()),
        slabs(&|_, slab| slab.is_step.then(|| one.clone())),
    ));
    tasks.push((
        TaskName::Rated("cure, strip and clean".into()),
        slabs(&|_, slab| Some(slab.area.clone())),
    ));
    for extra in work.extras {
        let ExtraWhat::Item(amount) = &extra.what else {
            continue;
        };
        if let Some(selling) = rules.selling.get(&extra.name.value)
            && let Some(rate) = &selling.work
        {
            let quantity = Quantity::given(
                format!("{}, as written", extra.name.value),
                Amount::new(amount.value.value, selling.unit),
                amount.place,
            );
            tasks.push((
                TaskName::Item(extra.name.value.clone(), rate.clone()),
                vec![(Section::Extras, quantity)],
            ));
        }
    }
    tasks
}

/// A slab's part of an order, by its net concrete.
fn share_of(order: &ConcreteOrder, share: Decimal, net: Decimal) -> Quantity {
    let part = Amount::new(share, Unit::CubicYard);
    let slab = Quantity::new(
        "net",
        part,
        Working::Plan {
            how: "this slab's concrete".into(),
            of: Vec::new(),
            rule: "",
        },
    );
    let whole = Quantity::new(
        "net of the order",
        Amount::new(net, Unit::CubicYard),
        Working::Plan {
            how: "all slabs of the order".into(),
            of: vec![order.net.clone()],
            rule: "",
        },
    );
    Quantity::by(
        "the order, by net concrete",
        "ordered",
        Unit::CubicYard,
        of(&order.order) * &slab / &whole,
    )
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
