//! Views for the office: plain text about costs, quantities and how they came about, and jobs on record.
//!
//! Nothing of this ever reaches a customer. Numbers come from costing and trade;
//! totals are sums over lines and nothing is computed a second time.

pub mod advice;
pub mod books;
pub mod change;
pub mod cost;
pub mod escalation;
pub mod explain;
pub mod ledger;
pub mod list;
mod margin;
pub mod names;
mod origin;
pub mod price_book;
pub mod recorded;
pub mod reprice;
pub mod rise;
mod summary;
pub mod takeoff;
mod wrap;

pub use crate::office::words::{cause, side};
pub use margin::Margin;
pub use summary::summary;

use rust_decimal::Decimal;

use crate::costing::{Cause, LineItem, OfOne, Offer, Priced, Prices, Pricing, Tier};
use crate::input::book::{CostGroup, PriceBook};
use crate::input::business::Business;
use crate::input::job::{Choice, Takeoff};
use crate::reading::{Place, Sources};
use crate::trade::order::Section;
use crate::trade::working::as_said;
use crate::trade::{Quantity, Working};
use crate::values::{Amount, Day, rounding};

/// The first lines of whatever tells a cost.
fn headed(heading: String) -> Vec<String> {
    let warning = "For the office, not for the customer.".to_owned();
    vec![heading, warning, String::new()]
}

/// On every page of whatever tells a cost.
pub const OFFICE_PAGE: &str = "For the office\u{a0} –\u{a0} not for the customer";

/// The sums on the way to the total, each below the lines of its tier.
const SUMS: [(Tier, &str); 4] = [
    (Tier::Direct, "Direct cost"),
    (Tier::Indirect, "COST"),
    (Tier::Price, "PRICE BEFORE TAX"),
    (Tier::Tax, "TOTAL"),
];

/// What the views for the office are about.
#[derive(Clone, Copy)]
pub struct Sheet<'a> {
    pub takeoff: &'a Takeoff,
    pub business: &'a Business,
    pub book: &'a PriceBook,
    /// The day of the quote.
    pub quoted: Day,
    /// For each pour, the prices of its day.
    pub days: &'a [Prices],
    pub offer: &'a Offer,
    pub sources: &'a Sources,
}

impl<'a> Sheet<'a> {
    pub fn pricing(&self) -> Pricing<'a> {
        Pricing {
            book: self.book,
            business: self.business,
            days: self.days,
        }
    }
}

/// Where a line of direct cost stands.
pub fn group_of(line: &LineItem) -> Option<CostGroup> {
    let class = CostGroup::Class(line.class?);
    Some(line.group.clone().unwrap_or(class))
}

/// The groups of direct cost: class by class, then the owner's own as the book has them.
pub fn cost_groups(lines: &[LineItem]) -> Vec<CostGroup> {
    let mut found: Vec<CostGroup> = Vec::new();
    for group in lines.iter().filter_map(group_of) {
        if !found.contains(&group) {
            found.push(group);
        }
    }
    found.sort_by_key(CostGroup::place);
    found
}

/// The lines as they are numbered: direct cost group by group, then what is added to it.
pub fn numbered(lines: &[LineItem]) -> Vec<(usize, &LineItem)> {
    let of_group = |group| {
        lines
            .iter()
            .filter(move |line| group_of(line).as_ref() == Some(&group))
    };
    let groups = cost_groups(lines).into_iter().flat_map(of_group);
    let added = lines.iter().filter(|line| line.class.is_none());
    groups
        .chain(added)
        .enumerate()
        .map(|(i, line)| (i + 1, line))
        .collect()
}

