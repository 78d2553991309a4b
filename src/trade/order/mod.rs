//! What is bought: quantities and rules of buying become needs in whole pieces.
//!
//! Allowance is figured once and rounding up happens once, for everything that
//! is bought together. No price is known here.

pub(super) mod also;
pub(super) mod boxes;
pub mod chairs;
mod concrete;
mod dowels;
mod extras;
mod finishes;
mod haul;
mod loose;
mod memo;
mod pump;
mod purposes;
mod steel;
mod sticks;
mod together;

pub(super) use loose::delivered;

use also::Replaced;
pub use concrete::{AS_NEEDED, BY_CREW, ConcreteOrder, Ordering, Placing};
pub(super) use extras::is_labor;
pub use memo::OrderMemo;
pub(super) use memo::{Once, once};
pub(super) use pump::hire as hire_pump;
pub use together::TOGETHER;

use rust_decimal::Decimal;

use crate::input::book::{Class, ItemKey, Role, Rules, Selling};
use crate::input::business::{CrewPolicy, CurePolicy, OrderPolicy, PourDayPolicy};
use crate::input::job::{Extra, Takeoff};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::sets::Sets;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Name, Quantity};
use crate::values::{Amount, Day, Money, Unit};

/// Something to be paid for, in the amount that is really bought.
#[derive(Clone, Debug)]
pub struct Need {
    pub item: NeedItem,
    pub quantity: Quantity,
    /// The pour it belongs to; none serves the whole job.
    pub placement: Option<usize>,
    /// Which parts of the job it serves, and how much of it.
    pub shares: Shares,
}

#[derive(Clone, Debug)]
pub enum NeedItem {
    Item(At<ItemKey>),
    Lump {
        cost: At<Money>,
        class: Class,
        /// As the takeoff writes it.
        group: Option<String>,
    },
}

/// A part of the job that can carry a price of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    Slab(usize),
    Removal,
    Extras,
    Whole,
}

/// A rule the price book lacks.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Missing {
    Role(Role),
    Rate(String),
    Disposal(&'static str),
    Supply,
}

/// How much there is of something in parts of the job.
pub type Parts = Vec<(Section, Quantity)>;

/// How much of it each part of the job has.
pub type Shares = Vec<(Section, Decimal)>;

/// The rules and policies a job is figured with.
#[derive(Clone, Copy)]
pub struct Policies<'a> {
    pub rules: &'a Rules,
    pub order: &'a OrderPolicy,
    pub crew: &'a CrewPolicy,
    pub cure: &'a CurePolicy,
    pub pour_day: &'a PourDayPolicy,
    /// The day of each pour, said or counted from the day of the quote.
    pub pours: &'a [Day],
    /// Orders that are placed otherwise than as they are needed.
    pub ordering: &'a Ordering,
}

/// Needs as they are gathered.
pub(super) struct List<'a> {
    pub by: Policies<'a>,
    pub sets: Sets<'a>,
    pub needs: Vec<Need>,
    pub missing: Vec<Missing>,
    pub memo: &'a mut OrderMemo,
    /// Parts of what is built in that rules of the owner's are for.
    pub replaced: Vec<Replaced>,
    /// What purposes went by, whoever buys it.
    pub purposes: Vec<(&'static str, Parts)>,
}

