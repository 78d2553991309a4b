//! What is said beside the figures: what to look at, and what could not be priced.

use std::collections::BTreeMap;

use crate::documents::views::reprice_page::Beside;

/// Quotes that are named where something is said of many.
const NAMED: usize = 5;

/// What is said of quotes, each once, with the numbers of those it is said of.
pub(super) fn beside<'a>(said: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<Beside> {
    let mut found: Vec<(&str, Vec<&str>)> = Vec::new();
    let mut places = BTreeMap::new();
    for (number, words) in said {
        let place = *places.entry(words).or_insert(found.len());
        match found.get_mut(place) {
            Some((_, numbers)) => numbers.push(number),
            None => found.push((words, vec![number])),
        }
    }
    let told = found.into_iter().map(|(words, numbers)| Beside {
        numbers: match numbers.len() {
            0..=NAMED => numbers.join(", "),
            many => format!("{} and {} more", numbers[..NAMED].join(", "), many - NAMED),
        },
        words: words.replace('`', ""),
    });
    told.collect()
}
