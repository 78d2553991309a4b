//! What the word after `explain` means: a number, a total, a line, an item, any quantity.

use crate::costing::{LineItem, Priced, Tier};
use crate::documents::views::office::{Sheet, cause, every, numbered};
use crate::reading::{Problem, suggest};
use crate::trade::Quantity;
use crate::trade::order::NeedItem;
use crate::trade::term::sum;

/// The most names offered for one that is not known.
const OFFERED: usize = 4;

/// Everything that `wanted` names in this estimate.
pub(super) fn find(priced: &Priced, wanted: &str) -> Option<Vec<Quantity>> {
    if let Some(number) = number(wanted) {
        let lines = numbered(&priced.lines);
        let line = lines.iter().find(|(own, _)| *own == number);
        return line.map(|(_, line)| vec![line.amount.clone()]);
    }
    // The first road that leads anywhere wins: a line of the cost before what it is made of.
    names(priced).into_iter().find_map(|road| {
        let found: Vec<Quantity> = road
            .into_iter()
            .filter(|(name, _)| name.to_lowercase() == wanted.trim().to_lowercase())
            .map(|(_, quantity)| quantity)
            .collect();
        (!found.is_empty()).then_some(found)
    })
}

/// `#3` or `3`.
fn number(wanted: &str) -> Option<usize> {
    wanted.trim().trim_start_matches('#').parse().ok()
}

type NamedQuantities = Vec<(String, Quantity)>;

/// Every name that can be asked for, in the order they are tried.
fn names(priced: &Priced) -> Vec<NamedQuantities> {
    let lines = &numbered(&priced.lines);
    let by = |name: &dyn Fn(&LineItem) -> String| -> NamedQuantities {
        lines
            .iter()
            .map(|(_, line)| (name(line), line.amount.clone()))
            .collect()
    };
    let items = priced.needs.needs.iter().filter_map(|need| {
        let NeedItem::Item(key) = &need.item else {
            return None;
        };
        let line = priced.lines.iter().find(|line| {
            line.quantity
                .as_ref()
                .is_some_and(|quantity| quantity.is(&need.quantity))
        })?;
        Some((key.value.clone(), line.amount.clone()))
    });
    let behind = every(priced).into_iter();
    vec![
        totals(lines),
        by(&|line| cause(&line.cause)),
        by(&|line| line.title.clone()),
        items.collect(),
        behind
            .map(|quantity| (quantity.name().to_owned(), quantity))
            .fold(NamedQuantities::new(), |mut once, (name, quantity)| {
                if !once.iter().any(|(known, _)| *known == name) {
                    once.push((name, quantity));
                }
                once
            }),
    ]
}

/// The totals as what they are: lines added up.
fn totals(lines: &[(usize, &LineItem)]) -> NamedQuantities {
    let total = |name: &'static str, sides: &[Tier]| {
        let parts = lines
            .iter()
            .filter(|(_, line)| sides.contains(&line.side))
            .map(|(_, line)| &line.amount);
        let quantity = Quantity::money("lines added up", name, sum(parts));
        (name.to_owned(), quantity)
    };
    let price = &[Tier::Direct, Tier::Indirect, Tier::Price];
    vec![
        total("direct cost", &[Tier::Direct]),
        total("cost", &[Tier::Direct, Tier::Indirect]),
        total("price", price),
        total("price before tax", price),
        total("tax", &[Tier::Tax]),
        total(
            "total",
            &[Tier::Direct, Tier::Indirect, Tier::Price, Tier::Tax],
        ),
    ]
}

/// The problem of a name that nobody answers to, with the near ones.
pub(super) fn unknown(sheet: &Sheet<'_>, wanted: &str) -> Problem {
    if let Some(number) = number(wanted) {
        let last = sheet.offer.quoted().lines.len();
        return Problem::new("unknown-line", format!("the cost has no line #{number}")).help(
            format!("its lines are #1 to #{last}; `flatwork cost` shows them"),
        );
    }
    let names = names(sheet.offer.quoted());
    let mut known: Vec<&str> = names
        .iter()
        .flatten()
        .map(|(name, _)| name.as_str())
        .collect();
    known.sort_unstable();
    known.dedup();
    let lower = wanted.to_lowercase();
    let mut near: Vec<&str> = Vec::new();
    while let Some(name) = suggest::closest(wanted, known.iter().copied()) {
        near.push(name);
        known.retain(|other| *other != name);
    }
    near.extend(
        known
            .iter()
            .filter(|name| !lower.is_empty() && name.to_lowercase().contains(&lower)),
    );
    near.truncate(OFFERED);
    let problem = Problem::new(
        "unknown-line",
        format!("this job has no line or quantity `{wanted}`"),
    );
    if near.is_empty() {
        return problem.help("`flatwork cost` and `flatwork takeoff` show the names");
    }
    let near: Vec<String> = near.iter().map(|name| format!("`{name}`")).collect();
    problem.help(format!("did you mean {}?", near.join(" or ")))
}
