//! The one list of quantities: each puts itself on it where it is settled.
//!
//! What is on the list `flatwork takeoff` shows and `explain` follows, and `set` may overrule
//! it; nobody else has to be told of a new quantity.

use std::sync::Arc;

use super::sets::Sets;
use super::term::Term;
use super::working::Quantity;
use crate::values::Unit;

/// The part of the job a quantity belongs to, in the order they are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    Slab(usize),
    Removal,
    Order(usize),
    /// The day of a pour.
    Pour(usize),
    Work,
    Crew,
}

/// A quantity as it stands on the list.
#[derive(Clone, Debug)]
pub struct Listed {
    pub quantity: Quantity,
    /// Whether it may be asked for by itself; else only by way of what follows from it.
    pub is_root: bool,
}

/// The quantities of one part of the job, gathered as they are settled.
pub struct Tally<'a> {
    pub sets: Sets<'a>,
    /// What the names of its quantities begin with; nothing for the job itself.
    part: &'a str,
    listed: Vec<Listed>,
}

impl<'a> Tally<'a> {
    pub fn of(part: &'a str, sets: Sets<'a>) -> Self {
        Self {
            sets,
            part,
            listed: Vec::new(),
        }
    }

    pub fn part(&self) -> &'a str {
        self.part
    }

    /// Its full name: a title alone says it only within its part.
    pub fn name(&self, title: &str) -> String {
        if self.part.is_empty() {
            return title.to_owned();
        }
        format!("{} {title}", self.part)
    }

    /// What a rule makes of `term`, or what the owner set it to.
    pub fn by(&mut self, rule: &'static str, title: &str, unit: Unit, term: Term) -> Quantity {
        self.settle(Quantity::by(rule, self.name(title), unit, term))
    }

    /// The same, for what is not shown: it can be reached by what follows from it.
    pub fn between(&self, rule: &'static str, title: &str, unit: Unit, term: Term) -> Quantity {
        self.sets
            .settle(Quantity::by(rule, self.name(title), unit, term))
    }

    /// The quantity, or what the owner set it to.
    pub fn settle(&mut self, quantity: Quantity) -> Quantity {
        let quantity = self.sets.settle(quantity);
        self.list([&quantity]);
        quantity
    }

    /// Puts what is settled already on the list.
    pub fn list<'q>(&mut self, settled: impl IntoIterator<Item = &'q Quantity>) {
        self.put(settled, true);
    }

    /// Shows it, though it may lead nowhere.
    pub fn show<'q>(&mut self, settled: impl IntoIterator<Item = &'q Quantity>) {
        self.put(settled, false);
    }

    fn put<'q>(&mut self, settled: impl IntoIterator<Item = &'q Quantity>, is_root: bool) {
        let settled = settled.into_iter().cloned();
        self.listed
            .extend(settled.map(|quantity| Listed { quantity, is_root }));
    }

    /// All that was put on it.
    pub fn done(&mut self) -> Arc<[Listed]> {
        std::mem::take(&mut self.listed).into()
    }
}
