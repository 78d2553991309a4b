//! One combination as it is bought: what it needs, and every line of its price.

use super::lines::LineItem;
use super::totals::Totals;
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::trade::needs::JobNeeds;
use crate::trade::order::{Need, Ordering, Policies};
use crate::values::Day;

/// One combination: what it needs, and every line of its price.
#[derive(Clone, Debug)]
pub struct Priced {
    pub needs: JobNeeds,
    pub lines: Vec<LineItem>,
}

/// What an estimate buys, and its lines: those of the needs come first, in their order.
#[derive(Clone, Copy, Debug)]
pub struct Bought<'a> {
    pub needs: &'a [Need],
    /// The pour for whose day it is bought what serves the whole job.
    pub first_pour: usize,
    pub lines: &'a [LineItem],
}

impl Priced {
    pub fn totals(&self) -> Totals {
        Totals::of(&self.lines)
    }

    pub fn bought(&self) -> Bought<'_> {
        Bought {
            needs: &self.needs.needs,
            first_pour: self.needs.first_pour,
            lines: &self.lines,
        }
    }
}

pub(super) fn policies<'a>(
    book: &'a PriceBook,
    business: &'a Business,
    pours: &'a [Day],
    ordering: &'a Ordering,
) -> Policies<'a> {
    Policies {
        ordering,
        rules: &book.rules,
        order: &business.order,
        crew: &business.crew,
        cure: &business.cure,
        pour_day: &business.pour_day,
        pours,
    }
}
