//! What options ask for: every slab, removal and extra they name is there, and no two of them
//! make the same value of one slab differently at once.

use crate::input::job::written::options::{OptionGroup, OptionItem};
use crate::input::job::{Extra, Removal};
use crate::reading::{At, BrokenNames, Problem, Problems, suggest};

/// The names that options can speak of.
pub(super) struct OptionNames<'a> {
    pub slabs: Vec<&'a str>,
    pub removals: &'a [Removal],
    pub extras: &'a [Extra],
    /// Slabs with a problem of their own, not worth a second one.
    pub unsure: &'a BrokenNames,
}

impl OptionNames<'_> {
    fn is_slab(&self, name: &str) -> bool {
        self.slabs.contains(&name) || self.unsure.has(name)
    }

    fn is_removal(&self, name: &str) -> bool {
        self.removals.iter().any(|one| one.name.value == name)
    }

    fn is_extra(&self, name: &str) -> bool {
        self.extras.iter().any(|one| one.name.value == name)
    }
}

pub(super) fn check(groups: &[OptionGroup], named: &OptionNames<'_>, problems: &mut Problems) {
    for option in groups.iter().flat_map(|group| &group.options) {
        changed(option, named, problems);
        for name in &option.drop {
            dropped(name, named, problems);
        }
    }
    for (i, group) in groups.iter().enumerate() {
        for other in &groups[i + 1..] {
            for (one, another) in pairs(group, other) {
                clashes(one, another, problems);
            }
        }
    }
}

fn pairs<'a>(
    group: &'a OptionGroup,
    other: &'a OptionGroup,
) -> impl Iterator<Item = (&'a OptionItem, &'a OptionItem)> {
    let ones = group.options.iter();
    ones.flat_map(|one| other.options.iter().map(move |another| (one, another)))
}

fn changed(option: &OptionItem, named: &OptionNames<'_>, problems: &mut Problems) {
    for change in &option.change {
        let name = &change.slab;
        if !named.is_slab(&name.value) {
            let message = format!("this job has no slab `{}`", name.value);
            let problem = Problem::new("unknown-slab", message).at(name.place);
            problems.push(near(problem, &name.value, &named.slabs));
        } else if let Some(drop) = option.drop.iter().find(|drop| drop.value == name.value) {
            let message = format!(
                "`{}` both changes `{}` and drops it",
                option.name.value, name.value
            );
            problems.push(
                Problem::new("changed-and-dropped", message)
                    .at(name.place)
                    .also(drop.place, "dropped here")
                    .help("take one of the two out"),
            );
        }
    }
}

fn dropped(name: &At<String>, named: &OptionNames<'_>, problems: &mut Problems) {
    let kinds = [
        (named.is_slab(&name.value), "a slab"),
        (named.is_removal(&name.value), "a removal"),
        (named.is_extra(&name.value), "an extra"),
    ];
    let found: Vec<&str> = kinds
        .into_iter()
        .filter_map(|(is, what)| is.then_some(what))
        .collect();
    match found[..] {
        [_] => {}
        [] => {
            let mut names = named.slabs.clone();
            names.extend(named.removals.iter().map(|one| one.name.value.as_str()));
            names.extend(named.extras.iter().map(|one| one.name.value.as_str()));
            let message = format!("this job has no slab, removal or extra `{}`", name.value);
            let problem = Problem::new("nothing-to-drop", message).at(name.place);
            problems.push(near(problem, &name.value, &names));
        }
        _ => {
            let message = format!("`{}` is {}", name.value, found.join(" and "));
            problems.push(
                Problem::new("two-of-a-name", message)
                    .at(name.place)
                    .help("give each a name of its own, so that it is clear what is left out"),
            );
        }
    }
}

fn near(problem: Problem, name: &str, names: &[&str]) -> Problem {
    match suggest::closest(name, names.iter().copied()) {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None => problem.help(format!("it has {}", names.join(", "))),
    }
}

/// Both may be ticked together, and then a value would be two things at once.
fn clashes(one: &OptionItem, other: &OptionItem, problems: &mut Problems) {
    for change in &other.change {
        let same = one
            .change
            .iter()
            .filter(|first| first.slab.value == change.slab.value);
        for (first, key) in same.flat_map(|first| change.keys.iter().map(move |key| (first, key))) {
            let Some(before) = first.keys.iter().find(|before| before.value == key.value) else {
                continue;
            };
            let message = format!(
                "`{}` and `{}` both change the {} of `{}`, and a customer may tick both",
                one.name.value, other.name.value, key.value, change.slab.value
            );
            problems.push(
                Problem::new("options-clash", message)
                    .at(key.place)
                    .also(before.place, "the other one")
                    .help("put the two under one `choose one`, so that only one is taken"),
            );
        }
    }
}
