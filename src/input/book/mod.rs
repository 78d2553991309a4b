//! The price book: one supplier world, its items, dated prices, and rules of buying.

mod boxes;
pub mod diff;
pub mod edit;
pub mod faults;
pub mod import;
mod item;
mod rates;
mod rules;
mod same;
mod site;
mod steel;
pub mod tables;

use std::collections::{BTreeMap, BTreeSet};

pub use boxes::{BoxStock, StandsFor};
pub use item::{Basis, Class, Dated, Item, ItemKey, Wage};
pub use rates::{FIXED, Rates, rates_help};
pub use rules::{
    Adhesive, BarStock, BaseStock, BuggyHire, Cement, Charges, Color, Curing, DowelStock, Dumping,
    FiberBy, FiberStock, Filling, Finish, Hose, MeshStock, Mix, PumpHire, Returned, Role, Rules,
    Sealer, Selling, ShortCharge, ShortCount, ShortLoad, Supply, SurfaceItem, Surfaces, Winter,
};
pub use same::sells_alike;
pub use site::{SiteRule, work_unit};

use crate::reading::{At, Node, Place, Problem, Problems};
use crate::values::{Day, UnitPrice};

/// One supplier world.
#[derive(Clone, Debug)]
pub struct PriceBook {
    pub place: Place,
    pub name: String,
    /// The last day anyone has promised a price for.
    pub good_until: Option<At<Day>>,
    pub items: BTreeMap<ItemKey, Item>,
    /// Names of items that could not be read; they are not reported a second time as unknown.
    pub broken: BTreeSet<ItemKey>,
    pub holds: Vec<Hold>,
    pub rules: Rules,
}

/// A price promised for a job from its first to its last day, both counted.
#[derive(Clone, Debug)]
pub struct Hold {
    pub item: ItemKey,
    pub price: UnitPrice,
    /// The job it was promised for; none means any job.
    pub job: Option<String>,
    pub from: Option<Day>,
    pub until: Day,
    pub note: Option<String>,
    pub place: Place,
}

/// Reads the whole book; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Option<PriceBook> {
    let fields = node.fields(&tables::BOOK, problems).ok()?;
    let _ = <crate::reading::FormatOne as crate::reading::FromKey>::from_key(
        &fields, "format", problems,
    );
    let name = fields
        .required("book", problems)
        .ok()
        .and_then(|_| fields.read::<String>("book", problems));
    let good_until = fields.read("good until", problems);
    let (items, broken) = fields
        .required("items", problems)
        .ok()
        .map(|node| item::read_all(node, problems))
        .unwrap_or_default();
    let mut rules = rules::read(&fields, problems);
    rules.selling = items
        .iter()
        .map(|(key, item)| (key.clone(), item.selling.clone()))
        .collect();
    steel::check(&rules, problems);
    rules::check(&rules, problems);
    let knows = |key: &str| items.contains_key(key) || broken.contains(key);
    let holds = fields
        .node("holds")
        .map(|node| holds(node, problems))
        .unwrap_or_default();
    for (key, place) in rules
        .items_named()
        .chain(holds.iter().map(|hold| (hold.item.as_str(), hold.place)))
    {
        if !knows(key) {
            problems.push(unknown_item(key, items.keys().map(String::as_str)).at(place));
        }
    }
    rules::check_units(&rules, &items, problems);
    Some(PriceBook {
        place: fields.heading(),
        name: name?.value,
        good_until,
        items,
        broken,
        holds,
        rules,
    })
}

/// The message for a name the book does not have, with the nearest it does have.
pub fn unknown_item<'a>(key: &str, known: impl IntoIterator<Item = &'a str>) -> Problem {
    let problem = Problem::new(
        "unknown-price-item",
        format!("price book has no item `{key}`"),
    );
    match crate::reading::suggest::closest(key, known) {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None => problem.help("add it to `items` of the price book, with its unit and price"),
    }
}

fn holds(node: &Node, problems: &mut Problems) -> Vec<Hold> {
    let mut found = Vec::new();
    for one in node.items("`holds`", problems) {
        let Some(fields) = one.fields(&tables::HOLD, problems).ok() else {
            continue;
        };
        let item = fields
            .required("item", problems)
            .ok()
            .and_then(|_| fields.read::<String>("item", problems));
        let price = fields.need("price", problems).ok();
        let until: Option<At<Day>> = fields.need("until", problems).ok();
        let from = fields.read("from", problems).map(|at: At<Day>| at.value);
        let job = fields.read::<String>("job", problems).map(|at| at.value);
        let note = fields.read::<String>("note", problems).map(|at| at.value);
        let (Some(item), Some(price), Some(until)) = (item, price, until) else {
            continue;
        };
        if from.is_some_and(|from| until.value < from) {
            problems.push(
                Problem::new("dates-reversed", "this hold ends before it begins")
                    .at(until.place)
                    .help("check `from` and `until`"),
            );
        }
        found.push(Hold {
            item: item.value,
            price: price.value,
            job,
            from,
            until: until.value,
            note,
            place: item.place,
        });
    }
    found
}
