//! What is bought: quantities and rules of buying become needs in whole pieces.
//!
//! Allowance is figured once and rounding up happens once, for everything that
//! is bought together. No price is known here.

pub(super) mod boxes;
mod concrete;
mod extras;
mod finishes;
mod goods;
mod haul;
mod machines;
mod permit;
mod pump;
mod sawing;
pub(super) mod site;
mod slabs;
mod sticks;
mod worked;

pub use concrete::{ConcreteOrder, OnCall};
pub use sticks::{CutPlan, cut_plan};
pub use worked::Worked;

use std::sync::Arc;

use rust_decimal::Decimal;

use crate::input::book::{Class, ItemKey, Role, Rules, Selling};
use crate::input::business::{CrewPolicy, OrderPolicy};
use crate::input::job::{Extra, Takeoff};
use crate::reading::At;
use crate::trade::crew::{self, Crew};
use crate::trade::measure::{self, BoxQuantities, RemovalQuantities, SlabQuantities};
use crate::trade::sets::Sets;
use crate::trade::term::{largest, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Day, Money};

/// Something to be paid for, in the amount that is really bought.
#[derive(Clone, Debug)]
pub struct Need {
    pub item: NeedItem,
    pub quantity: Quantity,
    /// The pour it belongs to; none serves the whole job.
    pub placement: Option<usize>,
    /// Which parts of the job it serves, and how much of it.
    pub shares: Vec<(Section, Decimal)>,
}

#[derive(Clone, Debug)]
pub enum NeedItem {
    Item(At<ItemKey>),
    Lump { cost: At<Money>, class: Class },
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

/// Everything a job needs, before prices.
#[derive(Clone, Debug)]
pub struct JobNeeds {
    /// Shared by every choice that has the same slabs.
    pub slabs: Arc<[SlabQuantities]>,
    pub removals: Vec<RemovalQuantities>,
    pub orders: Vec<ConcreteOrder>,
    pub crew: Crew,
    pub needs: Vec<Need>,
    pub missing: Vec<Missing>,
    /// The pour for whose day it is bought what serves the whole job.
    pub first_pour: usize,
}

/// The rules and policies a job is figured with.
#[derive(Clone, Copy)]
pub struct Ways<'a> {
    pub rules: &'a Rules,
    pub order: &'a OrderPolicy,
    pub crew: &'a CrewPolicy,
    /// The day of each pour, said or counted from the day of the quote.
    pub pours: &'a [Day],
}

/// Everything the job needs as it stands; what is worked out for other choices of it serves again.
pub fn needs(takeoff: &Takeoff, ways: Ways<'_>, worked: &mut Worked) -> JobNeeds {
    let of_slabs = slabs::of_slabs(takeoff, ways, worked);
    let (slabs, orders) = (&of_slabs.slabs, &of_slabs.orders);
    let removals = measure::removals(takeoff);
    let extras: Vec<&Extra> = takeoff.head.extras.iter().chain(&takeoff.added).collect();
    let mut list = List {
        ways,
        sets: Sets(&takeoff.head.sets),
        needs: of_slabs.needs.clone(),
        missing: of_slabs.missing.clone(),
        worked,
    };
    sawing::list(&removals, &mut list);
    haul::list(&removals, &mut list);
    site::list(takeoff, slabs, &mut list);
    extras::list(&extras, &mut list);
    permit::list(takeoff, &mut list);
    let work = crew::Work {
        takeoff,
        slabs,
        orders,
    };
    let crew = crew::crew(&work, &of_slabs.tasks, &removals, &extras, &mut list);
    machines::buggies(takeoff, orders, &crew, &mut list);
    machines::breaker(&removals, &crew, &mut list);
    let mut missing = list.missing;
    missing.sort();
    missing.dedup();
    JobNeeds {
        slabs: Arc::clone(slabs),
        removals,
        orders: orders.clone(),
        crew,
        needs: list.needs,
        missing,
        first_pour: takeoff.first_pour(),
    }
}

