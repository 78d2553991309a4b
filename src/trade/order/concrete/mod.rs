//! Ready-mix: one order for each mix and color of each pour, its loads, and what the plant charges beside it.

mod allowance;
mod charges;
mod loads;
mod ordering;
mod standing;
mod waits;

use std::sync::Arc;

use rust_decimal::Decimal;

use allowance::allowance;
use charges::fees;
use loads::{comes_alone, loads, short};
pub use ordering::{AS_NEEDED, Ordering, Placing};
pub use standing::BY_CREW;
use standing::{not_standing, standing, unloading};
pub use waits::Held;
use waits::{back, hold_back};

use super::{List, Missing, Section, Shares};
use crate::input::book::Supply;
use crate::input::job::{Method, Slab, Takeoff};
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
use crate::trade::tally::{Listed, Tally};
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// What is ordered of one mix in one color for one pour.
#[derive(Clone, Debug)]
pub struct ConcreteOrder {
    pub placement: usize,
    pub mix: At<String>,
    pub color: Option<At<String>>,
    /// How it is placed.
    pub by: Method,
    pub net: Quantity,
    /// Lost in the line of the pump.
    pub prime: Option<Quantity>,
    /// As it is needed, before it is ordered another way.
    pub needed: Quantity,
    /// What goes into the slabs; the rest is paid for and left over.
    pub placed: Quantity,
    /// What is asked for beyond it, or short of it, where that costs less.
    pub more: Option<Quantity>,
    /// How it is placed otherwise than as it is needed, and why.
    pub otherwise: Option<String>,
    pub order: Quantity,
    /// Whole bags, where it is mixed by hand and no truck comes.
    pub bags: Option<Quantity>,
    /// The most on one truck, where the takeoff says less than a full load.
    pub truck: Option<At<Amount>>,
    /// Yards on each truck, in turn; the last takes the rest.
    pub loads: Vec<Decimal>,
    /// Yards that make trucks short, or the number of short loads where the charge is flat.
    pub short: Quantity,
    /// Hours of the crew that places it, where the book has a rate for it.
    pub placing: Option<Quantity>,
    /// Minutes to unload a yard; none where no truck comes.
    pub unloading: Option<Quantity>,
    /// Minutes past the free ones.
    pub standing: Quantity,
    /// The part that waits for a call.
    pub held: Option<Held>,
    /// Whether that comes on a truck of its own.
    pub has_own_truck: bool,
    /// What comes back and is charged, where the plant charges for it.
    pub back: Option<Quantity>,
    pub shares: Shares,
    /// All of it, as it is shown.
    pub listed: Arc<[Listed]>,
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

/// The yards of an order, before they are on trucks.
struct Yards {
    net: Quantity,
    prime: Option<Quantity>,
    needed: Quantity,
    placed: Quantity,
    more: Option<Quantity>,
    order: Quantity,
    bags: Option<Quantity>,
    shares: Shares,
}

/// Slabs poured together, of one mix in one color.
struct Batch<'a> {
    placement: usize,
    mix: &'a At<String>,
    color: Option<&'a At<String>>,
    members: Vec<usize>,
}

impl Batch<'_> {
    fn name(&self, takeoff: &Takeoff) -> String {
        let ordered = format!("{} order", called(self.mix, self.color));
        if 1 < takeoff.placements.len() {
            format!("{ordered}, pour {}", self.placement + 1)
        } else {
            ordered
        }
    }
}

