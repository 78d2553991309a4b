//! A list or map whose end has not been seen, and how values come to lie in it.

use crate::reading::place::Place;
use crate::reading::problem::{Problem, Problems, Read, Reported};
use crate::reading::tree::{Entry, Node, Value};
use std::collections::BTreeMap;

pub(super) struct Open {
    /// Where it starts; not empty only for a bracket.
    pub(super) place: Place,
    pub(super) heading: Place,
    /// The number of its `&name`, or 0.
    pub(super) anchor: usize,
    pub(super) tagged: bool,
    pub(super) inside: Inside,
}

pub(super) enum Inside {
    List(Vec<Node>),
    Map {
        entries: Vec<Entry>,
        /// The key that still waits for its value, and its name if it can be used.
        key: Option<(Read<String>, Place)>,
        seen: BTreeMap<String, Place>,
    },
}

impl Inside {
    pub(super) fn list() -> Self {
        Inside::List(Vec::new())
    }

    pub(super) fn map() -> Self {
        Inside::Map {
            entries: Vec::new(),
            key: None,
            seen: BTreeMap::new(),
        }
    }
}

impl Open {
    pub(super) fn is_bracket(&self) -> bool {
        self.place.start < self.place.end
    }

    /// The key that waits for its value.
    pub(super) fn waiting_key(&self) -> Option<Place> {
        match &self.inside {
            Inside::Map { key, .. } => key.as_ref().map(|(_, place)| *place),
            Inside::List(_) => None,
        }
    }

    /// The value put in last.
    pub(super) fn last_value(&mut self) -> Option<&mut Node> {
        match &mut self.inside {
            Inside::List(items) => items.last_mut(),
            Inside::Map { key: Some(_), .. } => None,
            Inside::Map { entries, .. } => entries.last_mut().map(|entry| &mut entry.node),
        }
    }

    /// Takes an item, a key, or the value of the key taken before.
    pub(super) fn put(&mut self, mut node: Node, problems: &mut Problems) {
        let (entries, key, seen) = match &mut self.inside {
            Inside::List(items) => {
                items.push(node);
                return;
            }
            Inside::Map { entries, key, seen } => (entries, key, seen),
        };
        let Some((name, key_place)) = key.take() else {
            *key = Some((name_of(&node, problems), node.place));
            return;
        };
        let Ok(name) = name else { return };
        node.heading = key_place;
        if node.is_nothing() && node.place.start == node.place.end {
            node.place = key_place;
        }
        if let Some(first) = seen.get(&name) {
            if !node.reported {
                let message = format!("`{name}` is written twice");
                let problem = Problem::new("duplicate-key", message).at(key_place);
                let problem = problem.also(*first, "first written here");
                problems.push(problem.help("keep one of the two"));
            }
            return;
        }
        seen.insert(name.clone(), key_place);
        entries.push(Entry {
            key: name,
            key_place,
            node,
        });
    }

    /// The finished list or map; `end` is where its bracket closes, if it has one.
    pub(super) fn close(self, end: Place) -> Node {
        let bracket = self.is_bracket().then_some(end);
        let (value, last) = match self.inside {
            Inside::List(items) => {
                let last = items.last().map(|node| node.place);
                (Value::List(items), last)
            }
            Inside::Map { entries, .. } => {
                let last = entries.last();
                let last = last.map(|entry| entry.key_place.to(entry.node.place));
                (Value::Map(entries), last)
            }
        };
        // An indented block ends where the last thing in it does, not before the next key.
        let last = bracket.or(last).unwrap_or(self.place);
        Node {
            place: self.place.to(last),
            heading: self.heading,
            value,
            reported: self.tagged,
        }
    }
}

/// A key is a word or two; YAML would also take a list, or nothing.
fn name_of(node: &Node, problems: &mut Problems) -> Read<String> {
    let problem = match &node.value {
        _ if node.reported => return Err(Reported::before()),
        Value::Text(text) if text == "<<" => {
            Problem::new("yaml-merge", "`<<` does not merge keys here").help("write the keys out")
        }
        Value::Text(text) => return Ok(text.clone()),
        other => {
            let message = format!("a key is a word or two, but this is {}", other.described());
            Problem::new("not-a-key", message).help("write a name before the colon")
        }
    };
    Err(problems.push(problem.at(node.place)))
}
