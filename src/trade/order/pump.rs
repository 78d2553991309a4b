//! A pump: its hours, and what is charged beside them once a pour.

use rust_decimal::Decimal;

use super::{ConcreteOrder, List, Section};
use crate::input::book::{PumpHire, Role};
use crate::input::job::{Method, Takeoff};
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// A pump for every pour that is placed by one.
pub(super) fn list(takeoff: &Takeoff, orders: &[ConcreteOrder], list: &mut List<'_>) {
    for (placement, _) in takeoff.pours() {
        if !takeoff.access_of(placement).is_by(Method::Pump) {
            continue;
        }
        match list.ways.rules.pump.clone() {
            Some(hire) => hired(&hire, placement, takeoff, orders, list),
            None => by_the_trip(placement, list),
        }
    }
}

/// A book that does not say how its pump is hired pays it once a pour.
fn by_the_trip(placement: usize, list: &mut List<'_>) {
    let name = format!("pump, pour {}", placement + 1);
    let once = Quantity::by("once a pour", &name, Unit::Trip, number(1));
    list.buy_role(
        Role::Pump,
        &name,
        "once a pour",
        &[(Section::Whole, once)],
        Some(placement),
    );
}

fn hired(
    hire: &PumpHire,
    placement: usize,
    takeoff: &Takeoff,
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    let pour = placement + 1;
    let of_pour: Vec<&ConcreteOrder> = orders
        .iter()
        .filter(|order| order.placement == placement)
        .collect();
    let shares: Vec<(Section, Decimal)> = of_pour
        .iter()
        .flat_map(|order| order.shares.clone())
        .collect();
    let yards = Quantity::by(
        "orders of the pour added up",
        format!("pumped, pour {pour}"),
        Unit::CubicYard,
        sum(of_pour.iter().map(|order| &order.order)),
    );
    let rate = Quantity::given(
        "pumped in an hour",
        Amount::new(
            hire.rate.value.much.value / hire.rate.value.per.value,
            Unit::CubicYard,
        ),
        hire.rate.place,
    );
    let mut hours = of(&yards) / &rate;
    for (name, time) in [("set up", &hire.set_up), ("travel time", &hire.travel_time)] {
        if !time.value.value.is_zero() {
            hours = hours + &Quantity::given(name, time.value, time.place);
        }
    }
    let time = Quantity::by(
        "yards ÷ rate, set up and travel",
        format!("pump time, pour {pour}"),
        Unit::Hour,
        hours,
    );
    let time = list.sets.settle(time);
    list.buy_for(
        &hire.item,
        &format!("pump hours, pour {pour}"),
        "the time on the job, as the pump is hired, and no less than its least",
        time,
        Some(placement),
        shares.clone(),
    );
    for (purpose, item) in hire.once() {
        let unit = list.ways.rules.selling.get(&item.value).map(|one| one.unit);
        let name = format!("pump {purpose}, pour {pour}");
        let once = Quantity::by("once a pour", &name, unit.unwrap_or(Unit::Trip), number(1));
        list.buy_for(
            item,
            &name,
            "once a pour",
            once,
            Some(placement),
            shares.clone(),
        );
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
        list.buy_for(
            &hose.item,
            &format!("pump hose, pour {pour}"),
            "each foot beyond what comes with the pump",
            more,
            Some(placement),
            shares,
        );
    }
}
