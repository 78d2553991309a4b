//! What the customer may choose, what each choice does to the total, and every combination.

use std::cmp::Ordering;

use super::around::short;
use super::phrases::capital;
use super::{Offering, english};
use crate::costing::Tier;
use crate::documents::views::quote::{
    ChoiceGroup, ChoiceItem, Choices, CombinationAmount, CombinationRow, Combinations,
};
use crate::input::job::{Choice, OptionGroup, OptionItem};
use crate::values::Money;

/// The most columns the table of combinations has.
const COLUMNS: usize = 4;

/// The total when exactly this is taken.
fn total(of: Offering<'_>, choice: &Choice) -> Money {
    of.offer.by_choice[choice].totals().total
}

pub(super) fn choices(of: Offering<'_>) -> Choices {
    let groups = &of.takeoff.options;
    let lead = match (
        groups.iter().any(|group| group.must_choose),
        groups.iter().all(|group| group.must_choose),
    ) {
        (false, _) => english::CHOICES_LEAD,
        (true, false) => english::CHOICES_LEAD_SOME,
        (true, true) => english::CHOICES_LEAD_ALL,
    };
    let taxed = match (taxed(of), of.takeoff.head.discounts.is_empty()) {
        (true, true) => " Prices include tax.",
        (true, false) => " Prices include tax, and what is taken off.",
        (false, true) => "",
        (false, false) => " From these prices is taken off what page 1 says.",
    };
    Choices {
        lead: format!("{lead}{taxed}"),
        groups: groups
            .iter()
            .enumerate()
            .map(|(i, one)| group(of, i, one))
            .collect(),
    }
}

fn taxed(of: Offering<'_>) -> bool {
    let lines = &of.offer.quoted().lines;
    lines.iter().any(|line| line.side == Tier::Tax)
}

fn group(of: Offering<'_>, number: usize, group: &OptionGroup) -> ChoiceGroup {
    let quoted = total(of, &of.offer.as_quoted);
    let items = group.options.iter().enumerate().map(|(i, option)| {
        let mut choice = of.offer.as_quoted.clone();
        choice.0[number] = i + 1;
        let with = total(of, &choice);
        ChoiceItem {
            title: option.name.value.clone(),
            description: option.says.clone().unwrap_or_default(),
            adds: if choice == of.offer.as_quoted {
                english::AS_QUOTED.to_owned()
            } else {
                difference(with - quoted)
            },
            new_total: with.plain(),
        }
    });
    ChoiceGroup {
        question: group.question.as_ref().map_or_else(
            || "One more thing:".to_owned(),
            |question| format!("{question}:"),
        ),
        how_many: match (group.must_choose, group.options.len()) {
            (true, _) => "tick one",
            (false, 1) => "tick or leave",
            (false, _) => "tick one at most",
        }
        .to_owned(),
        only_one: 1 < group.options.len(),
        items: items.collect(),
    }
}

/// What an option does to the total, below the head `adds`.
fn difference(adds: Money) -> String {
    match adds.cmp(&Money::ZERO) {
        Ordering::Greater => format!("+\u{a0}{}", adds.plain()),
        Ordering::Less => format!("takes off\u{a0}{}", (-adds).plain()),
        Ordering::Equal => "no change".to_owned(),
    }
}

/// Every total at once, where there is more than one question; the last question runs across.
pub(super) fn combinations(of: Offering<'_>) -> Option<Combinations> {
    let groups = &of.takeoff.options[..];
    let (last, others) = groups.split_last()?;
    if others.is_empty() {
        return None;
    }
    let across = last.picks().count() <= COLUMNS;
    let named = if across { others } else { groups };
    let rows = crate::input::job::choices(named).into_iter().map(|row| {
        let columns: Vec<Choice> = if across {
            last.picks()
                .map(|pick| Choice([row.0.clone(), vec![pick]].concat()))
                .collect()
        } else {
            vec![row.clone()]
        };
        let amounts = columns.iter().map(|choice| {
            let as_quoted = *choice == of.offer.as_quoted;
            let total = total(of, choice);
            CombinationAmount {
                text: if as_quoted {
                    total.to_string()
                } else {
                    total.plain()
                },
                as_quoted,
            }
        });
        CombinationRow {
            name: row_name(named, &row),
            amounts: amounts.collect(),
        }
    });
    let heads = if across {
        last.picks().map(|pick| head(last, pick)).collect()
    } else {
        vec![String::new()]
    };
    Some(Combinations {
        note: if taxed(of) { "tax included" } else { "" }.to_owned(),
        heads,
        rows: rows.collect(),
    })
}

fn row_name(groups: &[OptionGroup], row: &Choice) -> String {
    let taken = row.taken(groups).into_iter();
    let taken: Vec<String> = taken.map(|option| short(&option.name.value)).collect();
    match (taken.is_empty(), groups) {
        (false, _) => taken.join(" + "),
        (true, [only]) => without(only),
        (true, _) => "None of these".to_owned(),
    }
}

fn without(group: &OptionGroup) -> String {
    // Where work is done otherwise or left out, `no` and its title would say the wrong thing.
    let adds_only = |option: &OptionItem| option.change.is_empty() && option.drop.is_empty();
    if !group.options.iter().all(adds_only) {
        return "No change".to_owned();
    }
    let noun = match &group.question {
        Some(question) => question
            .split_whitespace()
            .next()
            .unwrap_or("choice")
            .trim_matches(',')
            .to_lowercase(),
        None => few_words(&group.options[0].name.value),
    };
    format!("No {noun}")
}

fn head(group: &OptionGroup, pick: usize) -> String {
    match group.pick(pick) {
        None => capital(&without(group)).replacen("No ", "no ", 1),
        Some(option) => {
            let words = few_words(&option.name.value);
            let negative = words.starts_with("no ") || words.starts_with("without ");
            if option.drop.is_empty() && !negative {
                format!("with {words}")
            } else {
                words
            }
        }
    }
}

/// Two words are enough for the head of a column; small ones before them say nothing.
fn few_words(title: &str) -> String {
    const SMALL: [&str; 5] = ["with", "a", "an", "the", "and"];
    let title = short(title).to_lowercase();
    let words = title
        .split_whitespace()
        .skip_while(|word| SMALL.contains(word));
    let words: Vec<&str> = words.collect();
    let many = match words[..] {
        ["no" | "without", ..] => 3,
        [_, "of" | "in" | "on" | "for" | "along", ..] => 1,
        _ => 2,
    };
    words[..words.len().min(many)].join(" ")
}

#[cfg(test)]
mod tests {
    use super::few_words;

    #[test]
    fn the_head_of_a_column_ends_where_it_makes_sense() {
        for (title, head) in [
            ("Washed pebble border, 12 in wide", "washed pebble"),
            ("A band of washed pebbles", "band"),
            ("Clear sealer on the patio", "clear sealer"),
            ("Sealer on the patio", "sealer"),
            ("No new walk to the shed", "no new walk"),
            ("Without a step", "without a step"),
            ("With the old edging kept", "old edging"),
        ] {
            assert_eq!(few_words(title), head, "{title}");
        }
    }
}
