//! The lines of `remove`, `extra`, `set` and `options` as written.

use super::{
    Extra, ExtraWhat, OptionGroup, OptionItem, Removal, RemovalMaterial, SetTo, list, tables,
};
use crate::input::book::Class;
use crate::input::phrases::SizePhrase;
use crate::reading::{At, Entry, Node, Problem, Problems, Value};
use crate::values::Amount;

pub(super) fn removal(name: At<String>, node: &Node, problems: &mut Problems) -> Option<Removal> {
    let (size, material) = if node.is_map() {
        let fields = node.fields(&tables::REMOVAL, problems)?;
        let size = fields.need("size", problems);
        let of = fields.text("of", problems);
        let material = match of.as_ref().map(|at| at.value.as_str()) {
            None | Some("concrete") => RemovalMaterial::Concrete,
            Some("soil") => RemovalMaterial::Soil,
            Some(other) => {
                let place = of.as_ref().map_or(node.place, |at| at.place);
                problems.push(
                    Problem::new("unknown-word", format!("`of` is not `{other}`"))
                        .at(place)
                        .help("write `concrete` or `soil`"),
                );
                return None;
            }
        };
        (size?, material)
    } else {
        (
            At {
                value: node.read::<SizePhrase>(problems)?,
                place: node.place,
            },
            RemovalMaterial::Concrete,
        )
    };
    if matches!(
        size.value,
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. }
    ) {
        problems.push(
            Problem::new("bad-size", "a removal needs its depth too")
                .at(size.place)
                .help("write, for example, `22 ft x 3 ft x 4 in`"),
        );
        return None;
    }
    Some(Removal {
        name,
        size,
        material,
    })
}

pub(super) fn extra_what(node: &Node, problems: &mut Problems) -> Option<ExtraWhat> {
    if !node.is_map() {
        return node.read::<Amount>(problems).map(|value| {
            ExtraWhat::Item(At {
                value,
                place: node.place,
            })
        });
    }
    let fields = node.fields(&tables::LUMP, problems)?;
    let cost = fields.need("cost", problems);
    let class = match fields.text("class", problems) {
        None => Class::Subcontract,
        Some(word) => match Class::ALL
            .into_iter()
            .find(|class| class.name() == word.value)
        {
            Some(class) => class,
            None => {
                let names: Vec<&str> = Class::ALL.into_iter().map(Class::name).collect();
                problems.push(
                    Problem::new(
                        "unknown-class",
                        format!("`{}` is not a class of item", word.value),
                    )
                    .at(word.place)
                    .help(format!("use one of {}", names.join(", "))),
                );
                return None;
            }
        },
    };
    Some(ExtraWhat::Lump { cost: cost?, class })
}

pub(super) fn set(entry: &Entry, problems: &mut Problems) -> Option<SetTo> {
    let fields = entry.node.fields(&tables::SET, problems)?;
    let to = fields.need("to", problems);
    let because = fields
        .required("because", problems)
        .and_then(|_| fields.text("because", problems));
    Some(SetTo {
        name: At {
            value: entry.key.clone(),
            place: entry.key_place,
        },
        to: to?,
        because: because?.value,
    })
}

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

pub(super) fn option_item(
    name: At<String>,
    node: &Node,
    problems: &mut Problems,
) -> Option<OptionItem> {
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
