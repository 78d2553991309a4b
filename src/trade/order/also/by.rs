//! What a rule of the owner's goes by, in each part of the job that has it.

use crate::input::book::{Also, Among, Known, OnceA, Only, known};
use crate::input::job::{Slab, Takeoff};
use crate::reading::At;
use crate::trade::measure::{RemovalQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, Need, NeedItem, Parts, Section, Shares, shares};
use crate::trade::term::{number, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// The job as far as it is known when rules are followed.
#[derive(Clone, Copy)]
pub(in crate::trade) struct Job<'a> {
    pub takeoff: &'a Takeoff,
    pub slabs: &'a [SlabQuantities],
    pub removals: &'a [RemovalQuantities],
    pub orders: &'a [ConcreteOrder],
}

/// What was made of the job so far: what is bought, and what purposes went by.
#[derive(Clone, Copy, Default)]
pub(super) struct Made<'a> {
    pub needs: &'a [Need],
    pub purposes: &'a [(&'static str, Parts)],
    /// The unit of what the rule buys.
    pub sold: Option<Unit>,
}

/// Of what is built in, what a rule of the owner's is for.
pub(in crate::trade) struct Replaced {
    pub instead: String,
    /// In place of a purpose, of a task, or of both where they have one name.
    pub buys: bool,
    pub works: bool,
    pub parts: Gone,
}

pub(in crate::trade) enum Gone {
    /// So much of it.
    Part(Parts),
    /// All of it in these slabs, or everywhere.
    In { slabs: Vec<usize>, everywhere: bool },
}

/// What is bought or done together.
pub(super) struct Group {
    pub placement: Option<usize>,
    pub parts: Parts,
    pub shares: Shares,
}

impl Group {
    pub fn of(placement: Option<usize>, parts: Parts) -> Self {
        let shares = shares(&parts);
        Self {
            placement,
            parts,
            shares,
        }
    }
}