pub(super) fn orders<T: Default>(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    list: &mut List<'_>,
    place: impl FnOnce(&mut [ConcreteOrder], &mut List<'_>) -> T,
) -> (Vec<ConcreteOrder>, T) {
    let Some(supply) = &list.by.rules.supply else {
        list.missing.push(Missing::Supply);
        return Default::default();
    };
    let supply = &*supply.with_trucks(takeoff.head.truck.as_ref(), None);
    let batches = batches(takeoff);
    let rules = list.by.rules;
    let makes = |batch: &Batch<'_>| rules.mixes.get(&batch.mix.value)?.makes.as_ref();
    // What is mixed by hand comes by no truck, and through no pump.
    let by_truck: Vec<&Batch<'_>> = (batches.iter())
        .filter(|batch| makes(batch).is_none())
        .collect();
    let primed = primed(&by_truck, takeoff, slabs);
    let names: Vec<String> = batches.iter().map(|batch| batch.name(takeoff)).collect();
    let mut tallies: Vec<Tally<'_>> = names
        .iter()
        .map(|name| Tally::of(name, list.sets))
        .collect();
    let mut sized = Vec::new();
    for (batch, tally) in batches.iter().zip(&mut tallies) {
        let prime = primed.contains(&batch.members[0]);
        let prime = prime.then(|| Quantity::said("pump prime", &supply.pump_prime));
        let one = size(batch, prime, takeoff, slabs, supply, tally, list);
        if let Some(mix) = list.by.rules.mixes.get(&batch.mix.value)
            && !one.order.value().is_zero()
        {
            let much = one.bags.as_ref().unwrap_or(&one.order).clone();
            let shares = one.shares.clone();
            list.take(&mix.item, much, Some(batch.placement), shares);
        }
        sized.push(one);
    }
    let held = hold_back(&batches, &sized, takeoff, &tallies);
    let on_trucks = batches.iter().zip(sized).zip(held).zip(&mut tallies);
    let mut orders: Vec<ConcreteOrder> = on_trucks
        .map(|(((batch, one), held), tally)| {
            on_trucks_of(batch, one, held, takeoff, supply, tally, list)
        })
        .collect();
    let placed = place(&mut orders, list);
    for (order, mut tally) in orders.iter_mut().zip(tallies) {
        if order.bags.is_none() {
            order.unloading = unloading(order, &tally, list);
            order.standing = standing(order, supply, &tally);
        }
        tally.show([&order.standing]);
        if let Some(held) = &order.held {
            tally.list([&held.firm, &held.on_call]);
        }
        tally.show(&order.back);
        order.listed = tally.done();
    }
    fees(&orders, takeoff, supply, list);
    (orders, placed)
}

/// In the order of their pours.
fn batches(takeoff: &Takeoff) -> Vec<Batch<'_>> {
    let mut batches: Vec<Batch<'_>> = Vec::new();
    for (i, slab) in takeoff.slabs.iter().enumerate() {
        let color = slab.color.as_ref();
        match batches.iter_mut().find(|batch| {
            batch.placement == slab.placement
                && batch.mix.value == slab.mix.value
                && named(batch.color) == named(color)
        }) {
            Some(batch) => batch.members.push(i),
            None => batches.push(Batch {
                placement: slab.placement,
                mix: &slab.mix,
                color,
                members: vec![i],
            }),
        }
    }
    batches.sort_by_key(|batch| batch.placement);
    batches
}

/// The pump's prime is lost once a pour, and belongs to its largest order: the first slab of each such.
fn primed(batches: &[&Batch<'_>], takeoff: &Takeoff, slabs: &[SlabQuantities]) -> Vec<usize> {
    let yards = |batch: &&&Batch<'_>| {
        let members = batch.members.iter();
        members.map(|&i| slabs[i].concrete.value()).sum::<Decimal>()
    };
    let mut found: Vec<usize> = Vec::new();
    for placement in 0..takeoff.placements.len() {
        if !takeoff.access_of(placement).is_by(Method::Pump) {
            continue;
        }
        let of_pour = batches.iter().filter(|batch| batch.placement == placement);
        found.extend(of_pour.max_by_key(yards).map(|batch| batch.members[0]));
    }
    found
}

