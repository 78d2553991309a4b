//! The day of each pour: trucks at the slab, placing, finishing before it sets, and how long all of it takes.
//!
//! All hands place while a truck is there, then all that find room finish, in the order it was placed. What
//! was placed first sets first: so placing may take no longer than setting, nor may finishing after it,
//! and no yard in between is worse off, as both go at an even pace.

use std::sync::Arc;

use rust_decimal::Decimal;

use super::step::Step;
use super::{TaskHours, Work, people};
use crate::input::book::Supply;
use crate::trade::order::{ConcreteOrder, List, Section};
use crate::trade::tally::{Listed, Tally};
use crate::trade::term::{Term, largest, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit, rounding};

/// The day of one pour.
#[derive(Clone, Debug)]
pub struct PourDay {
    /// Its number in `Takeoff::placements`.
    pub pour: usize,
    pub yards: Quantity,
    pub trucks: usize,
    /// The truck that is longest at the slab, and the order it brings; none where no truck comes.
    pub truck: Option<(usize, Quantity)>,
    /// How long a truck may be there by the plant's limit.
    pub truck_may: Quantity,
    /// From the first truck to the end of the last.
    pub placing: Quantity,
    /// Person hours of placing, finishing and covering.
    pub work: Quantity,
    /// Hours after the last truck until it has its last pass, if nobody waits.
    pub finishing: Quantity,
    /// In Fahrenheit, as it is expected while it sets.
    pub temperature: Quantity,
    /// Hours after the last truck until it has its last pass, or is stiff enough for it.
    pub last_pass: Quantity,
    pub setting: Quantity,
    /// Hours from the first truck to the end.
    pub day: Quantity,
    pub day_may: Quantity,
    /// All of it, as it is shown.
    pub listed: Arc<[Listed]>,
}

/// What the day of a pour goes over, in the order it happens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Over {
    /// A truck is at the slab longer than the plant lets it.
    Truck,
    /// What was placed first sets before the last is placed.
    Place,
    /// It sets before it is finished.
    Finish,
    /// The day is longer than a day may be.
    Day,
}

impl Over {
    /// What it is called in a table.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Truck => "truck",
            Self::Place => "place",
            Self::Finish => "finish",
            Self::Day => "day",
        }
    }
}

impl PourDay {
    /// Every limit it goes over.
    pub fn over(&self) -> impl Iterator<Item = Over> {
        let truck = self.truck.as_ref();
        let all = [
            (
                Over::Truck,
                truck.is_some_and(|(_, minutes)| self.truck_may.value() < minutes.value()),
            ),
            (Over::Place, self.setting.value() < self.placing.value()),
            (Over::Finish, self.setting.value() < self.finishing.value()),
            (Over::Day, self.day_may.value() < self.day.value()),
        ];
        let over = all.into_iter().filter(|(_, is)| *is);
        over.map(|(over, _)| over)
    }

    /// Whether the last pass waits for the concrete, and not for the crew.
    pub fn waits(&self) -> bool {
        self.finishing.value() < self.last_pass.value()
    }
}

/// Done when the concrete has set.
const AFTERWARDS: [&str; 2] = ["joints by early saw", "cover slabs"];

pub(super) fn pour_days(work: &Work<'_>, tasks: &[TaskHours], list: &List<'_>) -> Vec<PourDay> {
    let Some(supply) = &list.by.rules.supply else {
        return Vec::new();
    };
    let pours = work.takeoff.pours();
    pours
        .map(|(pour, _)| pour_day(pour, work, tasks, supply, list))
        .collect()
}

