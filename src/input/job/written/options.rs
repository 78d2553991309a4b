//! The options of a takeoff: single ones, and groups of which one is chosen.

use super::lists::{extra_what, list};
use crate::input::job::options::{OptionGroup, OptionItem};
use crate::input::job::tables;
use crate::input::job::takeoff::Extra;
use crate::reading::{At, Node, Problem, Problems, Value};

pub(super) fn option_group(node: &Node, problems: &mut Problems) -> Option<OptionGroup> {
    let is_group = matches!(&node.value, Value::Map(entries) if entries.iter().any(|entry| entry.key == "choose one" || entry.key == "from"));
    if is_group {
        let fields = node.fields(&tables::CHOOSE_ONE, problems)?;
        let question = fields
            .required("choose one", problems)
            .and_then(|_| fields.text("choose one", problems));
        let options = list(&fields, "from", problems, option_item);
        if options.is_empty() {
            problems.push(
                Problem::new("no-options", "this group has nothing to choose from")
                    .at(node.place)
                    .help("list the options under `from`"),
            );
        }
        return Some(OptionGroup {
            question: Some(question?.value),
            options,
            place: node.place,
        });
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
    let option = option_item(name, &entry.node, problems)?;
    Some(OptionGroup {
        question: None,
        options: vec![option],
        place: node.place,
    })
}

fn option_item(name: At<String>, node: &Node, problems: &mut Problems) -> Option<OptionItem> {
    let fields = node.fields(&tables::OPTION, problems)?;
    let says = fields.text("says", problems).map(|at| at.value);
    fields.required("add", problems)?;
    let add = list(&fields, "add", problems, |name, node, problems| {
        Some(Extra {
            what: extra_what(node, problems)?,
            name,
        })
    });
    Some(OptionItem {
        title: name.value,
        says,
        add,
    })
}
