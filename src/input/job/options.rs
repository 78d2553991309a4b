//! What the customer may choose, and every combination of it.

use super::Extra;
use crate::reading::Place;

/// A question with answers of which at most one is taken; a single answer is tick or leave.
#[derive(Clone, Debug)]
pub struct OptionGroup {
    /// The question of a choose-one group; none for a single option.
    pub question: Option<String>,
    pub options: Vec<OptionItem>,
    pub place: Place,
}

#[derive(Clone, Debug)]
pub struct OptionItem {
    pub title: String,
    pub says: Option<String>,
    pub add: Vec<Extra>,
}

/// For each group, which option is taken; zero is none. All zero is the job as quoted.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Choice(pub Vec<usize>);

impl Choice {
    pub fn as_quoted(groups: &[OptionGroup]) -> Self {
        Self(vec![0; groups.len()])
    }

    /// The extras that come with this choice.
    pub fn extras<'a>(&'a self, groups: &'a [OptionGroup]) -> impl Iterator<Item = &'a Extra> {
        let taken = self
            .0
            .iter()
            .zip(groups)
            .filter_map(|(&pick, group)| pick.checked_sub(1).map(|i| &group.options[i]));
        taken.flat_map(|option| &option.add)
    }
}

/// The most combinations that are priced.
pub const MOST: usize = 64;

/// Every combination, as quoted first.
pub fn choices(groups: &[OptionGroup]) -> Vec<Choice> {
    let mut all = vec![Choice(Vec::new())];
    for group in groups {
        all = all
            .into_iter()
            .flat_map(|choice| {
                (0..=group.options.len())
                    .map(move |pick| Choice([choice.0.clone(), vec![pick]].concat()))
            })
            .collect();
    }
    all
}
