//! What a rule of the owner's goes by, in each part of the job that has it.

use crate::input::book::{Also, Among, Known, OnceA, Only, known};
use crate::input::job::{Slab, Takeoff};
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, Need, NeedItem, Parts, Section, Shares, shares};
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};
use rust_decimal::Decimal;

/// The job as far as it is known when rules are followed.
#[derive(Clone, Copy)]
pub(in crate::trade) struct Job<'a> {
    pub takeoff: &'a Takeoff,
    pub slabs: &'a [SlabQuantities],
    pub removals: &'a [RemovalQuantities],
    pub orders: &'a [ConcreteOrder],
}

/// What is bought or done together.
pub(super) struct Group {
    pub placement: Option<usize>,
    pub parts: Parts,
    pub shares: Shares,
}

impl Group {
    fn of(placement: Option<usize>, parts: Parts) -> Self {
        let shares = shares(&parts);
        Self {
            placement,
            parts,
            shares,
        }
    }
}

impl Job<'_> {
    /// What the rule goes by; `needs` are those bought so far.
    pub(super) fn groups(self, name: &str, rule: &Also, needs: &[Need]) -> Vec<Group> {
        let mut groups = match (&rule.by, &rule.once) {
            (Some(by), _) => match known(&by.value) {
                Some(known) => self.quantity(known, rule),
                None => bought(&by.value, needs),
            },
            (None, Some(once)) => self.times(name, once.value, rule),
            (None, None) => Vec::new(),
        };
        groups.retain(|group| !group.parts.is_empty());
        groups
    }

    /// What it goes by in slabs and removal, which is known before anything is bought.
    pub(super) fn measured(self, name: &str, rule: &Also) -> Parts {
        let groups = self.groups(name, rule, &[]).into_iter();
        groups.flat_map(|group| group.parts).collect()
    }

    fn quantity(self, known: Known, rule: &Also) -> Vec<Group> {
        match known.among {
            Among::Slabs => {
                let slabs = self.serving(rule);
                let parts = slabs.filter_map(|(i, slab)| {
                    let quantity = titled(slab, &self.slabs[i], known.name)?;
                    Some((Section::Slab(i), quantity.clone()))
                });
                vec![Group::of(None, parts.collect())]
            }
            Among::Removals => {
                let of_each = |removal: &RemovalQuantities| match known.name {
                    "removed area" => Some(removal.area.clone()),
                    "removed volume" => Some(removal.solid.clone()),
                    "saw cut" => removal.saw_cut.as_ref().map(|cut| cut.length.clone()),
                    _ => removal.saw_cut.as_ref().map(|cut| cut.face.clone()),
                };
                let parts = self.removals.iter().filter_map(of_each);
                let parts = parts.map(|part| (Section::Removal, part)).collect();
                vec![Group::of(None, parts)]
            }
            Among::Orders => self.orders_serving(rule, |order| {
                if known.unit == Unit::Load {
                    let many = number(i64::try_from(order.loads.len()).unwrap_or(i64::MAX));
                    let name = format!("{} loads", order.order.name());
                    return Quantity::by("trucks it takes", name, Unit::Load, many);
                }
                order.order.clone()
            }),
            // Followed when the crew is known.
            Among::Crew => Vec::new(),
        }
    }

    /// One for each time, or for each thing that there is once.
    fn times(self, name: &str, once: OnceA, rule: &Also) -> Vec<Group> {
        let one = |rule| {
            let unit = Unit::Piece;
            Quantity::by(rule, format!("{name}, once"), unit, number(1))
        };
        let whole = |placement, rule| Group::of(placement, vec![(Section::Whole, one(rule))]);
        match once {
            OnceA::Job if self.serving(rule).next().is_none() => Vec::new(),
            OnceA::Job => vec![whole(None, "once for the job")],
            OnceA::Pour => {
                let pours = self.takeoff.pours().map(|(number, _)| number);
                let serves =
                    |pour: &usize| self.serving(rule).any(|(_, slab)| slab.placement == *pour);
                let pours = pours.filter(serves);
                pours
                    .map(|pour| whole(Some(pour), "once for the pour"))
                    .collect()
            }
            OnceA::Slab => {
                let slabs = self.serving(rule);
                let parts = slabs.map(|(i, _)| (Section::Slab(i), one("once for the slab")));
                vec![Group::of(None, parts.collect())]
            }
            OnceA::Load => self.orders_serving(rule, |order| {
                let many = number(i64::try_from(order.loads.len()).unwrap_or(i64::MAX));
                Quantity::by(
                    "each truck it takes",
                    format!("{name}, once"),
                    Unit::Piece,
                    many,
                )
            }),
            OnceA::Box => {
                let slabs = self.serving(rule);
                let parts = slabs.flat_map(|(i, slab)| {
                    slab.boxes
                        .iter()
                        .map(move |_| (Section::Slab(i), one("once for the box")))
                });
                vec![Group::of(None, parts.collect())]
            }
            OnceA::Trip => Vec::new(),
        }
    }

    fn orders_serving(self, rule: &Also, what: impl Fn(&ConcreteOrder) -> Quantity) -> Vec<Group> {
        let orders = self.orders.iter();
        let serving = orders.filter(|order| self.serving(rule).any(|(_, slab)| order.takes(slab)));
        serving
            .map(|order| Group {
                placement: Some(order.placement),
                parts: vec![(Section::Whole, what(order))],
                shares: order.shares.clone(),
            })
            .collect()
    }

    /// The slabs a rule is for.
    fn serving<'s>(&'s self, rule: &'s Also) -> impl Iterator<Item = (usize, &'s Slab)> {
        let slabs = self.takeoff.slabs.iter().enumerate();
        let only = rule.only.as_ref();
        slabs
            .filter(move |(i, slab)| only.is_none_or(|only| self.is_one(only, *i, slab)))
            .map(|(i, slab)| (i, slab.as_ref()))
    }

    fn is_one(&self, only: &Only, i: usize, slab: &Slab) -> bool {
        let by = self.takeoff.access_of(slab.placement).by.value;
        let is =
            |wanted: &Option<String>, what: &str| wanted.as_ref().is_none_or(|one| one == what);
        let has = |title: &str| {
            titled(slab, &self.slabs[i], title).is_some_and(|found| !found.value().is_zero())
        };
        is(&only.slab, &slab.key)
            && is(&only.kind, &slab.kind)
            && is(&only.finish, &slab.finish.value)
            && only.placed.as_ref().is_none_or(|placed| placed.value == by)
            && only
                .thicker
                .as_ref()
                .is_none_or(|over| over.value < slab.thickest())
            && only.has.as_ref().is_none_or(|title| has(&title.value))
    }
}

