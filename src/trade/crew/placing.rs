//! Placing: what this crew takes over the way it has to go, for all orders placed alike and for each of them.
//!
//! The hours are worked out once: trucks stand, and machines are hired, by the same line.

use rust_decimal::Decimal;

use super::step::Step;
use super::{TaskHours, divided, hours};
use crate::input::book::Ways;
use crate::input::job::{Access, Method, Takeoff};
use crate::reading::Place;
use crate::tables::ways::{self, Longer};
use crate::trade::measure::SlabQuantities;
use crate::trade::order::also::left_to_do;
use crate::trade::order::{ConcreteOrder, List, Parts, Section, Shares};
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Name, Quantity, Working};
use crate::values::{Amount, Unit};

/// What of an order is placed by the task: all of it, or what rules of the owner's leave.
struct Piece {
    order: usize,
    much: Quantity,
    /// How many times as long as over the usual way; none where it is the usual one.
    way: Option<Quantity>,
    parts: Parts,
}

impl Piece {
    /// As much over the usual way.
    fn as_usual(&self) -> Term {
        match &self.way {
            Some(way) => of(&self.much) * way,
            None => of(&self.much),
        }
    }
}

/// The tasks that place the orders; each order is told its own hours.
pub(in crate::trade) fn placing(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &mut [ConcreteOrder],
    list: &mut List<'_>,
) -> Vec<TaskHours> {
    let tasks = Method::ALL.into_iter();
    tasks
        .filter_map(|method| placed_by(method, takeoff, slabs, orders, list))
        .collect()
}

fn placed_by(
    method: Method,
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &mut [ConcreteOrder],
    list: &mut List<'_>,
) -> Option<TaskHours> {
    let name = format!("place by {}", method.name());
    // What is mixed beside the slab is placed by the hours of mixing.
    let is_some = |order: &ConcreteOrder| {
        order.by == method && order.bags.is_none() && !order.order.value().is_zero()
    };
    if !orders.iter().any(is_some) {
        return None;
    }
    let rate = list.rate(&name)?;
    let unit = rate.value.per.unit;
    let by_it = orders.iter().enumerate().filter(|(_, one)| is_some(one));
    let pieces = by_it.filter_map(|(i, order)| {
        let (much, parts) = left(&name, order, unit, slabs, list)?;
        let access = takeoff.access_of(order.placement);
        Some(Piece {
            order: i,
            much,
            way: way(access, &list.by.rules.way, order.placement),
            parts,
        })
    });
    let pieces: Vec<Piece> = pieces.collect();
    if pieces.is_empty() {
        return None;
    }
    let rule = match unit {
        Unit::CubicYard => "ordered yards",
        _ => "added up",
    };
    let all = sum(pieces.iter().map(|piece| &piece.much));
    let work = Quantity::by(rule, format!("{name} work"), unit, all);
    let way = together(&pieces, &work, format!("{name} way"));
    let hours = hours(&name, &work, way.as_ref(), &rate, takeoff, list);
    for piece in &pieces {
        let its = if pieces.len() == 1 {
            of(&hours)
        } else {
            let its = of(&hours) * piece.as_usual() / &work;
            match &way {
                Some(way) => its / way,
                None => its,
            }
        };
        let order = &mut orders[piece.order];
        let name = format!("{} placing", order.order.name());
        let rule = "hours of the crew, by what is placed over which way";
        order.placing = Some(Quantity::by(rule, name, Unit::Hour, its));
    }
    let parts = pieces.iter().flat_map(|piece| {
        let way = piece.way.as_ref().map_or(Decimal::ONE, Quantity::value);
        let parts = piece.parts.iter();
        parts.map(move |(section, part)| (*section, part.value() * way))
    });
    Some(TaskHours {
        shares: divided(&hours, parts.collect::<Shares>()),
        name,
        step: Step::Place,
        wait: None,
        work,
        hours,
    })
}

