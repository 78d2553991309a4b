//! Does a sprayed curing compound stand in the way of a sealer, or does a compound or a cover spot a color?

use std::sync::Arc;

use super::{Case, DECIDES, listed};
use crate::input::book::{Curing, Finish, Rules};
use crate::input::job::{Slab, Takeoff};
use crate::reading::{At, Problem};
use crate::tables::{Read, Source};
use crate::trade::curing::is_sealer;

/// A curing compound keeps a later sealer or coating from holding, unless it is removed.
const UNDER_SEALER: Source = Source::new(
    "a maker of both, quoted by the trade press",
    "",
    Read::Secondary,
);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // A choice may seal, color or cure otherwise.
    let rules = &case.book.rules;
    case.of_each(|job| {
        let slabs = job.slabs.iter();
        let own = slabs.filter_map(|slab| own_sealer(rules, slab).or_else(|| color(slab)));
        own.chain(bought_sealers(job, rules)).collect()
    })
}

fn is_sprayed(slab: &Slab) -> bool {
    slab.curing.value == Curing::Compound
}

/// Of the slab itself, or of the finish of its border.
fn own_sealer(rules: &Rules, slab: &Slab) -> Option<Problem> {
    let border = slab.border.as_ref().map(|border| &border.finish);
    let names = [Some(&slab.finish), border].into_iter().flatten();
    let comes_with = names.filter(|name| {
        let finish = rules.finishes.get(&name.value);
        finish.is_some_and(|finish| seals(finish, rules))
    });
    let sealed = slab.seal.iter().chain(comes_with).next();
    let sealed = sealed.filter(|_| is_sprayed(slab))?;
    let message = format!(
        "`{}` is cured with a compound and then sealed; a sealer does not hold on most compounds",
        slab.key
    );
    Some(
        Problem::new("compound-in-the-way", message)
            .at(sealed.place)
            .help(way_out()),
    )
}

fn seals(finish: &Finish, rules: &Rules) -> bool {
    let puts_on = |name: &str| is_sealer(name, rules);
    finish
        .seal
        .as_ref()
        .is_some_and(|seal| seal.value != "none")
        || finish.items.iter().any(|one| puts_on(&one.item.value))
}

fn way_out() -> String {
    format!(
        "say `curing: cover`, `wet` or `none` below the slab or its finish, or ask the maker whether the two go together; source: {UNDER_SEALER}; {DECIDES}"
    )
}

fn color(slab: &Slab) -> Option<Problem> {
    let color = slab.color.as_ref()?;
    let how = match slab.curing.value {
        Curing::Compound => "cured with a compound",
        Curing::Cover => "cured under a cover",
        Curing::Wet | Curing::None => return None,
    };
    let message = format!(
        "`{}` is colored and {how}, which may leave it spotted",
        slab.key
    );
    Some(Problem::new("spotted-color", message).at(color.place).help(format!(
        "say `curing: none` below the slab or its finish, with the coat that the maker of the color names among the `items` of the finish ({})",
        Source::PRACTICE
    )))
}

/// A sealer among the extras of a job, or bought by a rule of the owner's.
fn bought_sealers(job: &Takeoff, rules: &Rules) -> Vec<Problem> {
    let extras = job.head.extras.iter().chain(&job.added);
    let named = extras.map(|extra| (&extra.name, None));
    let by_rule = rules.also.values().filter_map(|rule| {
        let only = rule.only.as_ref().and_then(|only| only.slab.as_ref());
        Some((rule.buy.as_ref()?, only))
    });
    let all = named.chain(by_rule);
    let sealers = all.filter(|(item, _)| is_sealer(&item.value, rules));
    let answers = sealers.filter_map(|(item, only)| {
        let is_meant =
            |slab: &&Arc<Slab>| only.is_none_or(|only: &At<String>| only.value == slab.key);
        let meant: Vec<_> = job.slabs.iter().filter(is_meant).collect();
        // One that is cured otherwise may be the one that is sealed.
        if meant.iter().any(|slab| !is_sprayed(slab)) {
            return None;
        }
        let keys: Vec<&str> = meant.iter().map(|slab| slab.key.as_str()).collect();
        let message = format!(
            "`{}` goes over the curing compound on {}; a sealer does not hold on most compounds",
            item.value,
            listed(keys.iter().copied())
        );
        (!keys.is_empty()).then(|| {
            Problem::new("compound-in-the-way", message)
                .at(item.place)
                .help(way_out())
        })
    });
    answers.collect()
}
