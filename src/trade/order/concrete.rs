//! Ready-mix: one order for each mix and color of each pour, its loads, and what the plant charges beside it.

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
use crate::input::job::{Method, Slab, Takeoff};
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
use crate::trade::term::{largest, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// What is ordered of one mix in one color for one pour.
#[derive(Clone, Debug)]
pub struct ConcreteOrder {
    pub placement: usize,
    pub mix: At<String>,
    pub color: Option<At<String>>,
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
    /// Whether this slab is poured from it.
    pub fn takes(&self, slab: &Slab) -> bool {
        slab.placement == self.placement
            && slab.mix.value == self.mix.value
            && named(slab.color.as_ref()) == named(self.color.as_ref())
    }

    /// Its mix, and its color where it has one.
    pub fn called(&self) -> String {
        called(&self.mix, self.color.as_ref())
    }

    /// What nothing that is bought leads to.
    pub(super) fn roots(&self) -> Vec<Quantity> {
        let waits = self.on_call.iter();
        waits
            .flat_map(|call| [call.waits.clone(), call.firm.clone()])
            .collect()
    }
}

fn called(mix: &At<String>, color: Option<&At<String>>) -> String {
    match named(color) {
        Some(color) => format!("{} {color}", mix.value),
        None => mix.value.clone(),
    }
}

fn named(color: Option<&At<String>>) -> Option<&str> {
    color.map(|color| color.value.as_str())
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
        match groups.iter_mut().find(|(placement, mix, members)| {
            let color = takeoff.slabs[members[0]].color.as_ref();
            *placement == slab.placement
                && mix.value == slab.mix.value
                && named(color) == named(slab.color.as_ref())
        }) {
            Some((.., members)) => members.push(i),
            None => groups.push((slab.placement, slab.mix.clone(), vec![i])),
        }
    }
    groups.sort_by_key(|(placement, ..)| *placement);
    let primed = primed(&groups, takeoff, slabs);
    let several = 1 < takeoff.placements.len();
    let mut orders = Vec::new();
    for (placement, mix, members) in groups {
        let color = takeoff.slabs[members[0]].color.clone();
        let ordered = format!("{} order", called(&mix, color.as_ref()));
        let name = if several {
            format!("{ordered}, pour {}", placement + 1)
        } else {
            ordered
        };
        let prime = primed.contains(&members[0]);
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

/// The pump's prime is lost once a pour, and belongs to its largest order: the first slab of each such.
fn primed(
    groups: &[(usize, At<String>, Vec<usize>)],
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
) -> Vec<usize> {
    let yards = |members: &[usize]| {
        members
            .iter()
            .map(|&i| slabs[i].concrete.value())
            .sum::<Decimal>()
    };
    let mut found: Vec<usize> = Vec::new();
    for placement in 0..takeoff.placements.len() {
        if !takeoff.access_of(placement).is_by(Method::Pump) {
            continue;
        }
        let of_pour = groups.iter().filter(|(p, ..)| *p == placement);
        if let Some((.., members)) = of_pour.max_by_key(|(.., members)| yards(members)) {
            found.push(members[0]);
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
    let color = takeoff.slabs[members[0]].color.clone();
    let net = list.sets.settle(Quantity::by(
        match color {
            Some(_) => {
                "slabs of this color added up; another color is another order, with its own loads"
            }
            None => "slabs added up",
        },
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
        color,
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