/// What of an order rules of the owner's leave to place, and where.
fn left(
    name: &str,
    order: &ConcreteOrder,
    unit: Unit,
    slabs: &[SlabQuantities],
    list: &List<'_>,
) -> Option<(Quantity, Parts)> {
    let all: Parts = if unit == Unit::SquareFoot {
        let slabs = order
            .shares
            .iter()
            .filter_map(|(section, _)| match section {
                Section::Slab(i) => Some((*section, slabs[*i].area.clone())),
                Section::Removal | Section::Extras | Section::Whole => None,
            });
        slabs.collect()
    } else {
        shared(order, &order.placed, "the order, by net concrete")
    };
    let is_ordered = unit == Unit::CubicYard;
    let values = |parts: &Parts| -> Vec<Decimal> {
        let parts = parts.iter();
        parts.map(|(_, part)| part.value()).collect()
    };
    let before = values(&all);
    let parts = left_to_do(name, all, &list.replaced);
    // What is placed is what is ordered; its parts only say where the hours belong.
    let much = if is_ordered && values(&parts) == before {
        order.placed.clone()
    } else {
        let placed = sum(parts.iter().map(|(_, part)| part));
        let name = format!("{} placed", order.order.name());
        Quantity::by("its part of the work", name, unit, placed)
    };
    (!much.value().is_zero()).then_some((much, parts))
}

/// One way for all pieces: theirs where it is the same, else by how much goes over which.
fn together(pieces: &[Piece], work: &Quantity, name: String) -> Option<Quantity> {
    let value = |piece: &Piece| piece.way.as_ref().map(Quantity::value);
    let first = pieces.first()?;
    if pieces.iter().all(|piece| value(piece) == value(first)) {
        return first.way.clone();
    }
    let all = pieces.iter().map(Piece::as_usual).reduce(|a, b| a + b)?;
    let rule = "the ways of the orders, by how much goes over each";
    Some(Quantity::by(rule, name, Unit::Plain, all / work))
}

/// How many times as long the way makes it; none where it is no longer than usual.
fn way(access: &Access, ways: &Ways, pour: usize) -> Option<Quantity> {
    let distance = access.distance.as_ref()?;
    let method = access.by.value;
    let (longer, place, rule) = match ways.by(method) {
        Some(own) => (
            Longer {
                more: own.value.more,
                each: own.value.each,
                past: own.value.past,
            },
            Some(own.place),
            "once, and so much more for each stretch past the usual way",
        ),
        None => (
            built_in(method),
            None,
            "once, and so much more for each stretch past the usual way; built in: common practice, no source",
        ),
    };
    if distance.value <= longer.past || longer.more.number().is_zero() {
        return None;
    }
    let more = figure("more for each stretch", longer.more.into(), place);
    let each = figure("stretch", longer.each.in_feet(), place);
    let past = figure("usual way", longer.past.in_feet(), place);
    let way = of(&Quantity::feet("distance", distance)) - &past;
    let name = format!("way by {}, pour {}", method.name(), pour + 1);
    let many = number(1) + of(&more) * way / &each;
    Some(Quantity::by(rule, name, Unit::Plain, many))
}

/// A figure of the book, or of our own table.
fn figure(name: impl Into<Name>, amount: Amount, place: Option<Place>) -> Quantity {
    match place {
        Some(place) => Quantity::given(name, amount, place),
        None => Quantity::new(name, amount, Working::plan("built in", Vec::new(), "")),
    }
}

const fn built_in(method: Method) -> Longer {
    match method {
        Method::Chute => ways::CHUTE,
        Method::Wheelbarrow => ways::WHEELBARROW,
        Method::Buggy => ways::BUGGY,
        Method::Pump => ways::PUMP,
    }
}

/// How much of something of an order is for each slab, by its net concrete; the last takes the rest.
pub(super) fn shared(order: &ConcreteOrder, all: &Quantity, rule: &'static str) -> Parts {
    let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
    let mut left = all.value();
    let last = order.shares.len() - 1;
    let shares = order.shares.iter().enumerate();
    shares
        .map(|(i, (section, share))| {
            let part = (all.value() * share).checked_div(net);
            let part = match part.filter(|_| i < last) {
                Some(part) => part,
                None => left,
            };
            left -= part;
            let amount = Amount::new(part, all.amount().unit);
            let working = Working::plan("", Vec::new(), rule);
            let quantity = if last == 0 {
                all.clone()
            } else {
                Quantity::new("ordered", amount, working)
            };
            (*section, quantity)
        })
        .collect()
}
