//! What became of every quote, and of all together.

use std::borrow::Cow;
use std::collections::BTreeMap;

use super::super::margin;
use crate::costing::repricing::Repriced;
use crate::costing::{Books, Change};
use crate::values::{Day, Money, Percent};

/// One quote that was asked.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// With the margin floor it was quoted under.
    Priced(Box<(Quote, Percent, Repriced)>),
    /// It could not be priced, or could not be read.
    Unpriced { number: String, because: String },
}

/// Whose quote it is and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quote {
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

impl Standing {
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Signed(_) => "signed",
        }
    }
}

/// All answers. Causes are added up as they come, so that one quote stays a small row.
#[derive(Debug, Default)]
pub struct Answer {
    outcomes: Vec<Outcome>,
    /// By title, since most titles stand in one group only.
    causes: BTreeMap<String, Vec<Together>>,
}

/// One line of the table.
#[derive(Clone, Debug)]
pub struct Row<'a> {
    pub quote: &'a Quote,
    pub floor: Percent,
    pub found: &'a Repriced,
    /// Since the quote went out.
    pub age: i64,
    /// Until the quote ends; negative when it has.
    pub days_left: i64,
    pub verdict: Cow<'static, str>,
}

impl Row<'_> {
    /// Whether the promised price leaves less than the owner's least margin.
    pub fn is_below_floor(&self) -> bool {
        !stands(self.floor, self.found)
    }

    /// The margin if the promised price is held, in words.
    pub fn margin(&self) -> String {
        let held = self.found.margin_held();
        held.map(|number| margin(number, self.floor.number()))
            .unwrap_or_default()
    }
}

/// One cause over all quotes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Together {
    pub group: &'static str,
    pub class: &'static str,
    pub title: String,
    pub quotes: usize,
    pub by: Money,
    /// The last quote that had it, counted from the first: one quote may have it in two lines.
    last: usize,
}

impl Answer {
    /// Takes one more; its own causes are kept only if each quote has to tell them.
    pub fn add(&mut self, mut outcome: Outcome, each: bool) {
        if let Outcome::Priced(one) = &mut outcome {
            for (group, change) in causes(&one.2) {
                let class = change.class.map_or("", crate::input::book::Class::name);
                let last = self.outcomes.len();
                self.cause(Together {
                    group,
                    class,
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

    /// Takes all of another answer.
    pub fn join(&mut self, other: Self) {
        let before = self.outcomes.len();
        self.outcomes.extend(other.outcomes);
        for mut one in other.causes.into_values().flatten() {
            one.last += before;
            self.cause(one);
        }
    }

    fn cause(&mut self, more: Together) {
        let Some(of_title) = self.causes.get_mut(&more.title) else {
            self.causes.insert(more.title.clone(), vec![more]);
            return;
        };
        let same = |one: &&mut Together| (one.group, one.class) == (more.group, more.class);
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
    pub fn rows(&self, today: Day) -> Vec<Row<'_>> {
        let mut rows: Vec<Row<'_>> = self
            .outcomes
            .iter()
            .filter_map(|outcome| match outcome {
                Outcome::Priced(one) => {
                    let (quote, floor, found) = &**one;
                    Some(Row {
                        quote,
                        floor: *floor,
                        found,
                        age: today.days_since(quote.quoted),
                        days_left: quote.good_until.days_since(today),
                        verdict: verdict(quote, *floor, found, today),
                    })
                }
                Outcome::Unpriced { .. } => None,
            })
            .collect();
        rows.sort_by(|a, b| {
            let harm = b.found.harm().cmp(&a.found.harm());
            harm.then_with(|| a.quote.number.cmp(&b.quote.number))
        });
        rows
    }

    /// Those that could not be priced, by number, and why.
    pub fn left_out(&self) -> Vec<(&str, &str)> {
        let mut found: Vec<(&str, &str)> = self
            .outcomes
            .iter()
            .filter_map(|outcome| match outcome {
                Outcome::Unpriced { number, because } => Some((&**number, &**because)),
                Outcome::Priced(_) => None,
            })
            .collect();
        found.sort_unstable();
        found
    }

    /// The causes of all quotes, each once, in the order they are told.
    pub fn together(&self) -> Vec<Together> {
        let mut found: Vec<Together> = self.causes.values().flatten().cloned().collect();
        let place = |one: &Together| match one.group {
            "prices" => 0,
            "rules of buying" => 1,
            _ => 2,
        };
        found.sort_by(|a, b| {
            let largest = b.by.as_cents().abs().cmp(&a.by.as_cents().abs());
            place(a)
                .cmp(&place(b))
                .then(largest)
                .then_with(|| a.title.cmp(&b.title))
                .then_with(|| a.class.cmp(b.class))
        });
        found
    }
}

fn stands(floor: Percent, found: &Repriced) -> bool {
    let margin = found.margin_held();
    margin.is_some_and(|margin| floor.number() <= margin)
}

fn verdict(quote: &Quote, floor: Percent, found: &Repriced, today: Day) -> Cow<'static, str> {
    let harm = found.harm();
    match quote.standing {
        Standing::Signed(Clause::Passes(much)) if much < Money::ZERO => {
            format!("signed: {} goes back by its clause", -much).into()
        }
        Standing::Signed(Clause::Passes(much)) if Money::ZERO < much => {
            format!("signed: {much} is passed on by its clause").into()
        }
        Standing::Signed(Clause::Unknown) if Money::ZERO < harm => {
            "signed: yours to bear but for its clause".into()
        }
        Standing::Signed(_) if Money::ZERO < harm => "signed: yours to bear".into(),
        Standing::Signed(_) => "signed: nothing to bear".into(),
        Standing::Open if quote.good_until < today => "expired: quote it again".into(),
        Standing::Open if !stands(floor, found) => "below your floor: send a revision".into(),
        Standing::Open => "hold the price".into(),
    }
}

/// What quotes of one standing cost more together.
pub fn exposure(rows: &[Row<'_>], open: bool) -> Money {
    rows.iter()
        .filter(|row| (row.quote.standing == Standing::Open) == open)
        .map(|row| row.found.harm())
        .sum()
}

/// The changes of one quote, each with the group it is told in.
pub fn causes(found: &Repriced) -> impl Iterator<Item = (&'static str, &Change)> {
    let of = |group: &'static str| move |change| (group, change);
    let why = &found.why;
    let prices = why.prices.iter().map(of("prices"));
    let rules = why.rules.iter().map(of("rules of buying"));
    prices
        .chain(rules)
        .chain(why.added.iter().map(of("what follows")))
}

#[cfg(test)]
impl Together {
    /// A cause of one quote, for tests.
    pub(in crate::documents) fn of(group: &'static str, title: &str, by: Money) -> Self {
        Self {
            group,
            class: "",
            title: title.to_owned(),
            quotes: 1,
            by,
            last: 0,
        }
    }
}
