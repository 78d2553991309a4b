//! A pump: its hours, and what is charged beside them once a pour.

use super::{ConcreteOrder, List, Shares, whole};
use crate::input::book::{PumpHire, Role};
use crate::input::job::{Method, Takeoff};
use crate::trade::term::{largest, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Numbers of the pours that are placed by a pump.
fn pumped(takeoff: &Takeoff) -> impl Iterator<Item = usize> + '_ {
    let pours = takeoff.pours().map(|(placement, _)| placement);
    pours.filter(|placement| takeoff.access_of(*placement).is_by(Method::Pump))
}

/// A pump for every pour that is placed by one, where the book does not say how it is hired.
pub(super) fn list(takeoff: &Takeoff, list: &mut List<'_>) {
    if list.by.rules.pump.is_none() {
        pumped(takeoff).for_each(|placement| by_the_trip(placement, list));
    }
}

/// A pump for every pour that is placed by one, as the book says it is hired. `placing` says how long a
/// pour takes from the first truck to the end of the last: the pump is there no shorter, whatever it could pump.
pub(in crate::trade) fn hire<'q>(
    takeoff: &Takeoff,
    orders: &[ConcreteOrder],
    placing: impl Fn(usize) -> Option<&'q Quantity>,
    list: &mut List<'_>,
) {
    let Some(hire) = &list.by.rules.pump else {
        return;
    };
    for placement in pumped(takeoff) {
        hired(hire, (placement, placing(placement)), takeoff, orders, list);
    }
}

/// A book that does not say how its pump is hired pays it once a pour.
fn by_the_trip(placement: usize, list: &mut List<'_>) {
    let name = format!("pump, pour {}", placement + 1);
    let once = Quantity::by("once a pour", name.clone(), Unit::Trip, number(1));
    if let Some(need) = list.buy_for_purpose(Role::Pump, name, "once a pour", whole(once)) {
        need.placement = Some(placement);
    }
}

fn hired(
    hire: &PumpHire,
    (placement, placing): (usize, Option<&Quantity>),
    takeoff: &Takeoff,
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    let pour = placement + 1;
    let of_pour = || orders.iter().filter(|order| order.placement == placement);
    let shares: Shares = of_pour().flat_map(|order| order.shares.clone()).collect();
    let yards = Quantity::by(
        "orders of the pour added up",
        format!("pumped, pour {pour}"),
        Unit::CubicYard,
        sum(of_pour().map(|order| &order.placed)),
    );
    let rate = Quantity::each("pumped in an hour", Unit::CubicYard, &hire.rate);
    let pumping = Quantity::by(
        "yards ÷ rate",
        format!("pumping, pour {pour}"),
        Unit::Hour,
        of(&yards) / &rate,
    );
    let slower = placing.filter(|placing| pumping.value() < placing.value());
    let (rule, mut hours) = match slower {
        Some(placing) => (
            "placing, which takes longer than pumping, set up and travel",
            largest(vec![of(&pumping), of(placing)]),
        ),
        None => ("yards ÷ rate, set up and travel", of(&pumping)),
    };
    for (name, time) in [("set up", &hire.set_up), ("travel time", &hire.travel_time)] {
        if !time.value.value.is_zero() {
            hours = hours + &Quantity::said(name, time);
        }
    }
    let time = Quantity::by(rule, format!("pump time, pour {pour}"), Unit::Hour, hours);
    let time = list.sets.settle(time);
    let selling = &list.by.rules.selling;
    let mut hire_for = |item, what: &str, rule, much| {
        let (name, shares) = (format!("pump {what}, pour {pour}"), shares.clone());
        list.buy_for(item, name, rule, much, Some(placement), shares);
    };
    let rule = "the time on the job, as the pump is hired, and no less than its least";
    hire_for(&hire.item, "hours", rule, time);
    for (purpose, item) in hire.once() {
        let unit = selling.get(&item.value).map_or(Unit::Trip, |one| one.unit);
        let name = format!("pump {purpose}, pour {pour}");
        let once = Quantity::by("once a pour", name, unit, number(1));
        hire_for(item, purpose, "once a pour", once);
    }
    let way = takeoff.access_of(placement).distance.as_ref();
    if let (Some(hose), Some(distance)) = (&hire.hose, way)
        && hose.included.value < distance.value
    {
        let more = Quantity::by(
            "distance − what comes with the pump",
            format!("more hose, pour {pour}"),
            Unit::Foot,
            of(&Quantity::feet("distance", distance))
                - &Quantity::feet("hose included", &hose.included),
        );
        let rule = "each foot beyond what comes with the pump";
        hire_for(&hose.item, "hose", rule, more);
    }
}
