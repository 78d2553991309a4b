//! Other ways to buy the same concrete, each priced in full: the whole job laid out once more.
//!
//! They are held against each other by direct cost, which is what is paid to others. Overhead and
//! contingency are percents of it: nobody is paid less of them for a load that is not short.

use std::sync::Arc;

use super::bought::{Priced, policies};
use super::estimate::{PriceSaid, estimate};
use super::lines::{missing, priced};
use super::pricing::Pricing;
use crate::input::business::Buying;
use crate::input::job::{Slab, Takeoff};
use crate::reading::{At, Problems};
use crate::trade::needs::{Memo, needs};
use crate::trade::order::{AS_NEEDED, ConcreteOrder, Ordering, Placing};
use crate::values::{Day, Money};

/// One order placed another way, and the whole job as it is then.
#[derive(Clone, Debug)]
pub struct OtherWay {
    /// Number of the order in `JobNeeds::orders`.
    pub order: usize,
    pub placing: Placing,
    /// Of the direct cost of the job.
    pub saves: Money,
    pub priced: Priced,
}

/// The job with its orders as the owner's business places them.
pub(super) fn ordered(
    taken: &Takeoff,
    at: Pricing<'_>,
    memo: &mut Memo,
    problems: &mut Problems,
) -> Priced {
    let before = problems.len();
    let plain = by_ordering(taken, &AS_NEEDED, at, memo, problems);
    if at.business.order.buy == Buying::AsNeeded || problems.none_since(before).is_err() {
        return plain;
    }
    let ways = cheapest(taken, &plain, at, memo);
    ways.into_iter().last().map_or(plain, |way| way.priced)
}

/// The cheapest way found for each order in turn, of those that save; each stands beside those before it.
fn cheapest(taken: &Takeoff, plain: &Priced, at: Pricing<'_>, memo: &mut Memo) -> Vec<OtherWay> {
    let Some(supply) = &at.book.rules.supply else {
        return Vec::new();
    };
    let mut found: Vec<OtherWay> = Vec::new();
    let mut ordering = AS_NEEDED.clone();
    for (i, order) in plain.needs.orders.iter().enumerate() {
        let before = found.last().map_or(plain, |way| &way.priced);
        let direct = before.totals().direct;
        let mut best: Option<(Placing, Money)> = None;
        for placing in order.other_ways(supply) {
            let with = ordering.with(order.order.name(), placing.clone());
            let saves = saved(taken, &with, direct, at, memo);
            let least = best.as_ref().map_or(Money::ZERO, |(_, saves)| *saves);
            if let Some(saves) = saves.filter(|saves| least < *saves) {
                best = Some((placing, saves));
            }
        }
        let Some((mut placing, saves)) = best else {
            continue;
        };
        placing.because = format!("{}: saves {saves}", placing.in_words());
        ordering = ordering.with(order.order.name(), placing.clone());
        let priced = by_ordering(taken, &ordering, at, memo, &mut Problems::default());
        found.push(OtherWay {
            order: i,
            placing,
            saves,
            priced,
        });
    }
    found
}

/// What this ordering saves of `direct`; none where it could not be priced.
fn saved(
    taken: &Takeoff,
    ordering: &Ordering,
    direct: Money,
    at: Pricing<'_>,
    memo: &mut Memo,
) -> Option<Money> {
    let mut problems = Problems::default();
    let priced = by_ordering(taken, ordering, at, memo, &mut problems);
    (problems.is_empty()).then(|| direct - priced.totals().direct)
}

/// The job by its own ordering, priced.
fn by_ordering(
    taken: &Takeoff,
    ordering: &Ordering,
    at: Pricing<'_>,
    memo: &mut Memo,
    problems: &mut Problems,
) -> Priced {
    let pours: Vec<Day> = at.days.iter().map(|prices| prices.day).collect();
    let needs = needs(
        taken,
        policies(at.book, at.business, &pours, ordering),
        memo,
    );
    missing(&needs, at.book, problems);
    let lines = priced(&needs.needs, needs.first_pour, at, problems);
    Priced {
        lines: estimate(lines, &at.business.price, PriceSaid::of(taken)),
        needs,
    }
}

/// Every order that would cost less if it were placed another way, in the cheapest way found.
pub fn cheaper(taken: &Takeoff, plain: &Priced, at: Pricing<'_>) -> Vec<OtherWay> {
    cheapest(taken, plain, at, &mut Memo::default())
}

/// What this order would save with one truck less, which carries less than is asked for but all of the drawing.
pub fn truck_less(
    taken: &Takeoff,
    plain: &Priced,
    order: &ConcreteOrder,
    at: Pricing<'_>,
) -> Option<Money> {
    let placing = order.one_truck_less(at.book.rules.supply.as_ref()?)?;
    let with = AS_NEEDED.with(order.order.name(), placing);
    let direct = plain.totals().direct;
    let saves = saved(taken, &with, direct, at, &mut Memo::default())?;
    (Money::ZERO < saves).then_some(saves)
}

/// The takeoff with some of its slabs of another mix, or of another pour.
fn changed(
    taken: &Takeoff,
    is_meant: impl Fn(&Slab) -> bool,
    change: impl Fn(&mut Slab),
) -> Takeoff {
    let mut other = taken.clone();
    for slab in &mut other.slabs {
        if is_meant(slab) {
            let mut own = Slab::clone(slab);
            change(&mut own);
            *slab = Arc::new(own);
        }
    }
    other
}

/// The job with all of this order of another mix.
pub fn in_mix(taken: &Takeoff, order: &ConcreteOrder, mix: &At<String>) -> Takeoff {
    let to_it = |slab: &mut Slab| slab.mix = mix.clone();
    changed(taken, |slab| order.takes(slab), to_it)
}

/// The job with all slabs of one pour in another.
pub fn in_pour(taken: &Takeoff, from: usize, to: usize) -> Takeoff {
    let to_it = |slab: &mut Slab| slab.placement = to;
    changed(taken, |slab| slab.placement == from, to_it)
}

/// The job another way, by its own orders; none where it cannot be had or has no price.
pub fn otherwise(other: &Takeoff, at: Pricing<'_>) -> Option<Priced> {
    let mut problems = Problems::default();
    let priced = ordered(other, at, &mut Memo::default(), &mut problems);
    problems.is_empty().then_some(priced)
}

/// The job another way, and what that saves of direct cost, where it does.
pub fn saving(other: &Takeoff, plain: &Priced, at: Pricing<'_>) -> Option<(Priced, Money)> {
    let priced = otherwise(other, at)?;
    let saves = plain.totals().direct - priced.totals().direct;
    (Money::ZERO < saves).then_some((priced, saves))
}
