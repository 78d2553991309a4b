//! What the customer may choose, and every combination of it.

use std::ops::RangeInclusive;

use super::written::changes;
use super::{Extra, SlabValues};
use crate::reading::At;
use crate::reading::keys::keys;

/// A question with answers of which at most one is taken; a single answer is tick or leave.
#[derive(Clone, Debug)]
pub struct OptionGroup {
    /// The question of a choose-one group; none for a single option.
    pub question: Option<String>,
    /// One answer has to be taken, and the first is the job as quoted.
    pub must_choose: bool,
    pub options: Vec<OptionItem>,
}

keys! {
    /// Work that is added, done otherwise or left out, if the customer likes.
    pub struct OptionItem in "an option" {
        ^ name: At<String>;
        add: Vec<Extra> = "add", none, "items of the book, or lumps", "[clear sealer: 540 sq ft]";
        change: Vec<Change> = "change" as "keys by slab", none,
            "slabs that are made otherwise: any value a slab and a kind can both have",
            "{patio: {finish: stamped, thickness: 5 in}}", by changes;
        /// Slabs, removals and extras by name.
        drop: Vec<At<String>> = "drop" as "list of names", none,
            "slabs, removals and extras that are left out", "[walk, old walk, topsoil]";
        says: Option<String> = "says", none, "one line for the customer", "Keeps out water and salt";
    }
}

/// A slab with other values than in the job as measured.
#[derive(Clone, Debug)]
pub struct Change {
    pub slab: At<String>,
    /// The keys that are written, where they stand.
    pub keys: Vec<At<String>>,
    pub values: SlabValues,
}

impl OptionGroup {
    /// The numbers a choice can have here; zero takes none.
    pub fn picks(&self) -> RangeInclusive<usize> {
        usize::from(self.must_choose)..=self.options.len()
    }

    /// The option of this number; none for zero.
    pub fn pick(&self, number: usize) -> Option<&OptionItem> {
        self.options.get(number.checked_sub(1)?)
    }
}

/// For each group, which option is taken; zero is none.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Choice(pub Vec<usize>);

impl Choice {
    /// Nothing is taken but the first answer where one has to be taken.
    pub fn as_quoted(groups: &[OptionGroup]) -> Self {
        Self(groups.iter().map(|group| *group.picks().start()).collect())
    }

    /// The options this choice takes, in the order they are written.
    pub fn taken<'a>(&self, groups: &'a [OptionGroup]) -> Vec<&'a OptionItem> {
        self.0
            .iter()
            .zip(groups)
            .filter_map(|(&number, group)| group.pick(number))
            .collect()
    }
}

/// The most combinations that are priced.
pub const MOST: usize = 64;

/// How many combinations there are; a number too large to count counts as the largest.
pub fn count(groups: &[OptionGroup]) -> usize {
    groups.iter().fold(1, |product, group| {
        product.saturating_mul(group.picks().count())
    })
}

/// Every combination, as quoted first.
pub fn choices(groups: &[OptionGroup]) -> Vec<Choice> {
    let mut all = vec![Choice(Vec::new())];
    for group in groups {
        all = all
            .into_iter()
            .flat_map(|choice| {
                let picks = group.picks();
                picks.map(move |pick| Choice([choice.0.clone(), vec![pick]].concat()))
            })
            .collect();
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::{FileId, Place};

    fn group(answers: usize, must_choose: bool) -> OptionGroup {
        let place = Place {
            file: FileId(0),
            start: 0,
            end: 0,
        };
        let option = |number: usize| OptionItem {
            name: At::new(number.to_string(), place),
            says: None,
            add: Vec::new(),
            change: Vec::new(),
            drop: Vec::new(),
        };
        OptionGroup {
            question: None,
            must_choose,
            options: (1..=answers).map(option).collect(),
        }
    }

    #[test]
    fn as_quoted_is_the_first_combination() {
        for groups in [
            vec![],
            vec![group(1, false), group(2, false)],
            vec![group(2, true), group(3, false), group(4, true)],
        ] {
            let all = choices(&groups);
            assert_eq!(all.len(), count(&groups));
            assert_eq!(all[0], Choice::as_quoted(&groups));
            assert_eq!(all.iter().min(), Some(&all[0]));
        }
    }

    #[test]
    fn none_is_no_answer_where_one_must_be_chosen() {
        let groups = [group(3, true)];
        assert_eq!(choices(&groups), [1, 2, 3].map(|pick| Choice(vec![pick])));
        assert_eq!(Choice(vec![2]).taken(&groups)[0].name.value, "2");
    }

    #[test]
    fn very_many_options_are_counted_as_very_many() {
        let groups: Vec<OptionGroup> = (0..200).map(|_| group(1, false)).collect();
        assert_eq!(count(&groups), usize::MAX);
    }
}