impl Sheet<'_> {
    /// `Garden patio, for Dana Example`.
    pub fn job(&self) -> String {
        let takeoff = self.takeoff;
        format!("{}, for {}", takeoff.name, takeoff.customer.name)
    }

    /// A part of the job by its name.
    pub fn section(&self, section: Section) -> &str {
        match section {
            Section::Slab(i) => &self.takeoff.slabs[i].key,
            Section::Removal => "removal",
            Section::Extras => "extras",
            Section::Whole => "whole job",
        }
    }

    /// Of what cost and price of one are told: a part of the job, or all of it.
    pub fn part_of(&self, one: &OfOne) -> &str {
        one.section.map_or("whole job", |part| self.section(part))
    }

    /// What is taken that the job as quoted does not have, where the sheet is about another choice.
    pub fn chosen(&self) -> Option<String> {
        let shown = &self.offer.as_quoted;
        let quoted = Choice::as_quoted(&self.takeoff.options);
        (*shown != quoted).then(|| self.taken(shown).join(" + "))
    }

    /// The titles of what a choice takes.
    pub fn taken(&self, choice: &Choice) -> Vec<&str> {
        let taken = choice.taken(&self.takeoff.options).into_iter();
        taken.map(|option| option.name.value.as_str()).collect()
    }
}

/// Every quantity behind an estimate, each once: lines first, then what they are made of.
pub fn every(priced: &Priced) -> Vec<Quantity> {
    let mut found: Vec<Quantity> = priced
        .lines
        .iter()
        .map(|line| line.amount.clone())
        .collect();
    for root in priced.needs.roots() {
        keep(&mut found, root);
    }
    let mut next = 0;
    while let Some(quantity) = found.get(next).cloned() {
        for part in quantity.parts() {
            keep(&mut found, part);
        }
        next += 1;
    }
    found
}

fn keep(found: &mut Vec<Quantity>, quantity: Quantity) {
    if !found.iter().any(|one| one.is(&quantity)) {
        found.push(quantity);
    }
}

/// A quantity that the owner set, beside what was computed.
pub struct SetQuantity {
    pub quantity: Quantity,
    pub computed: Quantity,
    /// ` as 8 crew hours of 3 people`, where the owner wrote another unit.
    pub said: String,
    pub because: String,
    pub place: Place,
}

impl Sheet<'_> {
    /// Whatever the owner set, each once.
    pub fn set_by_owner(&self) -> Vec<SetQuantity> {
        let all = every(self.offer.quoted()).into_iter();
        all.filter_map(|quantity| match quantity.working() {
            Working::Set {
                computed,
                said,
                because,
                place,
            } => Some(SetQuantity {
                said: as_said(said.as_ref()),
                computed: computed.clone(),
                because: because.clone(),
                place: *place,
                quantity,
            }),
            Working::Given(_)
            | Working::Shape { .. }
            | Working::Plan { .. }
            | Working::Rule { .. } => None,
        })
        .collect()
    }
}

/// Two lines of one title, such as one for each pour, say which is which.
pub fn told_apart<'a>(
    title: &str,
    of: &Cause,
    mut titles: impl Iterator<Item = &'a str>,
) -> Option<String> {
    let mut alike = || titles.any(|other| other == title);
    // The first of them is the line itself.
    (alike() && alike()).then(|| format!("{title} ({})", cause(of)))
}

/// The same of a line; of two of one item, one may be added by hand.
pub fn line_told_apart<'a>(
    line: &LineItem,
    titles: impl Iterator<Item = &'a str>,
) -> Option<String> {
    let told = told_apart(&line.title, &line.cause, titles)?;
    let mut parts = line.shares.iter();
    let is_added = parts.all(|(part, _)| *part == Section::Extras);
    Some(if is_added && line.price.is_some() {
        format!("{} (as added)", line.title)
    } else {
        told
    })
}

/// The unit that goes with a number.
pub fn unit(amount: Amount) -> String {
    let is_one = amount.value == Decimal::ONE;
    let unit = amount.unit;
    if is_one { unit.symbol() } else { unit.plural() }.to_owned()
}

/// Two places are enough to read; `explain` has them all.
pub fn two_places(amount: Amount) -> Amount {
    Amount::new(rounding::to_places(amount.value, 2), amount.unit)
}

/// `1 quote`, `3 quotes`.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
