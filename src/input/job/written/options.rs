//! The options of a takeoff: single ones, and groups of which one is chosen.

use crate::input::job::SlabValues;
use crate::input::job::options::{Change, MOST, OptionGroup, OptionItem, count};
use crate::reading::keys::keys;
use crate::reading::{
    At, Entry, Fields, FromLine, Group as _, Node, Problem, Problems, Read, Value,
};

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
    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        node.group_called(name, problems)
    }
}

/// Every combination is priced and printed, so there is a most.
#[expect(clippy::unnecessary_wraps, reason = "a reader of a key")]
pub(super) fn options(
    job: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<OptionGroup>> {
    let Some(node) = job.node(key) else {
        return Ok(Vec::new());
    };
    let items = node.items("`options`", problems).into_iter();
    let groups: Vec<OptionGroup> = items
        .filter_map(|item| group(item, problems).ok())
        .collect();
    let many = match count(&groups) {
        0..=MOST => return Ok(groups),
        usize::MAX => "far too many".to_owned(),
        many => many.to_string(),
    };
    let message = format!("these options make {many} combinations, and each is priced");
    problems.push(Problem::new("too-many-options", message).at(node.place).help(format!(
        "{MOST} at most: put those that exclude each other under `choose one`, or make a second quote"
    )));
    Ok(groups)
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

#[expect(clippy::unnecessary_wraps, reason = "a reader of a key")]
pub(in crate::input::job) fn changes(
    option: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<Change>> {
    let mut changes = Vec::new();
    let entries = option
        .node(key)
        .map(|node| node.entries("`change`", problems));
    for entry in entries.into_iter().flatten() {
        if let Ok(values) = entry.node.group::<SlabValues>(problems) {
            changes.push(Change {
                slab: entry.name(),
                keys: keys(&entry.node),
                values,
            });
        }
    }
    Ok(changes)
}

fn keys(node: &Node) -> Vec<At<String>> {
    let Value::Map(entries) = &node.value else {
        return Vec::new();
    };
    entries.iter().map(Entry::name).collect()
}
