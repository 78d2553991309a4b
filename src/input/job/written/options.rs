//! The options of a takeoff: single ones, and groups of which one is chosen.

use super::lists::{extra_what, list, texts};
use crate::input::job::options::{Change, OptionGroup, OptionItem};
use crate::input::job::takeoff::Extra;
use crate::input::job::{SlabValues, tables};
use crate::reading::Group as _;
use crate::reading::{At, Entry, Fields, Node, Problem, Problems, Value};

pub(super) fn option_group(node: &Node, problems: &mut Problems) -> Option<OptionGroup> {
    let own = |entry: &Entry| tables::CHOOSE_ONE.field(&entry.key).is_some();
    if matches!(&node.value, Value::Map(entries) if entries.iter().any(own)) {
        return choose_one(node, problems);
    }
    let entries = node.entries("each option", problems);
    let [entry] = entries[..] else {
        problems.push(
            Problem::new(
                "not-one-name",
                "an option has one name, which the customer reads",
            )
            .at(node.place)
            .help("start each option with a dash, and indent what belongs to it"),
        );
        return None;
    };
    let name = At {
        value: entry.key.clone(),
        place: entry.key_place,
    };
    let before = problems.len();
    let option = option_item(name, &entry.node, problems)?;
    if problems.len() == before {
        check_empty(&option, problems);
    }
    Some(OptionGroup {
        question: None,
        must_choose: false,
        options: vec![option],
        place: node.place,
    })
}

fn choose_one(node: &Node, problems: &mut Problems) -> Option<OptionGroup> {
    let fields = node.fields(&tables::CHOOSE_ONE, problems).ok()?;
    let question = fields
        .required("choose one", problems)
        .ok()
        .and_then(|_| fields.read::<String>("choose one", problems));
    let must_choose = fields.yes("must choose", problems);
    let before = problems.len();
    let options = list(&fields, "from", problems, option_item);
    if options.is_empty() && problems.len() == before {
        problems.push(
            Problem::new("no-options", "this group has nothing to choose from")
                .at(node.place)
                .help("list the options under `from`"),
        );
    }
    // One answer to a question that has to be answered may be the job as it is written.
    let as_written = must_choose.as_ref().is_some_and(|must| must.value);
    if problems.len() == before {
        let empty = options.iter().filter(|option| is_empty(option));
        for option in empty.skip(usize::from(as_written)) {
            check_empty(option, problems);
        }
    }
    if let Some(must) = must_choose.as_ref().filter(|must| must.value)
        && options.len() == 1
        && problems.len() == before
    {
        problems.push(
            Problem::new("no-choice", "one has to be chosen, and there is only one")
                .at(must.place)
                .help("add another under `from`, or write this one into the job itself"),
        );
    }
    Some(OptionGroup {
        question: Some(question?.value),
        must_choose: must_choose.is_some_and(|must| must.value),
        options,
        place: node.place,
    })
}

fn option_item(name: At<String>, node: &Node, problems: &mut Problems) -> Option<OptionItem> {
    let fields = node.fields(&tables::OPTION, problems).ok()?;
    let says = fields.read::<String>("says", problems).map(|at| at.value);
    let add = list(&fields, "add", problems, |name, node, problems| {
        Some(Extra {
            what: extra_what(node, problems)?,
            name,
        })
    });
    let change = changes(&fields, problems);
    let drop = fields
        .node("drop")
        .map(|node| texts(node, problems))
        .unwrap_or_default();
    Some(OptionItem {
        title: name.value,
        says,
        place: name.place,
        add,
        change,
        drop,
    })
}

fn is_empty(option: &OptionItem) -> bool {
    let unchanged = option.change.iter().all(|change| change.keys.is_empty());
    option.add.is_empty() && unchanged && option.drop.is_empty()
}

fn check_empty(option: &OptionItem, problems: &mut Problems) {
    if is_empty(option) {
        let message = format!("`{}` changes nothing of the job", option.title);
        problems.push(Problem::new("empty-option", message).at(option.place).help(
            "say what it brings: `add` items, `change` values of slabs, or `drop` what is left out; one answer under `must choose: yes` may leave the job as it is written",
        ));
    }
}

fn changes(fields: &Fields<'_>, problems: &mut Problems) -> Vec<Change> {
    let Some(node) = fields.node("change") else {
        return Vec::new();
    };
    let entries = node.entries("`change`", problems).into_iter();
    entries
        .filter_map(|entry| {
            let fields = entry.node.fields(&tables::CHANGE, problems).ok()?;
            Some(Change {
                slab: At {
                    value: entry.key.clone(),
                    place: entry.key_place,
                },
                keys: keys(&entry.node),
                values: SlabValues::read(&fields, problems).ok()?,
            })
        })
        .collect()
}

fn keys(node: &Node) -> Vec<At<String>> {
    let Value::Map(entries) = &node.value else {
        return Vec::new();
    };
    let key = |entry: &Entry| At {
        value: entry.key.clone(),
        place: entry.key_place,
    };
    entries.iter().map(key).collect()
}
