//! Ready-mix: one order for each mix of each pour, its loads, and what the plant charges beside it.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{List, Missing, Section};
use crate::input::book::{Role, ShortCount, Supply};
use crate::input::job::{Method, Takeoff};
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
use crate::trade::term::{Term, largest, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// What is ordered of one mix for one pour.
#[derive(Clone, Debug)]
pub struct ConcreteOrder {
    pub placement: usize,
    pub mix: At<String>,
    pub net: Quantity,
    pub order: Quantity,
    /// Yards on each truck, in turn; the last takes the rest.
    pub loads: Vec<Decimal>,
    /// Yards that make trucks short, or the number of short loads where the charge is flat.
    pub short: Quantity,
    /// Minutes past the free ones.
    pub standing: Quantity,
    pub shares: Vec<(Section, Decimal)>,
}

pub(super) fn orders(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    list: &mut List<'_>,
) -> Vec<ConcreteOrder> {
    let Some(supply) = &list.ways.rules.supply else {
        list.missing.push(Missing::Supply);
        return Vec::new();
    };
    let mut groups: Vec<(usize, At<String>, Vec<usize>)> = Vec::new();
    for (i, slab) in takeoff.slabs.iter().enumerate() {
        match groups
            .iter_mut()
            .find(|(placement, mix, _)| *placement == slab.placement && mix.value == slab.mix.value)
        {
            Some((.., members)) => members.push(i),
            None => groups.push((slab.placement, slab.mix.clone(), vec![i])),
        }
    }
    groups.sort_by_key(|(placement, ..)| *placement);
    let primed = primed(&groups, takeoff, slabs);
    let several = 1 < takeoff.placements.len();
    let mut orders = Vec::new();
    for (placement, mix, members) in groups {
        let name = if several {
            format!("{} order, pour {}", mix.value, placement + 1)
        } else {
            format!("{} order", mix.value)
        };
        let prime = primed.contains(&(placement, mix.value.clone()));
        let order = order(
            &name, placement, mix, &members, prime, takeoff, slabs, supply, list,
        );
        if let Some(mix) = list.ways.rules.mixes.get(&order.mix.value) {
            let parts = vec![(Section::Whole, order.order.clone())];
            list.buy(
                &mix.item,
                &name_of_need(&order),
                "ordered",
                &parts,
                Some(placement),
            );
            if let Some(need) = list.needs.last_mut() {
                need.shares.clone_from(&order.shares);
                // The order is already a quantity of its own; the need is that same quantity.
                need.quantity = order.order.clone();
            }
        }
        orders.push(order);
    }
    fees(&orders, supply, list);
    orders
}

fn name_of_need(order: &ConcreteOrder) -> String {
    order.order.name().to_owned()
}

/// The pump's prime is lost once a pour, and belongs to its largest order.
fn primed(
    groups: &[(usize, At<String>, Vec<usize>)],
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
) -> Vec<(usize, String)> {
    if takeoff.access.by.value != Method::Pump {
        return Vec::new();
    }
    let yards = |members: &[usize]| {
        members
            .iter()
            .map(|&i| slabs[i].concrete.value())
            .sum::<Decimal>()
    };
    let mut found: Vec<(usize, String)> = Vec::new();
    for placement in 0..takeoff.placements.len() {
        let of_pour = groups.iter().filter(|(p, ..)| *p == placement);
        if let Some((_, mix, _)) = of_pour.max_by_key(|(.., members)| yards(members)) {
            found.push((placement, mix.value.clone()));
        }
    }
    found
}

#[expect(
    clippy::too_many_arguments,
    reason = "one order is made of exactly these"
)]
fn order(
    name: &str,
    placement: usize,
    mix: At<String>,
    members: &[usize],
    prime: bool,
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    supply: &Supply,
    list: &mut List<'_>,
) -> ConcreteOrder {
    const RULE: &str = "net + the largest of percent, too deep a base, and the least; up to how the plant sells, once";
    let policy = list.ways.order;
    let net = list.sets.settle(Quantity::by(
        "slabs added up",
        format!("{name} net"),
        Unit::CubicYard,
        sum(members.iter().map(|&i| &slabs[i].concrete)),
    ));
    let area = Quantity::by(
        "slabs added up",
        "poured area",
        Unit::SquareFoot,
        sum(members.iter().map(|&i| &slabs[i].area)),
    );
    let percent = Quantity::percent("allowance", &policy.allowance);
    let deep = Quantity::inches("thickness allowance", &policy.thickness_allowance);
    let least = Quantity::given(
        "smallest allowance",
        policy.smallest_allowance.value,
        policy.smallest_allowance.place,
    );
    let extra = largest(vec![
        of(&net) * &percent,
        of(&area) * &deep / number(dec!(324)),
        of(&least),
    ]);
    let allowance = list.sets.settle(Quantity::by(
        "the largest of percent, thickness allowance × area ÷ 324, and the least",
        format!("{name} allowance"),
        Unit::CubicYard,
        extra,
    ));
    let step = Quantity::given("sold in", supply.sold_in.value, supply.sold_in.place);
    let mut gross = of(&net) + &allowance;
    if prime {
        gross = gross
            + &Quantity::given(
                "pump prime",
                supply.pump_prime.value,
                supply.pump_prime.place,
            );
    }
    let mut ordered = gross.up_to(&step);
    if ordered.value() < supply.smallest.value.value {
        ordered = of(&Quantity::given(
            "smallest order",
            supply.smallest.value,
            supply.smallest.place,
        ));
    }
    let order = list
        .sets
        .settle(Quantity::by(RULE, name, Unit::CubicYard, ordered));
    let loads = loads(order.value(), supply.truck.value.value);
    let standing = standing(name, &order, &loads, takeoff, supply, list);
    ConcreteOrder {
        placement,
        mix,
        net,
        short: short(name, &order, &loads, supply),
        standing,
        loads,
        order,
        shares: members
            .iter()
            .map(|&i| (Section::Slab(i), slabs[i].concrete.value()))
            .collect(),
    }
}