impl JobNeeds {
    /// Every quantity that something else may follow, for overrides and explanations.
    pub fn roots(&self) -> Vec<Quantity> {
        let mut roots: Vec<Quantity> = self
            .needs
            .iter()
            .map(|need| need.quantity.clone())
            .collect();
        roots.extend(self.crew.roots());
        roots.extend(self.orders.iter().flat_map(ConcreteOrder::roots));
        for slab in &*self.slabs {
            roots.extend([
                slab.area.clone(),
                slab.concrete.clone(),
                slab.edges.straight.clone(),
                slab.edges.curved.clone(),
                slab.edges.strip.clone(),
            ]);
            roots.push(slab.edges.deep.clone());
            roots.extend(slab.sections());
            roots.extend(slab.openings.iter().map(|opening| opening.area.clone()));
            roots.extend(
                slab.steel()
                    .flat_map(|bars| [bars.placed.clone(), bars.weight.clone()]),
            );
            for dowels in &slab.dowels {
                roots.extend([dowels.count.clone(), dowels.holes.clone()]);
                roots.extend(dowels.adhesive.clone());
            }
            roots.extend(
                slab.border
                    .iter()
                    .flat_map(|border| [border.area.clone(), border.inside.clone()]),
            );
            roots.extend(slab.joints.iter().map(|joints| joints.length.clone()));
            roots.extend(slab.boxes.iter().flat_map(BoxQuantities::all));
        }
        roots
    }
}

/// Needs as they are gathered.
pub(super) struct List<'a> {
    pub ways: Ways<'a>,
    pub sets: Sets<'a>,
    pub needs: Vec<Need>,
    pub missing: Vec<Missing>,
    pub worked: &'a mut Worked,
}

impl List<'_> {
    /// Buys `parts` together: added up, then up to how the item is sold, once.
    pub fn buy(
        &mut self,
        item: &At<ItemKey>,
        name: &str,
        rule: &'static str,
        parts: &[(Section, Quantity)],
        placement: Option<usize>,
    ) {
        let parts: Vec<(Section, Quantity)> = parts
            .iter()
            .filter(|(_, part)| !part.value().is_zero())
            .cloned()
            .collect();
        let Some(selling) = self.ways.rules.selling.get(&item.value) else {
            return;
        };
        if parts.is_empty() {
            return;
        }
        let sets = self.sets;
        let quantity = self.worked.bought((&item.value, name), &parts, || {
            sets.settle(bought(name, rule, selling, &parts))
        });
        let shares = parts
            .iter()
            .map(|(section, part)| (*section, part.value()))
            .collect();
        self.needs.push(Need {
            item: NeedItem::Item(item.clone()),
            quantity,
            placement,
            shares,
        });
    }

    /// Buys `much` for these parts of the job.
    pub fn buy_for(
        &mut self,
        item: &At<ItemKey>,
        name: &str,
        rule: &'static str,
        much: Quantity,
        placement: Option<usize>,
        shares: Vec<(Section, Decimal)>,
    ) {
        let before = self.needs.len();
        self.buy(item, name, rule, &[(Section::Whole, much)], placement);
        if let Some(need) = self.needs.get_mut(before) {
            need.shares = shares;
        }
    }

    /// The item that stands for `role`; none when it is not charged or not known, which is noted.
    pub fn role(&mut self, role: Role) -> Option<At<ItemKey>> {
        match self.ways.rules.roles.get(&role) {
            Some(At {
                value: Some(key),
                place,
            }) => Some(At {
                value: key.clone(),
                place: *place,
            }),
            Some(At { value: None, .. }) => None,
            None => {
                self.missing.push(Missing::Role(role));
                None
            }
        }
    }

    /// Buys what stands for `role`, if there is anything to buy.
    pub fn buy_role(
        &mut self,
        role: Role,
        name: &str,
        rule: &'static str,
        parts: &[(Section, Quantity)],
        placement: Option<usize>,
    ) {
        if parts.iter().all(|(_, part)| part.value().is_zero()) {
            return;
        }
        if let Some(item) = self.role(role) {
            self.buy(&item, name, rule, parts, placement);
        }
    }

    pub fn rate(&mut self, task: &str) -> Option<At<crate::input::phrases::Ratio>> {
        let rate = self.ways.rules.rates.get(task).cloned();
        if rate.is_none() {
            self.missing.push(Missing::Rate(task.to_owned()));
        }
        rate
    }
}

/// All parts together, then up to how the item is sold.
fn bought(
    name: &str,
    rule: &'static str,
    selling: &Selling,
    parts: &[(Section, Quantity)],
) -> Quantity {
    let whole = if let [(_, one)] = parts {
        of(one)
    } else {
        sum(parts.iter().map(|(_, part)| part))
    };
    let stepped = if selling.step.is_zero() {
        whole
    } else {
        whole.up_to(
            Quantity::new(
                "sold in",
                Amount::new(selling.step, selling.unit),
                crate::trade::Working::Given(selling.place),
            )
            .as_term(),
        )
    };
    let bought = if stepped.value() < selling.smallest {
        let smallest = Amount::new(selling.smallest, selling.unit);
        let smallest = Quantity::given("at least", smallest, selling.place);
        largest(vec![stepped, of(&smallest)])
    } else {
        stepped
    };
    Quantity::by(rule, name, selling.unit, bought)
}