impl Job<'_> {
    /// What the rule goes by, of all that was made so far.
    pub(super) fn groups(self, name: &str, rule: &Also, made: Made<'_>) -> Vec<Group> {
        let mut groups = match (&rule.by, &rule.once) {
            (Some(by), _) => match known(&by.value) {
                Some(known) if known.among == Among::Purposes => {
                    let parts = self.purpose(known, rule.only.as_ref(), made);
                    vec![Group::of(None, parts)]
                }
                Some(known) => self.quantity(known, rule.only.as_ref()),
                None => bought(&by.value, made.needs),
            },
            (None, Some(once)) => self.times(name, once.value, rule.only.as_ref()),
            (None, None) => Vec::new(),
        };
        for group in &mut groups {
            group.parts.retain(|(_, part)| !part.value().is_zero());
        }
        groups.retain(|group| !group.parts.is_empty());
        if let Some(over) = &rule.over {
            let parts = groups.iter().flat_map(|group| &group.parts);
            let all = sum(parts.map(|(_, part)| part)).value();
            if all <= over.value.value {
                return Vec::new();
            }
        }
        groups
    }

    /// What it replaces, which is known before anything is bought.
    pub(super) fn replaced(self, name: &str, rule: &Also) -> Option<Replaced> {
        let instead = rule.instead.as_ref()?.value.clone();
        let is_itself = rule.by.as_ref().is_some_and(|by| by.value == instead);
        let parts = if is_itself {
            let slabs = self.serving(rule.only.as_ref());
            Gone::In {
                slabs: slabs.map(|(i, _)| i).collect(),
                everywhere: rule.only.is_none(),
            }
        } else {
            let groups = self.groups(name, rule, Made::default()).into_iter();
            Gone::Part(groups.flat_map(|group| group.parts).collect())
        };
        Some(Replaced {
            instead,
            buys: rule.buy.is_some(),
            works: rule.hours.is_some(),
            parts,
        })
    }

    /// Whether a pour has some of what the rule goes by.
    pub(super) fn is_in(self, pour: usize, name: &str, rule: &Also) -> bool {
        let in_pour = |section: &Section| match section {
            Section::Slab(i) => self.takeoff.slabs[*i].placement == pour,
            Section::Removal | Section::Extras | Section::Whole => {
                self.takeoff.first_pour() == pour
            }
        };
        let groups = self.groups(name, rule, Made::default());
        groups.iter().any(|group| match group.placement {
            Some(placement) => placement == pour,
            None => group.parts.iter().any(|(section, _)| in_pour(section)),
        })
    }

    /// What a purpose goes by, in the slabs a rule is for; without `where` all of it. In the unit of what
    /// is bought where it is measured by that too, such as forms by their face.
    fn purpose(self, known: Known, only: Option<&Only>, made: Made<'_>) -> Parts {
        let slabs: Vec<usize> = self.serving(only).map(|(i, _)| i).collect();
        let of_it = made.purposes.iter().filter(|(name, _)| *name == known.name);
        let of_it: Vec<&(Section, Quantity)> = of_it.flat_map(|(_, parts)| parts).collect();
        let is_by = |unit: Unit| of_it.iter().any(|(_, part)| part.amount().unit == unit);
        let unit = made.sold.filter(|unit| is_by(*unit)).unwrap_or(known.unit);
        let parts = of_it
            .into_iter()
            .filter(|(_, part)| part.amount().unit == unit);
        let parts = parts.filter(|(section, _)| match section {
            Section::Slab(i) => slabs.contains(i),
            Section::Removal | Section::Extras | Section::Whole => only.is_none(),
        });
        parts.cloned().collect()
    }

    /// All of a quantity that the job has, wherever it has it.
    pub(in crate::trade) fn all_of(
        self,
        known: Known,
        purposes: &[(&'static str, Parts)],
    ) -> Vec<Quantity> {
        let groups = self.quantity(known, None).into_iter();
        let parts = groups.flat_map(|group| group.parts);
        let made = Made {
            purposes,
            ..Made::default()
        };
        let parts = parts.chain(self.purpose(known, None, made));
        parts.map(|(_, part)| part).collect()
    }

    fn quantity(self, known: Known, only: Option<&Only>) -> Vec<Group> {
        match known.among {
            Among::Slabs => {
                let slabs = self.serving(only);
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
            Among::Orders => self.orders_serving(only, |order| {
                if known.unit == Unit::Load {
                    let many = number(i64::try_from(order.loads.len()).unwrap_or(i64::MAX));
                    let name = format!("{} loads", order.order.name());
                    return Quantity::by("trucks it takes", name, Unit::Load, many);
                }
                order.order.clone()
            }),
            // Purposes are there when they are bought, the crew is known last.
            Among::Purposes | Among::Crew => Vec::new(),
        }
    }

    /// One for each time, or for each thing that there is once.
    fn times(self, name: &str, once: OnceA, only: Option<&Only>) -> Vec<Group> {
        let one = |rule| {
            let unit = Unit::Plain;
            Quantity::by(rule, format!("{name}, once"), unit, number(1))
        };
        let whole = |placement, rule| Group::of(placement, vec![(Section::Whole, one(rule))]);
        match once {
            OnceA::Job if self.serving(only).next().is_none() => Vec::new(),
            OnceA::Job => vec![whole(None, "once for the job")],
            OnceA::Pour => {
                let pours = self.takeoff.pours().map(|(number, _)| number);
                let serves =
                    |pour: &usize| self.serving(only).any(|(_, slab)| slab.placement == *pour);
                let pours = pours.filter(serves);
                pours
                    .map(|pour| whole(Some(pour), "once for the pour"))
                    .collect()
            }
            OnceA::Slab => {
                let slabs = self.serving(only);
                let parts = slabs.map(|(i, _)| (Section::Slab(i), one("once for the slab")));
                vec![Group::of(None, parts.collect())]
            }
            OnceA::Load => self.orders_serving(only, |order| {
                let many = number(i64::try_from(order.loads.len()).unwrap_or(i64::MAX));
                Quantity::by(
                    "each truck it takes",
                    format!("{name}, once"),
                    Unit::Plain,
                    many,
                )
            }),
            OnceA::Box => {
                let slabs = self.serving(only);
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

    fn orders_serving(
        self,
        only: Option<&Only>,
        what: impl Fn(&ConcreteOrder) -> Quantity,
    ) -> Vec<Group> {
        let by_truck = self.orders.iter().filter(|order| order.bags.is_none());
        let serving =
            by_truck.filter(|order| self.serving(only).any(|(_, slab)| order.takes(slab)));
        serving
            .map(|order| Group {
                placement: Some(order.placement),
                parts: vec![(Section::Whole, what(order))],
                shares: order.shares.clone(),
            })
            .collect()
    }

    /// The slabs a rule is for.
    fn serving<'s>(&'s self, only: Option<&'s Only>) -> impl Iterator<Item = (usize, &'s Slab)> {
        let slabs = self.takeoff.slabs.iter().enumerate();
        slabs
            .filter(move |(i, slab)| only.is_none_or(|only| self.is_one(only, *i, slab)))
            .map(|(i, slab)| (i, slab.as_ref()))
    }

    fn is_one(&self, only: &Only, i: usize, slab: &Slab) -> bool {
        let by = self.takeoff.access_of(slab.placement).by.value;
        let is = |wanted: &Option<At<String>>, what: &str| {
            wanted.as_ref().is_none_or(|one| one.value == what)
        };
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