/// Full trucks in turn, and the rest on the last.
pub(super) fn loads(order: Decimal, truck: Decimal) -> Vec<Decimal> {
    let mut rest = order;
    let mut loads = Vec::new();
    while Decimal::ZERO < rest {
        let load = rest.min(truck);
        loads.push(load);
        rest -= load;
    }
    loads
}

/// What makes loads short, by the supplier's way of counting.
fn short(name: &str, order: &Quantity, loads: &[Decimal], supply: &Supply) -> Quantity {
    let name = format!("{name} short");
    let Some(rule) = &supply.short_load else {
        return Quantity::by("", name, Unit::CubicYard, number(0));
    };
    let under = Quantity::given("short under", rule.under.value, rule.under.place);
    let looked_at: Vec<Decimal> = match rule.counted {
        ShortCount::ByTruck => loads.to_vec(),
        ShortCount::ByOrder => vec![order.value()],
        ShortCount::LastTruck => loads.last().copied().into_iter().collect(),
    };
    let short: Vec<Decimal> = looked_at
        .into_iter()
        .filter(|load| *load < under.value() && !load.is_zero())
        .collect();
    if rule.flat {
        return Quantity::by(
            "one charge for each load below the limit",
            name,
            Unit::Load,
            number(Decimal::from(short.len())),
        );
    }
    let load = |yards: Decimal| {
        of(&Quantity::new(
            "load",
            Amount::new(yards, Unit::CubicYard),
            Working::Plan {
                how: "trucks filled in turn".to_owned(),
                of: vec![order.clone()],
                rule: "",
            },
        ))
    };
    let missing = short
        .into_iter()
        .map(|yards| of(&under) - load(yards))
        .reduce(|a, b| a + b);
    Quantity::by(
        "yards missing on each load below the limit",
        name,
        Unit::CubicYard,
        missing.unwrap_or_else(|| number(0)),
    )
}

/// Minutes each truck stands past its free ones, whole minutes a truck.
fn standing(
    name: &str,
    order: &Quantity,
    loads: &[Decimal],
    takeoff: &Takeoff,
    supply: &Supply,
    list: &mut List<'_>,
) -> Quantity {
    let method = takeoff.access.by.value.name();
    let name = format!("{name} standing");
    let Some(rate) = list.rate(&format!("unload by {method}")) else {
        return Quantity::by("", name, Unit::Minute, number(0));
    };
    let per_yard = Quantity::given(
        format!("unload by {method}"),
        Amount::new(rate.value.much.value / rate.value.per.value, Unit::Minute),
        rate.place,
    );
    let free = Quantity::given(
        "free time",
        Amount::new(
            supply.free_time.value.much.value / supply.free_time.value.per.value,
            Unit::Minute,
        ),
        supply.free_time.place,
    );
    if per_yard.value() <= free.value() {
        return Quantity::by(
            "unloading stays within the free minutes",
            name,
            Unit::Minute,
            number(0),
        );
    }
    let truck = |yards: &Decimal| {
        let load = Quantity::new(
            "load",
            Amount::new(*yards, Unit::CubicYard),
            Working::Plan {
                how: "trucks filled in turn".to_owned(),
                of: vec![order.clone()],
                rule: "",
            },
        );
        (of(&load) * (of(&per_yard) - &free)).whole()
    };
    let minutes: Term = loads
        .iter()
        .map(truck)
        .reduce(|a, b| a + b)
        .unwrap_or_else(|| number(0));
    list.sets.settle(Quantity::by(
        "each truck: yards × (minutes to unload − free minutes), up to a whole minute",
        name,
        Unit::Minute,
        minutes,
    ))
}

/// What the plant charges beside the concrete.
fn fees(orders: &[ConcreteOrder], supply: &Supply, list: &mut List<'_>) {
    for order in orders {
        let truck = Quantity::given("truck", supply.truck.value, supply.truck.place);
        let loads = list.sets.settle(Quantity::by(
            "ordered yards ÷ a truckful, up to a whole one",
            format!("{} loads", order.order.name()),
            Unit::Load,
            (of(&order.order) / &truck).whole(),
        ));
        let spread = |quantity: &Quantity| vec![(Section::Whole, quantity.clone())];
        for (role, quantity) in [
            (Role::Delivery, &loads),
            (Role::ShortLoad, &order.short),
            (Role::Standing, &order.standing),
        ] {
            let before = list.needs.len();
            list.buy_role(
                role,
                quantity.name(),
                "as figured",
                &spread(quantity),
                Some(order.placement),
            );
            if let Some(need) = list.needs.get_mut(before) {
                need.quantity = quantity.clone();
                need.shares.clone_from(&order.shares);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trucks_are_filled_in_turn() {
        assert_eq!(loads(dec!(7.5), dec!(4)), [dec!(4), dec!(3.5)]);
        assert_eq!(loads(dec!(18), dec!(9)), [dec!(9), dec!(9)]);
        assert_eq!(loads(dec!(0), dec!(9)), Vec::<Decimal>::new());
    }
}