/// How many yards are ordered.
fn size(
    batch: &Batch<'_>,
    prime: Option<Quantity>,
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    supply: &Supply,
    tally: &mut Tally<'_>,
    list: &List<'_>,
) -> Yards {
    const BY_TRUCK: &str = "net + the largest of percent, too deep a base, and the least; up to how the plant sells, once";
    const BY_BAG: &str = "net + the larger of percent and too deep a base";
    let members = || batch.members.iter().map(|&i| &slabs[i]);
    let net = Quantity::by(
        match batch.color {
            Some(_) => {
                "slabs of this color added up; another color is another order, with its own loads"
            }
            None => "slabs added up",
        },
        tally.name("net"),
        Unit::CubicYard,
        sum(members().map(|slab| &slab.concrete)),
    );
    let net = tally.sets.settle(net);
    tally.show([&net]);
    let mix = list.by.rules.mixes.get(&batch.mix.value);
    let makes = mix.and_then(|mix| mix.makes.as_ref());
    let (policy, is_bagged) = (list.by.order, makes.is_some());
    let allowance = allowance(&net, batch, takeoff, slabs, policy, is_bagged, tally);
    let rule = if is_bagged { BY_BAG } else { BY_TRUCK };
    let step = Quantity::said("sold in", &supply.sold_in);
    let mut gross = of(&net) + &allowance;
    if let Some(prime) = &prime {
        gross = gross + prime;
    }
    let mut ordered = match makes {
        Some(_) => gross,
        None => gross.up_to(&step),
    };
    let mut poured = None;
    if !is_bagged && ordered.value() < supply.smallest.value.value {
        let rule = "what the slabs take; the plant brings no less than its smallest order";
        let name = tally.name("placed");
        poured = Some(Quantity::by(rule, name, Unit::CubicYard, ordered));
        ordered = of(&Quantity::said("smallest order", &supply.smallest));
    } else {
        tally.show([&allowance]);
    }
    let placing = list.by.ordering.of(tally.part());
    let more = placing.and_then(|placing| placing.beyond(tally));
    let name = match more {
        Some(_) => tally.name("needed"),
        None => tally.part().to_owned(),
    };
    let needed = tally
        .sets
        .settle(Quantity::by(rule, name, Unit::CubicYard, ordered));
    let order = match &more {
        Some(more) => {
            tally.show([&needed, more]);
            let rule = "what is needed, and what more makes it cost less in all";
            let ordered = of(&needed) + more;
            Quantity::by(rule, tally.part().to_owned(), Unit::CubicYard, ordered)
        }
        None => needed.clone(),
    };
    let bags = makes.map(|makes| {
        let makes = Quantity::said("a bag makes", makes);
        let yards = of(&order) * number(27) / &makes;
        let rule = "cu yd × 27 ÷ cu ft of a bag, up to a whole one";
        tally.by(rule, "bags", Unit::Bag, yards.whole())
    });
    // What the owner set is what is placed; so is all of what is less than is needed.
    let is_set = matches!(needed.working(), Working::Set { .. });
    let is_less = order.value() < needed.value();
    let placed = match poured.filter(|_| !is_set) {
        _ if is_less => order.clone(),
        Some(poured) => poured,
        None => needed.clone(),
    };
    Yards {
        net,
        prime,
        needed,
        placed,
        more,
        order,
        bags,
        shares: shares(batch, slabs),
    }
}

/// The same, on its trucks.
fn on_trucks_of(
    batch: &Batch<'_>,
    yards: Yards,
    held: Option<Held>,
    takeoff: &Takeoff,
    supply: &Supply,
    tally: &mut Tally<'_>,
    list: &mut List<'_>,
) -> ConcreteOrder {
    let Yards {
        net,
        prime,
        needed,
        placed,
        more,
        order,
        bags,
        shares,
    } = yards;
    let placing = list.by.ordering.of(tally.part());
    let refilled = placing.and_then(|placing| placing.refilled);
    let supply = &*supply.with_trucks(None, refilled);
    let waits = held.as_ref().map(|held| held.on_call.value());
    let by = takeoff.access_of(batch.placement).by.value;
    let is_bagged = bags.is_some();
    let loads = if is_bagged {
        Vec::new()
    } else {
        loads(order.value(), waits, supply)
    };
    let (short, back) = if is_bagged {
        let none = Quantity::by("no truck comes", tally.name("short"), Unit::Load, number(0));
        (none, None)
    } else {
        let short = short(&order, &loads, supply, tally);
        (short, back(&order, &net, prime.as_ref(), supply, tally))
    };
    tally.show([&order, &short]);
    ConcreteOrder {
        placement: batch.placement,
        mix: batch.mix.clone(),
        color: batch.color.cloned(),
        by,
        has_own_truck: waits.is_some_and(|waits| comes_alone(order.value(), waits, supply)),
        held,
        back,
        net,
        prime,
        needed,
        placed,
        more,
        truck: takeoff.head.truck.clone(),
        otherwise: placing.map(|placing| placing.because.clone()),
        short,
        placing: None, // this and what follows are known when every order is
        unloading: None,
        standing: not_standing(if is_bagged { "no truck comes" } else { "" }, tally),
        loads,
        order,
        bags,
        shares,
        listed: Arc::default(),
    }
}

fn shares(batch: &Batch<'_>, slabs: &[SlabQuantities]) -> Shares {
    let members = batch.members.iter();
    members
        .map(|&i| (Section::Slab(i), slabs[i].concrete.value()))
        .collect()
}
