//! Every combination of options, priced: options are not additive.

use std::collections::BTreeMap;

use super::{LineItem, Prices, Totals, estimate, missing, priced};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::input::job::{Choice, Takeoff, choices};
use crate::reading::Problems;
use crate::trade::order::{JobNeeds, Ways, needs};
use crate::trade::sets;
use crate::values::Day;

/// One combination: what it needs, and every line of its price.
#[derive(Clone, Debug)]
pub struct Priced {
    pub needs: JobNeeds,
    pub lines: Vec<LineItem>,
}

impl Priced {
    pub fn totals(&self) -> Totals {
        Totals::of(&self.lines)
    }
}

/// What can be signed: the job as quoted, and with every choice.
#[derive(Clone, Debug)]
pub struct Offer {
    pub by_choice: BTreeMap<Choice, Priced>,
    pub as_quoted: Choice,
}

impl Offer {
    pub fn quoted(&self) -> &Priced {
        &self.by_choice[&self.as_quoted]
    }
}

/// Prices the job with every choice; reports everything that has no price.
pub fn offer(
    takeoff: &Takeoff,
    book: &PriceBook,
    business: &Business,
    days: &[Prices],
    problems: &mut Problems,
) -> Option<Offer> {
    let pours: Vec<Day> = days.iter().map(|prices| prices.day).collect();
    let ways = Ways {
        rules: &book.rules,
        order: &business.order,
        crew: &business.crew,
        pours: &pours,
    };
    let before = problems.len();
    let mut by_choice = BTreeMap::new();
    for choice in choices(&takeoff.options) {
        let needs = needs(takeoff, &choice, ways);
        if by_choice.is_empty() {
            sets::check(&takeoff.sets, &needs.roots(), problems);
        }
        // A problem of the job as quoted would only be repeated by every choice.
        let mut found = Problems::default();
        missing(&needs, book, &mut found);
        let lines = priced(&needs, book, days, &mut found);
        if !found.is_empty() && problems.len() == before {
            problems.extend(found);
        }
        by_choice.insert(
            choice,
            Priced {
                needs,
                lines: estimate(lines, &business.price, takeoff.fixed_price.as_ref()),
            },
        );
    }
    (problems.len() == before).then(|| Offer {
        by_choice,
        as_quoted: Choice::as_quoted(&takeoff.options),
    })
}