fn pour_day(
    pour: usize,
    work: &Work<'_>,
    tasks: &[TaskHours],
    supply: &Supply,
    list: &List<'_>,
) -> PourDay {
    let policy = list.by.pour_day;
    let part = match work.takeoff.placements.len() {
        1 => "pour".to_owned(),
        _ => format!("pour {}", pour + 1),
    };
    let mut tally = Tally::of(&part, list.sets);
    let orders = || {
        let orders = work.orders.iter().enumerate();
        orders.filter(|(_, order)| order.placement == pour)
    };
    let day = |pour: usize| (list.by.pours.get(pour).copied(), pour);
    let first = work.takeoff.pours().map(|(pour, _)| day(pour)).min();
    let here = |one: &Section| match one {
        Section::Slab(i) => work.takeoff.slabs[*i].placement == pour,
        // What belongs to no slab is done with the first pour.
        Section::Removal | Section::Extras | Section::Whole => first == Some(day(pour)),
    };
    let hours_of = |fits: &dyn Fn(&str) -> bool| -> Vec<Quantity> {
        let tasks = tasks.iter().filter(|task| task.step == Step::Place);
        let tasks = tasks.filter(|task| fits(&task.name));
        tasks.filter_map(|task| share(task, &part, here)).collect()
    };
    let mixed = hours_of(&|name| name == "mix bags");
    let finish = hours_of(&|name| !is_placing(name) && !AFTERWARDS.contains(&name));
    let cover = hours_of(&|name| AFTERWARDS.contains(&name));
    let placed: Vec<&Quantity> = orders()
        .filter_map(|(_, order)| order.placing.as_ref())
        .collect();
    let people = people(list.by.crew);
    let truck = slowest(orders(), &tally);
    let yards = orders().map(|(_, order)| &order.placed);
    let rule = "orders of the pour added up, as placed";
    let yards = tally.between(rule, "concrete", Unit::CubicYard, sum(yards));
    let rule = "the plant's minutes to discharge − those on the road";
    let discharge = Quantity::said("discharge within", &supply.discharge);
    let road = Quantity::said("on the road", &supply.on_the_road);
    let truck_may = tally.between(
        rule,
        "truck may stand",
        Unit::Minute,
        of(&discharge) - &road,
    );
    if let Some((_, minutes)) = &truck {
        tally.show([minutes, &truck_may]);
    }
    let rule = "one truck after another, none sooner than the plant sends it; what is mixed by hand beside them";
    let between = Quantity::said("between trucks", &policy.between_trucks);
    let by_truck: Vec<&ConcreteOrder> = orders().map(|(_, order)| order).collect();
    let mut placing = trucks(&by_truck, &between) / number(60);
    if !mixed.is_empty() {
        placing = placing + sum(&mixed) / &people;
    }
    let placing = tally.by(rule, "placing", Unit::Hour, placing);
    let rule = "placing, finishing, sawing and covering, of everybody";
    let all = mixed.iter().chain(placed).chain(&finish).chain(&cover);
    let worked = tally.by(rule, "work", Unit::Hour, sum(all));
    let rule = "finishing and joints added up, of everybody";
    let to_finish = tally.between(rule, "work to finish", Unit::Hour, sum(&finish));
    let most = Quantity::said("people at once", &policy.most_people);
    let (rule, hands) = if people.value() <= most.value() {
        ("work to finish ÷ people", &people)
    } else {
        ("work to finish ÷ people who find room at once", &most)
    };
    let finishing = tally.by(rule, "finishing", Unit::Hour, of(&to_finish) / hands);
    let (temperature, setting) = setting(pour, work, &by_truck, &mut tally, list);
    let stiff = Quantity::said("stiff after", &policy.stiff_after);
    let last_pass = largest(vec![of(&finishing), of(&setting) * &stiff]);
    let rule =
        "placing, then finishing or the wait until it is stiff enough, then sawing and covering";
    let last_pass = Quantity::by(
        "finishing, or the wait until it is stiff enough",
        format!("{part} last pass"),
        Unit::Hour,
        last_pass,
    );
    let mut day = of(&placing) + &last_pass;
    if !cover.is_empty() {
        day = day + sum(&cover) / &people;
    }
    let day = tally.by(rule, "day", Unit::Hour, day);
    PourDay {
        pour,
        yards,
        trucks: by_truck.iter().map(|order| order.loads.len()).sum(),
        truck,
        truck_may,
        placing,
        work: worked,
        finishing,
        temperature,
        last_pass,
        setting,
        day,
        day_may: Quantity::said("longest day", &policy.longest),
        listed: tally.done(),
    }
}

fn is_placing(task: &str) -> bool {
    task.starts_with("place by ") || task == "mix bags"
}

/// The hours of a task in a pour; none where it has none there.
fn share(task: &TaskHours, pour: &str, here: impl Fn(&Section) -> bool) -> Option<Quantity> {
    let (mut all, mut of_pour) = (Decimal::ZERO, Decimal::ZERO);
    for (section, hours) in &task.shares {
        all += hours;
        if here(section) {
            of_pour += hours;
        }
    }
    if of_pour.is_zero() {
        return None;
    }
    if of_pour == all {
        return Some(task.hours.clone());
    }
    let working = Working::plan("its part of the task", vec![task.hours.clone()], "");
    let hours = Amount::new(of_pour, Unit::Hour);
    let name = format!("{} of {pour}", task.hours.name());
    Some(Quantity::new(name, hours, working))
}

/// The order whose truck is longest at the slab, the first of several, and its minutes.
fn slowest<'a>(
    orders: impl Iterator<Item = (usize, &'a ConcreteOrder)>,
    tally: &Tally<'_>,
) -> Option<(usize, Quantity)> {
    let trucks = orders.filter_map(|(i, order)| Some((i, longest_truck(order, tally)?)));
    trucks.reduce(|one, other| {
        if one.1.value() < other.1.value() {
            other
        } else {
            one
        }
    })
}

/// Minutes of the truck of an order that is longest at the slab.
fn longest_truck(order: &ConcreteOrder, tally: &Tally<'_>) -> Option<Quantity> {
    let (minutes, most) = (order.unloading.as_ref()?, order.loads.iter().max()?);
    let most = Quantity::new(
        "fullest truck",
        Amount::new(*most, Unit::CubicYard),
        Working::plan("of its loads", vec![order.order.clone()], ""),
    );
    let rule = "yards on the fullest truck × minutes to unload a yard";
    Some(tally.between(rule, "longest truck", Unit::Minute, of(&most) * minutes))
}