/// The quantity of a slab that has this title.
fn titled<'a>(slab: &Slab, of: &'a SlabQuantities, title: &str) -> Option<&'a Quantity> {
    let listed = of.listed.iter().map(|listed| &listed.quantity);
    let mut titled = listed.filter(|quantity| {
        let rest = quantity.name().strip_prefix(slab.key.as_str());
        rest.and_then(|rest| rest.strip_prefix(' ')) == Some(title)
    });
    titled.next()
}

/// What is bought by this name: an item, or by another rule.
fn bought(name: &str, needs: &[Need]) -> Vec<Group> {
    let found = needs.iter().filter(|need| {
        let item = match &need.item {
            NeedItem::Item(item) => item.value == name,
            NeedItem::Lump { .. } => false,
        };
        item || need.quantity.name() == name
    });
    let mut all = Group::of(None, Vec::new());
    for need in found {
        all.parts.push((Section::Whole, need.quantity.clone()));
        all.shares.extend(need.shares.iter().copied());
    }
    vec![all]
}

/// The same number in another unit: what is counted one for one.
pub(super) fn counted_in(unit: Unit, quantity: &Quantity) -> Quantity {
    let amount = Amount::new(quantity.value(), unit);
    Quantity::new(quantity.named(), amount, quantity.working().clone())
}

/// Nothing of it where its shares are all nothing.
pub(super) fn is_any(parts: &Parts) -> bool {
    parts.iter().any(|(_, part)| part.value() != Decimal::ZERO)
}
