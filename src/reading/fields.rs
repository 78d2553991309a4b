//! One table per kind of map says which keys it knows; readers of values walk by it.
//!
//! The same table feeds the reader, the "did you mean", the JSON Schema and the table of
//! keys in the guides, so that nothing is described twice.

use super::place::{At, Place};
use super::problem::{Problem, Problems};
use super::suggest;
use super::tree::{Entry, Node, Value};
use crate::values::Unreadable;
use std::str::FromStr;

/// One key of a map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    pub key: &'static str,
    /// A word or two: `length`, `percent`, `text`, `yes or no`, `list of photos`, `map`.
    pub kind: &'static str,
    /// What holds when the key is left out; `required` where it may not be.
    pub default: &'static str,
    pub meaning: &'static str,
    /// As it would be written after the colon.
    pub example: &'static str,
}

/// The keys of one kind of map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FieldTable {
    /// The trade's word for such a map, as in `a slab has no key ...`.
    pub name: &'static str,
    pub fields: &'static [Field],
}

impl FieldTable {
    pub fn field(&self, key: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.key == key)
    }

    /// A key with a value, to show what such a map looks like.
    fn example(&self) -> String {
        self.fields.first().map_or_else(String::new, |field| {
            format!("`{}: {}`", field.key, field.example)
        })
    }

    fn unknown_key(&self, entry: &Entry) -> (Problem, Option<&'static str>) {
        let keys = self.fields.iter().map(|field| field.key);
        let meant = suggest::closest(&entry.key, keys.clone());
        let help = match meant {
            Some(meant) => format!("did you mean `{meant}`?"),
            None => format!("its keys are {}", keys.collect::<Vec<_>>().join(", ")),
        };
        let message = format!("{} has no key `{}`", self.name, entry.key);
        let problem = Problem::new("unknown-key", message)
            .at(entry.key_place)
            .help(help);
        (problem, meant)
    }
}

/// The entries of one map, looked up by the keys of its table.
#[derive(Clone, Debug)]
pub struct Fields<'a> {
    table: &'static FieldTable,
    entries: &'a [Entry],
    heading: Place,
    /// Keys that were probably meant by unknown ones, so not worth a second problem.
    misspelt: Vec<&'static str>,
}

impl Node {
    /// The keys of a map, after reporting every key the table does not know.
    pub fn fields<'a>(
        &'a self,
        table: &'static FieldTable,
        problems: &mut Problems,
    ) -> Option<Fields<'a>> {
        let entries = match &self.value {
            _ if self.reported => return None,
            Value::Map(entries) => entries,
            other => {
                let found = other.described();
                let message = format!("{} is a group of keys, but this is {found}", table.name);
                let help = self
                    .space_after_colon()
                    .unwrap_or_else(|| format!("write keys below it, such as {}", table.example()));
                problems.push(
                    Problem::new("not-keys", message)
                        .at(self.shown())
                        .help(help),
                );
                return None;
            }
        };
        let mut misspelt = Vec::new();
        let unknown = |entry: &&Entry| !entry.node.reported && table.field(&entry.key).is_none();
        for entry in entries.iter().filter(unknown) {
            let (problem, meant) = table.unknown_key(entry);
            problems.push(problem);
            misspelt.extend(meant);
        }
        Some(Fields {
            table,
            entries,
            heading: self.heading,
            misspelt,
        })
    }
}

impl<'a> Fields<'a> {
    /// A group of keys that nobody wrote: every key has its usual value.
    pub fn empty(table: &'static FieldTable, heading: Place) -> Self {
        Fields {
            table,
            entries: &[],
            heading,
            misspelt: Vec::new(),
        }
    }

    /// Where the group begins: its key, or the file's first line.
    pub fn heading(&self) -> Place {
        self.heading
    }

    /// The value of `key`, or the default its table names, at the group's place.
    pub fn usual<T>(&self, key: &str, problems: &mut Problems) -> Option<At<T>>
    where
        T: FromStr<Err = Unreadable>,
    {
        if self.node(key).is_some() {
            return self.read(key, problems);
        }
        let field = self.table.field(key)?;
        let Ok(value) = field.default.parse() else {
            unreachable!(
                "a test reads every default of every table: `{}`",
                field.default
            )
        };
        Some(At {
            value,
            place: self.heading,
        })
    }

    /// The value of a key of the table, if it was written, be it empty.
    pub fn node(&self, key: &str) -> Option<&'a Node> {
        debug_assert!(
            self.table.field(key).is_some(),
            "`{key}` is not in {}",
            self.table.name
        );
        let entry = self.entries.iter().find(|entry| entry.key == key);
        entry.map(|entry| &entry.node)
    }

    /// The value of a key that has to be there.
    pub fn required(&self, key: &str, problems: &mut Problems) -> Option<&'a Node> {
        let node = self.node(key);
        if node.is_none() && !self.misspelt.contains(&key) {
            let message = format!("{} needs a key `{key}`", self.table.name);
            let mut problem = Problem::new("missing-key", message).at(self.heading);
            if let Some(field) = self.table.field(key) {
                problem = problem.help(format!("write, for example, `{key}: {}`", field.example));
            }
            problems.push(problem);
        }
        node
    }

    /// The value of a key that may be left out.
    pub fn read<T>(&self, key: &str, problems: &mut Problems) -> Option<At<T>>
    where
        T: FromStr<Err = Unreadable>,
    {
        parsed(&self.text(key, problems)?, problems)
    }

    /// The value of a key that has to be there.
    pub fn need<T>(&self, key: &str, problems: &mut Problems) -> Option<At<T>>
    where
        T: FromStr<Err = Unreadable>,
    {
        self.required(key, problems)?;
        self.read(key, problems)
    }

    /// The text of a key that may be left out.
    pub fn text(&self, key: &str, problems: &mut Problems) -> Option<At<String>> {
        let node = self.node(key)?;
        let text = node.text(&format!("`{key}`"), problems);
        text.map(|text| At {
            value: text.to_owned(),
            place: node.place,
        })
    }

    /// `yes` or `no`; YAML's own `true` and `false` will do.
    pub fn yes(&self, key: &str, problems: &mut Problems) -> Option<At<bool>> {
        let text = self.text(key, problems)?;
        let value = match text.value.as_str() {
            "yes" | "Yes" | "YES" | "true" | "True" | "TRUE" => true,
            "no" | "No" | "NO" | "false" | "False" | "FALSE" => false,
            other => {
                let message = format!("`{key}` is yes or no, not `{other}`");
                let problem = Problem::new("not-yes-or-no", message).at(text.place);
                problems.push(problem.help(format!("write `{key}: yes` or `{key}: no`")));
                return None;
            }
        };
        Some(At {
            value,
            place: text.place,
        })
    }
}

/// Parses text already read, and puts what the value type says at its place.
fn parsed<T>(text: &At<String>, problems: &mut Problems) -> Option<At<T>>
where
    T: FromStr<Err = Unreadable>,
{
    match text.value.parse() {
        Ok(value) => Some(At {
            value,
            place: text.place,
        }),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(text.place));
            None
        }
    }
}

#[cfg(test)]
mod tests;
