//! The price book: one supplier world, its items, dated prices, and rules of buying.

mod also;
mod boxes;
mod charges;
mod checks;
mod class;
pub mod diff;
mod dowels;
pub mod edit;
pub mod faults;
mod group;
mod hire;
pub mod import;
mod item;
mod rates;
mod roles;
mod rules;
mod same;
mod site;
mod stage;
mod stock;
mod supply;
mod surfaces;
mod uses;
mod ways;

pub use also::{Also, Known, OnceA, Only, all_known, in_order, is_late, known};
pub use boxes::{BoxStock, StandsFor};
pub use class::Class;
pub use dowels::DowelStock;
pub use group::CostGroup;
pub use hire::PumpHire;
pub use item::{Basis, Dated, Item, ItemKey, Selling};
pub use rates::{FIXED as TASKS, rates_help, units as task_units};
pub use roles::{Among, Purpose, Role};
pub use rules::Rules;
pub use same::sells_alike;
pub use site::{SiteRule, work_unit};
pub use stage::Stage;
pub use stock::{BarStock, Cement, Dumping, FiberBy, MeshStock, Mix};
pub use supply::{Called, Filling, ShortCharge, ShortCount, ShortLoad, Supply};
pub use surfaces::{Curing, Finish, Sealer, SurfaceItem};
pub use ways::Ways;

use crate::reading::keys::keys;
use crate::reading::{At, Fields, FormatOne, Named, Node, Place, Problem, Problems, Read, suggest};
use crate::values::{Day, UnitPrice};

keys! {
    /// One supplier world.
    pub struct PriceBook in "the price book" {
        name: String = "book", required, "name of this supplier world; no customer sees it",
            "River Road plant and yard", by name;
        _format: FormatOne = "format", usual "1", "version of this file's keys", "1";
        /// The last day anyone has promised a price for.
        good_until: Option<At<Day>> = "good until", none,
            "the last day a price is promised for", "2026-12-31";
        items: Named<Item> = "items" as "keys by item", required,
            "what you buy, hire, haul or do, with dated prices",
            "{crushed stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}}";
        holds: Vec<Hold> = "holds" as "list", none, "prices promised for a job until a day",
            "[{item: ready-mix, price: 174.00, until: 2026-06-30}]", by holds, of Hold;
        .. place: Place;
        .. rules: Rules;
    } then consistent
}

keys! {
    /// A price promised for a job from its first to its last day, both counted.
    pub struct Hold in "a hold" {
        item: At<ItemKey> = "item" as "name", required, "an item of this book", "ready-mix 4000 air";
        price: UnitPrice = "price" as "amount", required, "the promised price", "174.00";
        /// None means any job.
        job: Option<String> = "job" as "name", none,
            "the `job` of a takeoff; left out, it serves any job", "Garden patio";
        from: Option<Day> = "from", none, "first day it counts", "2026-04-15";
        until: Day = "until", required, "last day it counts, tested against the pour", "2026-06-30";
        note: Option<String> = "note", none, "who promised it", "promised by the dispatcher";
    } then begins_before_it_ends
}

/// Reads the whole book; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Read<PriceBook> {
    node.group(problems)
}

/// A book without a name is looked at all the same.
fn name(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> String {
    let name = fields.need(key, problems);
    name.map_or_else(|_| String::new(), |name| name.value)
}

fn holds(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<Hold> {
    let mut found = Vec::new();
    if let Some(node) = fields.node(key) {
        for one in node.items("`holds`", problems) {
            found.extend(one.group::<Hold>(problems));
        }
    }
    found
}

fn begins_before_it_ends(hold: Hold, fields: &Fields<'_>, problems: &mut Problems) -> Hold {
    if hold.from.is_some_and(|from| hold.until < from)
        && let Some(until) = fields.node("until")
    {
        let problem = Problem::new("dates-reversed", "this hold ends before it begins");
        problems.push(problem.at(until.place).help("check `from` and `until`"));
    }
    hold
}

fn consistent(mut book: PriceBook, _: &Fields<'_>, problems: &mut Problems) -> PriceBook {
    let items = book.items.iter();
    book.rules.selling.0 = items
        .map(|(key, item)| (key.clone(), item.selling()))
        .collect();
    let mut in_order: Vec<&mut Item> = book.items.values_mut().collect();
    in_order.sort_by_key(|item| item.place);
    group::numbered(in_order.into_iter().filter_map(|item| item.group.as_mut()));
    checks::check(&book.rules, problems);
    for (key, place) in book.items_named() {
        let _ = book.item(key, place, problems);
    }
    uses::check(&book.rules, &book.items, problems);
    also::check(&book.rules, problems);
    book
}

impl PriceBook {
    /// A group by its name, as the book writes it if it has it.
    pub fn group(&self, name: &str) -> CostGroup {
        let said = CostGroup::said(name);
        let mut of_items = self.items.values().filter_map(|item| item.group.as_ref());
        of_items.find(|one| **one == said).cloned().unwrap_or(said)
    }

    /// The item of a name that stands at `place`.
    pub fn item(&self, key: &str, place: Place, problems: &mut Problems) -> Read<&Item> {
        self.items
            .known(key, problems, || self.unknown_item(key).at(place))
    }

    /// The message for a name the book does not have, with the nearest it does have.
    pub fn unknown_item(&self, key: &str) -> Problem {
        let message = format!("price book has no item `{key}`");
        let problem = Problem::new("unknown-price-item", message);
        match suggest::closest(key, self.items.keys().map(String::as_str)) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None => problem.help("add it to `items` of the price book, with its unit and price"),
        }
    }

    /// Every item that rules and holds name, with the place of the name.
    fn items_named(&self) -> impl Iterator<Item = (&str, Place)> {
        let used = uses::uses(&self.rules).into_iter();
        let held = self.holds.iter().map(|hold| &hold.item);
        used.map(|one| (one.key, one.place))
            .chain(held.map(|item| (item.value.as_str(), item.place)))
    }
}