/// Minutes from the first truck to the end of the last. The one that keeps the crew waiting longest
/// decides: until then trucks come as the plant sends them, and from then on one after another.
fn trucks(orders: &[&ConcreteOrder], between: &Quantity) -> Term {
    let mut rest: Vec<(Quantity, Decimal)> = Vec::new();
    let mut loads: Vec<(usize, Decimal)> = Vec::new();
    for order in orders {
        let Some(minutes) = &order.unloading else {
            continue;
        };
        loads.extend(order.loads.iter().map(|yards| (rest.len(), *yards)));
        rest.push((minutes.clone(), order.order.value()));
    }
    let minutes = |rest: &[(Quantity, Decimal)]| -> Decimal {
        rest.iter()
            .map(|(minutes, yards)| minutes.value() * yards)
            .sum()
    };
    let (mut waited, mut left) = (0, rest.clone());
    let mut longest = minutes(&rest);
    for (truck, (order, yards)) in (1..).zip(&loads) {
        rest[*order].1 -= yards;
        let all = Decimal::from(truck) * between.value() + minutes(&rest);
        if longest < all && truck < loads.len() {
            (waited, longest, left) = (truck, all, rest.clone());
        }
    }
    let unloaded = left.iter().filter(|(_, yards)| !yards.is_zero());
    let unloaded = unloaded.map(|(minutes, yards)| {
        let yards = Amount::new(*yards, Unit::CubicYard);
        let working = Working::plan("on the trucks from then on", Vec::new(), "");
        of(&Quantity::new("unloaded", yards, working)) * minutes
    });
    let unloaded = unloaded.reduce(|a, b| a + b).unwrap_or_else(|| number(0));
    match waited {
        0 => unloaded,
        waited => number(Decimal::from(waited)) * between + unloaded,
    }
}

/// The temperature that is expected, and how long it takes to set at it: of the mix that sets first.
fn setting(
    pour: usize,
    work: &Work<'_>,
    orders: &[&ConcreteOrder],
    tally: &mut Tally<'_>,
    list: &List<'_>,
) -> (Quantity, Quantity) {
    let policy = list.by.pour_day;
    let at = expected(pour, work, list);
    let factor = Quantity::new(
        "setting at that temperature",
        Amount::new(by_temperature(at.value()), Unit::Plain),
        Working::plan(
            "half for every 20 °F over 70, twice for every 20 below, straight between",
            vec![at.clone()],
            "a rule of thumb, of a trade association (nfba.org, October 2020, as an excerpt)",
        ),
    );
    let mixes = orders
        .iter()
        .filter_map(|order| list.by.rules.mixes.get(&order.mix.value));
    let first = mixes.min_by_key(|mix| mix.setting.value.number());
    let mut term = of(&Quantity::said("setting at 70 °F", &policy.setting)) * &factor;
    if let Some(mix) = first
        && mix.setting.value.number() != Decimal::ONE_HUNDRED
    {
        term = term * &Quantity::said("setting of the mix", &mix.setting);
    }
    let rule = "setting at 70 °F × what temperature and mix make of it";
    (at, tally.by(rule, "setting", Unit::Hour, term))
}

/// In Fahrenheit while it sets: as the takeoff says; else the day of the month it is poured in, as the crew
/// pours by day; else the owner's usual one.
fn expected(pour: usize, work: &Work<'_>, list: &List<'_>) -> Quantity {
    let name = "degrees F expected";
    if let Some(said) = work.takeoff.temperature_of(pour) {
        return Quantity::said(name, said);
    }
    let day = list.by.pours.get(pour);
    let normal = day.and_then(|day| list.by.cure.normals.on(*day));
    normal.map_or_else(
        || Quantity::said(name, &list.by.pour_day.temperature),
        |air| {
            let degrees = Amount::new(Decimal::from(air.value.day), Unit::Plain);
            Quantity::given(name, degrees, air.place)
        },
    )
}

/// Two to the number of twenties below 70, straight between whole ones.
fn by_temperature(degrees: Decimal) -> Decimal {
    let twenties = (Decimal::from(70) - degrees) / Decimal::from(20);
    let (mut whole, mut factor) = (rounding::whole_below(twenties), Decimal::ONE);
    let beyond = twenties - whole;
    while Decimal::ZERO < whole {
        factor *= Decimal::TWO;
        whole -= Decimal::ONE;
    }
    while whole < Decimal::ZERO {
        factor /= Decimal::TWO;
        whole += Decimal::ONE;
    }
    factor * (Decimal::ONE + beyond)
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn setting_halves_for_twenty_degrees_more_and_doubles_for_twenty_less() {
        #[track_caller]
        fn case(degrees: Decimal, factor: Decimal) {
            assert_eq!(by_temperature(degrees), factor, "{degrees}");
        }
        case(dec!(70), dec!(1));
        case(dec!(90), dec!(0.5));
        case(dec!(50), dec!(2));
        case(dec!(60), dec!(1.5));
        case(dec!(80), dec!(0.75));
        case(dec!(30), dec!(4));
        case(dec!(110), dec!(0.25));
    }
}
