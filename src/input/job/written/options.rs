//! What the customer may choose, and every combination of it.

use std::ops::RangeInclusive;

use super::lists::Extra;
use crate::input::checks::{trips_planned, written};
use crate::input::slab_values::SlabValues;
use crate::reading::keys::keys;
use crate::reading::{
    At, Below, Entry, Fields, FromLine, Group as _, Node, Problem, Problems, Read, Value,
};
use crate::values::Amount;

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
        change: Vec<SlabChange> = "change" as "keys by slab", none,
            "slabs that are made otherwise: any value a slab and a kind can both have",
            "{patio: {finish: stamped, thickness: 5 in}}", by changes;
        /// Slabs, removals and extras by name.
        drop: Vec<At<String>> = "drop" as "list of names", none,
            "slabs, removals and extras that are left out", "[walk, old walk, topsoil]";
        trips: Option<At<Amount>> = "trips" as "number", else "those of the job",
            "how often the crew comes to work with it; of several that say it, the last", "3",
            then written(trips_planned);
        says: Option<String> = "says", none, "one line for the customer", "Keeps out water and salt";
    }
}

/// A slab with other values than in the job as measured.
#[derive(Clone, Debug)]
pub struct SlabChange {
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

keys! {
    pub struct ChooseOne in "a choose-one group" {
        question: String = "choose one", required, "the question", "Border along the open edges";
        options: Vec<OptionItem> = "from" as "list of options", none,
            "at most one is taken", "[Pebble border: {add: [pebble border: 60 ft]}]";
        must_choose: Option<At<bool>> = "must choose", usual "no",
            "one has to be taken; the first is counted in the job as quoted", "yes";
    }
}

impl FromLine for OptionItem {
    const BELOW: Below = Below::Each(&[Self::TABLE]);

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        node.group_called(name, problems)
    }
}

/// Every combination is priced and printed, so there is a most.
pub fn groups(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<OptionGroup> {
    let Some(node) = job.node(key) else {
        return Vec::new();
    };
    let items = node.items("`options`", problems).into_iter();
    let groups: Vec<OptionGroup> = items
        .filter_map(|item| group(item, problems).ok())
        .collect();
    let many = match count(&groups) {
        0..=MOST => return groups,
        usize::MAX => "far too many".to_owned(),
        many => many.to_string(),
    };
    let message = format!("these options make {many} combinations, and each is priced");
    problems.push(Problem::new("too-many-options", message).at(node.place).help(format!(
        "{MOST} at most: put those that exclude each other under `choose one`, or make a second quote"
    )));
    groups
}

fn group(node: &Node, problems: &mut Problems) -> Read<OptionGroup> {
    let own = |entry: &Entry| ChooseOne::TABLE.field(&entry.key).is_some();
    if matches!(&node.value, Value::Map(entries) if entries.iter().any(own)) {
        return choose_one(node, problems);
    }
    let entries = node.entries("each option", problems);
    let [entry] = entries[..] else {
        let message = "an option has one name, which the customer reads";
        let problem = Problem::new("not-one-name", message).at(node.place);
        let help = "start each option with a dash, and indent what belongs to it";
        return Err(problems.push(problem.help(help)));
    };
    let before = problems.len();
    let option: OptionItem = entry.node.group_called(entry.name(), problems)?;
    if problems.len() == before {
        check_empty(&option, problems);
    }
    Ok(OptionGroup {
        question: None,
        must_choose: false,
        options: vec![option],
    })
}

fn choose_one(node: &Node, problems: &mut Problems) -> Read<OptionGroup> {
    let before = problems.len();
    let ChooseOne {
        question,
        options,
        must_choose,
    } = node.group(problems)?;
    let must_choose = must_choose.filter(|must| must.value);
    if problems.len() == before {
        if options.is_empty() {
            let message = "this group has nothing to choose from";
            let problem = Problem::new("no-options", message).at(node.place);
            problems.push(problem.help("list the options under `from`"));
        }
        // One answer to a question that has to be answered may be the job as it is written.
        let empty = options.iter().filter(|option| is_empty(option));
        for option in empty.skip(usize::from(must_choose.is_some())) {
            check_empty(option, problems);
        }
    }
    if let Some(must) = &must_choose
        && options.len() == 1
        && problems.len() == before
    {
        let message = "one has to be chosen, and there is only one";
        let problem = Problem::new("no-choice", message).at(must.place);
        let help = "add another under `from`, or write this one into the job itself";
        problems.push(problem.help(help));
    }
    Ok(OptionGroup {
        question: Some(question),
        must_choose: must_choose.is_some(),
        options,
    })
}

fn is_empty(option: &OptionItem) -> bool {
    let unchanged = option.change.iter().all(|change| change.keys.is_empty());
    option.add.is_empty() && unchanged && option.drop.is_empty()
}

fn check_empty(option: &OptionItem, problems: &mut Problems) {
    if is_empty(option) {
        let message = format!("`{}` changes nothing of the job", option.name.value);
        problems.push(Problem::new("empty-option", message).at(option.name.place).help(
            "say what it brings: `add` items, `change` values of slabs, or `drop` what is left out; one answer under `must choose: yes` may leave the job as it is written",
        ));
    }
}

fn changes(of: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<SlabChange> {
    let mut changes = Vec::new();
    let entries = of.node(key).map(|node| node.entries("`change`", problems));
    for entry in entries.into_iter().flatten() {
        if let Ok(values) = entry.node.group::<SlabValues>(problems) {
            changes.push(SlabChange {
                slab: entry.name(),
                keys: keys_of(&entry.node),
                values,
            });
        }
    }
    changes
}

fn keys_of(node: &Node) -> Vec<At<String>> {
    let Value::Map(entries) = &node.value else {
        return Vec::new();
    };
    entries.iter().map(Entry::name).collect()
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
            trips: None,
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