/// What the slabs alone need; trucks wait for what `place` works out of the orders.
pub(super) fn for_slabs<T: Default>(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    list: &mut List<'_>,
    place: impl FnOnce(&mut [ConcreteOrder], &mut List<'_>) -> T,
) -> (Vec<ConcreteOrder>, T) {
    let (orders, placed) = concrete::orders(takeoff, slabs, list, place);
    loose::fiber(takeoff, &orders, list);
    loose::base(takeoff, slabs, list);
    steel::bars(slabs, list);
    steel::mesh(takeoff, slabs, list);
    dowels::list(slabs, list);
    purposes::of_slabs(takeoff, slabs, list);
    pump::list(takeoff, list);
    boxes::list(takeoff, list);
    finishes::list(takeoff, slabs, &orders, list);
    (orders, placed)
}

/// What the job needs beside: removal, answers about the site, what is added by hand.
pub(super) fn beside_slabs(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    removals: &[RemovalQuantities],
    extras: &[&Extra],
    list: &mut List<'_>,
) {
    purposes::of_removals(removals, list);
    haul::list(removals, list);
    purposes::of_answers(takeoff, slabs, list);
    extras::list(extras, list);
    extras::permit(takeoff, list);
}

/// For the job as a whole.
pub(super) fn whole(quantity: Quantity) -> Parts {
    vec![(Section::Whole, quantity)]
}

pub(super) fn shares(parts: &[(Section, Quantity)]) -> Shares {
    let parts = parts.iter();
    parts.map(|(part, much)| (*part, much.value())).collect()
}

impl<'a> List<'a> {
    pub fn new(by: Policies<'a>, sets: Sets<'a>, memo: &'a mut OrderMemo) -> Self {
        Self {
            by,
            sets,
            needs: Vec::new(),
            missing: Vec::new(),
            memo,
            replaced: Vec::new(),
            purposes: Vec::new(),
        }
    }

    /// Buys `parts` together: added up, then up to how the item is sold, once.
    pub fn buy(
        &mut self,
        item: &At<ItemKey>,
        name: impl Into<Name>,
        rule: &'static str,
        parts: &[(Section, Quantity)],
    ) -> Option<&mut Need> {
        self.buy_on(None, item, name.into(), rule, parts)
    }

    fn buy_on(
        &mut self,
        placement: Option<usize>,
        item: &At<ItemKey>,
        name: Name,
        rule: &'static str,
        parts: &[(Section, Quantity)],
    ) -> Option<&mut Need> {
        let selling = self.by.rules.selling.get(&item.value)?;
        let parts = parts.iter().filter(|(_, part)| !part.value().is_zero());
        let parts: Parts = parts.cloned().collect();
        if parts.is_empty() {
            return None;
        }
        let sets = self.sets;
        let shares = shares(&parts);
        let needed = || needed(selling, added(&parts), &shares);
        let before = match placement {
            Some(_) => Vec::new(),
            None => together::before(&self.needs, &item.value, &shares),
        };
        let quantity = if before.is_empty() {
            self.memo.bought(&item.value, name, &parts, |name| {
                let term = sold(selling, needed());
                sets.settle(Quantity::by(rule, name, selling.unit, term))
            })
        } else {
            sets.settle(together::more(name, selling, needed(), &before))
        };
        self.take(item, quantity, placement, shares)
    }

    /// Buys `much` for these parts of the job.
    pub fn buy_for(
        &mut self,
        item: &At<ItemKey>,
        name: impl Into<Name>,
        rule: &'static str,
        much: Quantity,
        placement: Option<usize>,
        shares: Shares,
    ) {
        if let Some(need) = self.buy_on(placement, item, name.into(), rule, &whole(much)) {
            need.shares = shares;
        }
    }

    /// Takes exactly so much of an item that the book sells.
    pub fn take(
        &mut self,
        item: &At<ItemKey>,
        quantity: Quantity,
        placement: Option<usize>,
        shares: Shares,
    ) -> Option<&mut Need> {
        self.unit(item)?;
        self.needs.push(Need {
            item: NeedItem::Item(item.clone()),
            quantity,
            placement,
            shares,
        });
        self.needs.last_mut()
    }

    /// The unit an item is sold by.
    pub fn unit(&self, item: &At<ItemKey>) -> Option<Unit> {
        let selling = self.by.rules.selling.get(&item.value);
        selling.map(|selling| selling.unit)
    }

    /// The item that stands for `role`; none when it is not charged or not known, which is noted.
    pub fn role(&mut self, role: Role) -> Option<At<ItemKey>> {
        let Some(known) = self.by.rules.roles.get(&role) else {
            self.missing.push(Missing::Role(role));
            return None;
        };
        let (value, place) = (known.value.clone()?, known.place);
        Some(At { value, place })
    }

    /// The unit of the item that stands for `role`, where there is one.
    fn sold_by(&self, role: Role) -> Option<Unit> {
        let item = self.by.rules.roles.get(&role)?.value.as_ref()?;
        Some(self.by.rules.selling.get(item)?.unit)
    }

    /// Buys what stands for `role`, if there is anything to buy that no rule of the owner's is for.
    pub fn buy_for_purpose(
        &mut self,
        role: Role,
        name: impl Into<Name>,
        rule: &'static str,
        parts: Parts,
    ) -> Option<&mut Need> {
        self.purposes.push((role.name(), parts.clone()));
        let parts = also::left_to_buy(role.name(), parts, &self.replaced);
        self.buy_role(role, name, rule, &parts)
    }

    /// Buys what stands for `role`, if there is anything to buy.
    fn buy_role(
        &mut self,
        role: Role,
        name: impl Into<Name>,
        rule: &'static str,
        parts: &[(Section, Quantity)],
    ) -> Option<&mut Need> {
        if parts.iter().all(|(_, part)| part.value().is_zero()) {
            return None;
        }
        let item = self.role(role)?;
        self.buy(&item, name, rule, parts)
    }

    pub fn rate(&mut self, task: &str) -> Option<At<Ratio>> {
        let rate = self.by.rules.rates.get(task).cloned();
        if rate.is_none() {
            self.missing.push(Missing::Rate(task.to_owned()));
        }
        rate
    }
}

fn added(parts: &[(Section, Quantity)]) -> Term {
    if let [(_, one)] = parts {
        of(one)
    } else {
        sum(parts.iter().map(|(_, part)| part))
    }
}

/// With what is wasted of it; what is added by hand is what the owner wrote.
fn needed(selling: &Selling, whole: Term, shares: &Shares) -> Term {
    match &selling.waste {
        Some(waste) if !together::by_hand(shares) => {
            whole * (number(1) + of(&Quantity::said("waste", waste)))
        }
        Some(_) | None => whole,
    }
}

/// All of it together, up to how the item is sold.
fn sold(selling: &Selling, whole: Term) -> Term {
    let said = |name, value| {
        let amount = Amount::new(value, selling.unit);
        Quantity::given(name, amount, selling.place)
    };
    let stepped = if selling.step.is_zero() {
        whole
    } else {
        whole.up_to(&said("sold in", selling.step))
    };
    if stepped.value() < selling.smallest {
        stepped.at_least(&said("at least", selling.smallest))
    } else {
        stepped
    }
}
