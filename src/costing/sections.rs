//! The price before tax, split over the parts of the job; the parts always add up to it.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::bought::Priced;
use super::lines::{LineItem, Tier};
use super::totals::Totals;
use crate::trade::Quantity;
use crate::trade::measure::SlabQuantities;
use crate::trade::order::Section;
use crate::values::{Amount, Money, rounding};

/// A part of the job and its part of cost and price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SectionPrice {
    pub section: Section,
    pub cost: Money,
    pub price: Money,
}

/// Splits cost and price before tax by direct cost; what serves the whole job is spread over its parts.
pub fn sections(lines: &[LineItem]) -> Vec<SectionPrice> {
    let mut weights: BTreeMap<Section, Decimal> = BTreeMap::new();
    for line in lines.iter().filter(|line| line.side == Tier::Direct) {
        let shares: Vec<&(Section, Decimal)> = line
            .shares
            .iter()
            .filter(|(section, _)| *section != Section::Whole)
            .collect();
        let whole: Decimal = shares.iter().map(|(_, share)| share).sum();
        for (section, share) in shares {
            if !whole.is_zero() {
                *weights.entry(*section).or_default() += line.amount.value() * share / whole;
            }
        }
    }
    if weights.is_empty() {
        weights.insert(Section::Whole, Decimal::ONE);
    }
    let totals = Totals::of(lines);
    let parts: Vec<Decimal> = weights.values().copied().collect();
    let [costs, prices] = [totals.cost, totals.price].map(|all| rounding::split(all, &parts));
    let parts = weights.into_keys().zip(costs.into_iter().zip(prices));
    parts
        .map(|(section, (cost, price))| SectionPrice {
            section,
            cost,
            price,
        })
        .collect()
}

/// What a part of the job has of one unit, and what one of it costs and is sold for, to the cent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OfOne {
    /// None for the whole job.
    pub section: Option<Section>,
    pub much: Amount,
    pub cost: Money,
    pub price: Money,
}

/// By the square foot, by the foot of what is long, by the yard of concrete as drawn: each slab, then the job.
pub fn of_one(priced: &Priced) -> Vec<OfOne> {
    let slabs = &priced.needs.slabs;
    let parts = sections(&priced.lines);
    let mut found = Vec::new();
    for part in &parts {
        if let Section::Slab(i) = part.section {
            let slab = &slabs[i];
            let has = [Some(&slab.area), slab.length.as_ref(), Some(&slab.concrete)];
            let has = has.into_iter().flatten().map(Quantity::amount);
            found.extend(
                has.filter_map(|much| one(Some(part.section), much, part.cost, part.price)),
            );
        }
    }
    if parts.len() != 1 {
        let totals = priced.totals();
        let all = |of: &dyn Fn(&SlabQuantities) -> Option<Amount>| {
            let each: Option<Vec<Amount>> = slabs.iter().map(of).collect();
            let unit = each.as_ref()?.first()?.unit;
            let sum = each?.iter().map(|much| much.value).sum();
            one(None, Amount::new(sum, unit), totals.cost, totals.price)
        };
        found.extend(all(&|slab| Some(slab.area.amount())));
        found.extend(all(&|slab| slab.length.as_ref().map(Quantity::amount)));
        found.extend(all(&|slab| Some(slab.concrete.amount())));
    }
    found
}

/// None where there is nothing of it.
fn one(section: Option<Section>, much: Amount, cost: Money, price: Money) -> Option<OfOne> {
    // The far digits of an area must not decide on half a cent.
    let each =
        |money: Money| rounding::to_cents(money.dollars() / rounding::to_nine_places(much.value));
    (!rounding::to_nine_places(much.value).is_zero()).then(|| OfOne {
        section,
        much,
        cost: each(cost),
        price: each(price),
    })
}
