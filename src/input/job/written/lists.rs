//! The lists of a takeoff: extras, overrides, and how any list is read.

use crate::input::book::Class;
use crate::input::job::tables;
use crate::input::job::takeoff::{ExtraWhat, Photo, SetTo};
use crate::reading::{At, Entry, Fields, Node, Problems};
use crate::values::Amount;

pub(super) fn list<T>(
    fields: &Fields<'_>,
    key: &str,
    problems: &mut Problems,
    read: impl Fn(At<String>, &Node, &mut Problems) -> Option<T>,
) -> Vec<T> {
    let Some(node) = fields.node(key) else {
        return Vec::new();
    };
    let named = node.named(&format!("`{key}`"), problems);
    named
        .into_iter()
        .filter_map(|(name, node)| read(name, node, problems))
        .collect()
}

pub(super) fn extra_what(node: &Node, problems: &mut Problems) -> Option<ExtraWhat> {
    if !node.is_map() {
        return node.read::<Amount>(problems).ok().map(|value| {
            ExtraWhat::Item(At {
                value,
                place: node.place,
            })
        });
    }
    let fields = node.fields(&tables::LUMP, problems).ok()?;
    let cost = fields.need("cost", problems).ok();
    let class: Option<At<Class>> = fields.need("class", problems).ok();
    Some(ExtraWhat::Lump {
        cost: cost?,
        class: class?.value,
    })
}

pub(super) fn set(entry: &Entry, problems: &mut Problems) -> Option<SetTo> {
    let fields = entry.node.fields(&tables::SET, problems).ok()?;
    let to = fields.need("to", problems).ok();
    let because = fields
        .required("because", problems)
        .ok()
        .and_then(|_| fields.read::<String>("because", problems));
    Some(SetTo {
        name: At {
            value: entry.key.clone(),
            place: entry.key_place,
        },
        to: to?,
        because: because?.value,
    })
}

pub(super) fn texts(node: &Node, problems: &mut Problems) -> Vec<At<String>> {
    let items = node.items("this", problems);
    items
        .into_iter()
        .filter_map(|item| {
            item.text("a line of the list", problems)
                .ok()
                .map(|text| At {
                    value: text.to_owned(),
                    place: item.place,
                })
        })
        .collect()
}

/// A path alone, or a path and what the customer reads below the picture.
pub(super) fn photos(fields: &Fields<'_>, problems: &mut Problems) -> Vec<Photo> {
    let Some(node) = fields.node("photos") else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for item in node.items("`photos`", problems) {
        if !item.is_map() {
            if let Some(text) = item.text("a photo", problems).ok() {
                found.push(Photo {
                    file: At {
                        value: text.to_owned(),
                        place: item.place,
                    },
                    caption: None,
                });
            }
            continue;
        }
        for entry in item.entries("a photo", problems) {
            if let Some(caption) = entry.node.text("what stands below a photo", problems).ok() {
                found.push(Photo {
                    file: At {
                        value: entry.key.clone(),
                        place: entry.key_place,
                    },
                    caption: Some(caption.to_owned()),
                });
            }
        }
    }
    found
}
