//! Ready-mix: one order for each mix of each pour, its loads, and what the plant charges beside it.

mod charges;
mod fees;
mod loads;
mod standing;
mod waits;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use fees::fees;
use loads::{loads, short};
use standing::standing;
pub use waits::OnCall;

use super::{List, Missing, Section};
use crate::input::book::Supply;
use crate::input::job::{Method, Takeoff};
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
use crate::trade::term::{largest, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// What is ordered of one mix for one pour.
#[derive(Clone, Debug)]
pub struct ConcreteOrder {
    pub placement: usize,
    pub mix: At<String>,
    /// How it is placed.
    pub by: Method,
    pub net: Quantity,
    pub order: Quantity,
    /// Yards on each truck, in turn; the last takes the rest.
    pub loads: Vec<Decimal>,
    /// Yards that make trucks short, or the number of short loads where the charge is flat.
    pub short: Quantity,
    /// Minutes past the free ones.
    pub standing: Quantity,
    /// Where a part of the last load waits for a call.
    pub on_call: Option<OnCall>,
    /// What comes back and is charged, where the plant charges for it.
    pub back: Option<Quantity>,
    pub shares: Vec<(Section, Decimal)>,
}

impl ConcreteOrder {
    /// What nothing that is bought leads to.
    pub(super) fn roots(&self) -> Vec<Quantity> {
        let waits = self.on_call.iter();
        waits
            .flat_map(|call| [call.waits.clone(), call.firm.clone()])
            .collect()
    }
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
    waits::hold_back(&mut orders, takeoff, supply, list);
    fees(&orders, takeoff, supply, list);
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
    let yards = |members: &[usize]| {
        members
            .iter()
            .map(|&i| slabs[i].concrete.value())
            .sum::<Decimal>()
    };
    let mut found: Vec<(usize, String)> = Vec::new();
    for placement in 0..takeoff.placements.len() {
        if !takeoff.access_of(placement).is_by(Method::Pump) {
            continue;
        }
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
    let prime = prime.then(|| {
        let prime = &supply.pump_prime;
        Quantity::given("pump prime", prime.value, prime.place)
    });
    if let Some(prime) = &prime {
        gross = gross + prime;
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
    let loads = loads(order.value(), supply);
    let by = takeoff.access_of(placement).by.value;
    let standing = standing(name, &order, &loads, by, supply, list);
    ConcreteOrder {
        placement,
        mix,
        by,
        on_call: None,
        back: waits::back(name, &order, &net, prime.as_ref(), supply, list),
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
