//! The price before tax, split over the parts of the job; the parts always add up to it.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::lines::{LineItem, Tier};
use super::totals::Totals;
use crate::trade::order::Section;
use crate::values::{Money, rounding};

/// A part of the job and its part of the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SectionPrice {
    pub section: Section,
    pub price: Money,
}

/// Splits the price before tax by direct cost; what serves the whole job is spread over its parts.
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
    let parts = rounding::split(
        Totals::of(lines).price,
        &weights.values().copied().collect::<Vec<_>>(),
    );
    weights
        .into_keys()
        .zip(parts)
        .map(|(section, price)| SectionPrice { section, price })
        .collect()
}
