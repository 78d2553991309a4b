//! What became of every quote at other prices, and of all together.

use std::collections::BTreeMap;

use super::compare::{Books, CauseChange};
use super::repricing::Repriced;
use crate::input::book::Class;
use crate::values::{Day, Money, Percent};

/// One quote that was asked.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// With the margin floor it was quoted under.
    Priced(Box<(AskedQuote, Percent, Repriced)>),
    /// It could not be priced, or could not be read.
    Unpriced { number: String, because: String },
}

/// Whose quote it is and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AskedQuote {
    pub number: String,
    pub customer: String,
    pub standing: Standing,
    pub quoted: Day,
    pub good_until: Day,
    /// Holds that end too early, units that changed.
    pub notes: Vec<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    Open,
    Signed(Clause),
}

/// Whether a contract lets the price follow a published one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clause {
    None,
    /// It does, and nobody said the published price.
    Unknown,
    /// It does, and so much comes on top, or below zero off.
    Passes(Money),
}

/// What to do about a quote.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Open: the promised price still stands.
    Hold,
    /// Open: below the floor.
    Revise,
    /// Open no longer.
    QuoteAgain,
    /// Signed: so much goes back to the customer by the clause.
    GoesBack(Money),
    /// Signed: so much is passed on by the clause.
    PassedOn(Money),
    /// Signed: the owner's, but for a clause whose published price nobody said.
    BearUnlessClause,
    /// Signed: the owner's.
    Bear,
    NothingToBear,
}

/// What became of all quotes. Causes are added up as they come, so that one quote stays a small row.
#[derive(Debug, Default)]
pub struct Outcomes {
    outcomes: Vec<Outcome>,
    /// By title, since most titles stand in one group only.
    causes: BTreeMap<String, Vec<CommonCause>>,
}

/// One quote at the other prices, on the day it is asked.
#[derive(Clone, Debug)]
pub struct Finding<'a> {
    pub quote: &'a AskedQuote,
    pub floor: Percent,
    pub found: &'a Repriced,
    /// Since the quote went out.
    pub age: i64,
    /// Until the quote ends; negative when it has.
    pub days_left: i64,
    pub verdict: Verdict,
}

impl Finding<'_> {
    /// Whether the promised price leaves less than the owner's least margin.
    pub fn is_below_floor(&self) -> bool {
        !stands(self.floor, self.found)
    }

    pub fn is_open(&self) -> bool {
        self.quote.standing == Standing::Open
    }
}

/// What a cause belongs to, in the order they are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CauseGroup {
    Prices,
    RulesOfBuying,
    WhatFollows,
}

/// One cause over all quotes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CommonCause {
    pub group: CauseGroup,
    pub class: Option<Class>,
    pub title: String,
    pub quotes: usize,
    pub by: Money,
    /// The last quote that had it, counted from the first: one quote may have it in two lines.
    last: usize,
}

impl Outcomes {
    /// Takes one more; its own causes are kept only if each quote has to tell them.
    pub fn add(&mut self, mut outcome: Outcome, each: bool) {
        if let Outcome::Priced(one) = &mut outcome {
            for (group, change) in causes(&one.2) {
                let last = self.outcomes.len();
                self.cause(CommonCause {
                    group,
                    class: change.class,
                    title: change.title.clone(),
                    quotes: 1,
                    by: change.by(),
                    last,
                });
            }
            if !each {
                one.2.why = Books::default();
            }
        }
        self.outcomes.push(outcome);
    }

    /// Takes all of the others.
    pub fn join(&mut self, other: Self) {
        let before = self.outcomes.len();
        self.outcomes.extend(other.outcomes);
        for mut one in other.causes.into_values().flatten() {
            one.last += before;
            self.cause(one);
        }
    }

    fn cause(&mut self, more: CommonCause) {
        let Some(of_title) = self.causes.get_mut(&more.title) else {
            self.causes.insert(more.title.clone(), vec![more]);
            return;
        };
        let same = |one: &&mut CommonCause| (one.group, one.class) == (more.group, more.class);
        if let Some(one) = of_title.iter_mut().find(same) {
            one.quotes += if one.last == more.last {
                0
            } else {
                more.quotes
            };
            one.by = one.by + more.by;
            one.last = more.last;
        } else {
            of_title.push(more);
        }
    }

    /// The quotes that could be priced, the most harm first, then by number.
    pub fn findings(&self, today: Day) -> Vec<Finding<'_>> {
        let mut findings: Vec<Finding<'_>> = self
            .outcomes
            .iter()
            .filter_map(|outcome| match outcome {
                Outcome::Priced(one) => Some(one.as_ref()),
                Outcome::Unpriced { .. } => None,
            })
            .map(|(quote, floor, found)| Finding {
                quote,
                floor: *floor,
                found,
                age: today.days_since(quote.quoted),
                days_left: quote.good_until.days_since(today),
                verdict: verdict(quote, *floor, found, today),
            })
            .collect();
        findings.sort_by(|a, b| {
            let harm = b.found.harm().cmp(&a.found.harm());
            harm.then_with(|| a.quote.number.cmp(&b.quote.number))
        });
        findings
    }

    /// Those that could not be priced, by number, and why.
    pub fn left_out(&self) -> Vec<(&str, &str)> {
        let outcomes = self.outcomes.iter();
        let mut found: Vec<(&str, &str)> = outcomes
            .filter_map(|outcome| match outcome {
                Outcome::Unpriced { number, because } => Some((&**number, &**because)),
                Outcome::Priced(_) => None,
            })
            .collect();
        found.sort_unstable();
        found
    }

    /// The causes of all quotes, each once, in the order they are told.
    pub fn together(&self) -> Vec<CommonCause> {
        let mut found: Vec<CommonCause> = self.causes.values().flatten().cloned().collect();
        found.sort_by(|a, b| {
            let size = |one: &CommonCause| one.by.as_cents().abs();
            let class = |one: &CommonCause| one.class.map(Class::name);
            a.group
                .cmp(&b.group)
                .then(size(b).cmp(&size(a)))
                .then_with(|| a.title.cmp(&b.title))
                .then_with(|| class(a).cmp(&class(b)))
        });
        found
    }
}

fn stands(floor: Percent, found: &Repriced) -> bool {
    let margin = found.margin_held();
    margin.is_some_and(|margin| floor.number() <= margin)
}

fn verdict(quote: &AskedQuote, floor: Percent, found: &Repriced, today: Day) -> Verdict {
    let is_harmed = Money::ZERO < found.harm();
    match quote.standing {
        Standing::Signed(Clause::Passes(much)) if much < Money::ZERO => Verdict::GoesBack(-much),
        Standing::Signed(Clause::Passes(much)) if Money::ZERO < much => Verdict::PassedOn(much),
        Standing::Signed(Clause::Unknown) if is_harmed => Verdict::BearUnlessClause,
        Standing::Signed(_) if is_harmed => Verdict::Bear,
        Standing::Signed(_) => Verdict::NothingToBear,
        Standing::Open if quote.good_until < today => Verdict::QuoteAgain,
        Standing::Open if !stands(floor, found) => Verdict::Revise,
        Standing::Open => Verdict::Hold,
    }
}

/// What quotes of one standing cost more together.
pub fn exposure(findings: &[Finding<'_>], open: bool) -> Money {
    let of_standing = findings.iter().filter(|one| one.is_open() == open);
    of_standing.map(|one| one.found.harm()).sum()
}

/// The changes of one quote, each with the group it is told in.
pub fn causes(found: &Repriced) -> impl Iterator<Item = (CauseGroup, &CauseChange)> {
    let of = |group: CauseGroup| move |change| (group, change);
    let why = &found.why;
    let prices = why.prices.iter().map(of(CauseGroup::Prices));
    let rules = why.rules.iter().map(of(CauseGroup::RulesOfBuying));
    let added = why.added.iter().map(of(CauseGroup::WhatFollows));
    prices.chain(rules).chain(added)
}

#[cfg(test)]
impl CommonCause {
    /// A cause of one quote, for tests.
    pub(crate) fn of(group: CauseGroup, title: &str, by: Money) -> Self {
        Self {
            group,
            class: None,
            title: title.to_owned(),
            quotes: 1,
            by,
            last: 0,
        }
    }
}
