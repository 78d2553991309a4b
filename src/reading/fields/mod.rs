//! One table per kind of map says which keys it knows; readers of values walk by it.
//!
//! The same table feeds the reader, the "did you mean", the JSON Schema and the table of
//! keys in the guides, so that nothing is described twice.

use super::place::{At, Place};
use super::problem::{Problem, Problems, Read, Reported};
use super::suggest;
use super::tree::{Entry, Node, Value};
use super::written::Written;
use crate::values::Amount;

/// One key of a map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    pub key: &'static str,
    /// A word or two: `length`, `percent`, `text`, `yes or no`, `list of photos`, `map`.
    pub kind: &'static str,
    pub if_left_out: IfLeftOut,
    pub meaning: &'static str,
    /// As it would be written after the colon.
    pub example: &'static str,
    /// The keys below it, where it has some.
    pub below: Below,
}

/// The keys that stand below a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    Nothing,
    Keys(&'static FieldTable),
    /// Below each of its lines, or each name that the owner chose.
    Each(&'static [&'static FieldTable]),
}

/// What holds where a key is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum IfLeftOut {
    /// It may not be.
    Required,
    Nothing,
    /// This value, as if it had been written.
    Usual(&'static str),
    /// What these words say.
    Else(&'static str),
}

/// The keys of one kind of map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FieldTable {
    /// The trade's word for such a map, as in `a slab has no key ...`.
    pub name: &'static str,
    /// Tables whose keys belong to it too, in front of its own and behind them.
    pub before: &'static [&'static FieldTable],
    pub fields: &'static [Field],
    pub includes: &'static [&'static FieldTable],
}

impl FieldTable {
    /// Every key, in the order of the guide.
    pub fn all(&self) -> Vec<&'static Field> {
        let of = |tables: &[&Self]| tables.iter().flat_map(|table| table.all()).collect();
        let before: Vec<&'static Field> = of(self.before);
        [before, self.fields.iter().collect(), of(self.includes)].concat()
    }

    pub fn field(&self, key: &str) -> Option<&'static Field> {
        let own = self.fields.iter().find(|field| field.key == key);
        own.or_else(|| {
            let mut others = self.before.iter().chain(self.includes);
            others.find_map(|table| table.field(key))
        })
    }

    /// Tables of the keys below its keys, from the first to the last.
    #[cfg(feature = "inside")]
    pub fn below(&self) -> impl Iterator<Item = &'static Self> {
        self.all().into_iter().flat_map(|field| match field.below {
            Below::Nothing => Vec::new(),
            Below::Keys(table) => vec![table],
            Below::Each(tables) => tables.to_vec(),
        })
    }

    /// A key with a value, to show what such a map looks like.
    fn example(&self) -> String {
        self.all().first().map_or_else(String::new, |field| {
            format!("`{}: {}`", field.key, field.example)
        })
    }

    fn unknown_key(&self, entry: &Entry) -> (Problem, Option<&'static str>) {
        let all = self.all();
        let keys = all.iter().map(|field| field.key);
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
    /// What the owner calls the group.
    name: Option<At<String>>,
    /// Keys that were probably meant by unknown ones, so not worth a second problem.
    misspelt: Vec<&'static str>,
}

impl Node {
    /// The keys of a map, after reporting every key the table does not know.
    pub fn fields<'a>(
        &'a self,
        table: &'static FieldTable,
        problems: &mut Problems,
    ) -> Read<Fields<'a>> {
        let entries = match &self.value {
            _ if self.reported => return Err(Reported::before()),
            Value::Map(entries) => entries,
            other => {
                let found = other.described();
                let message = format!("{} is a group of keys, but this is {found}", table.name);
                let help = self
                    .space_after_colon()
                    .unwrap_or_else(|| format!("write keys below it, such as {}", table.example()));
                let problem = Problem::new("not-keys", message).at(self.shown());
                return Err(problems.push(problem.help(help)));
            }
        };
        let mut misspelt = Vec::new();
        let unknown = |entry: &&Entry| !entry.node.reported && table.field(&entry.key).is_none();
        for entry in entries.iter().filter(unknown) {
            let (problem, meant) = table.unknown_key(entry);
            problems.push(problem);
            misspelt.extend(meant);
        }
        Ok(Fields {
            table,
            entries,
            heading: self.heading,
            name: None,
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
            name: None,
            misspelt: Vec::new(),
        }
    }

    /// The same, by the name the owner gave the group.
    #[must_use]
    pub fn called(self, name: At<String>) -> Self {
        let name = Some(name);
        Fields { name, ..self }
    }

    /// What the owner calls the group; nothing where it has no name.
    pub fn name(&self) -> Option<&At<String>> {
        self.name.as_ref()
    }

    /// `this slab`, for messages about the group as a whole.
    pub fn this(&self) -> String {
        let (_, noun) = self
            .table
            .name
            .split_once(' ')
            .unwrap_or(("", self.table.name));
        format!("this {noun}")
    }

    /// Where the group begins: its key, or the file's first line.
    pub fn heading(&self) -> Place {
        self.heading
    }

    pub fn if_left_out(&self, key: &str) -> IfLeftOut {
        let field = self.table.field(key);
        field.map_or(IfLeftOut::Nothing, |field| field.if_left_out)
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

    /// What stands after a key that has to be there.
    pub fn required(&self, key: &str, problems: &mut Problems) -> Read<&'a Node> {
        if let Some(node) = self.node(key) {
            return Ok(node);
        }
        if self.misspelt.contains(&key) {
            return Err(Reported::before());
        }
        let message = format!("{} needs a key `{key}`", self.table.name);
        let mut problem = Problem::new("missing-key", message).at(self.heading);
        if let Some(field) = self.table.field(key) {
            problem = problem.help(format!("write, for example, `{key}: {}`", field.example));
        }
        Err(problems.push(problem))
    }

    /// What stands after a key, if it may be left out and is.
    pub fn unless_left_out(&self, key: &str, problems: &mut Problems) -> Read<Option<&'a Node>> {
        match self.if_left_out(key) {
            IfLeftOut::Required => self.required(key, problems).map(Some),
            IfLeftOut::Nothing | IfLeftOut::Usual(_) | IfLeftOut::Else(_) => Ok(self.node(key)),
        }
    }

    /// The value of a key that may be left out; what was reported counts as left out, so that
    /// the rest of its group is looked at.
    pub fn read<T: Written>(&self, key: &str, problems: &mut Problems) -> Option<At<T>> {
        let node = self.node(key)?;
        self.value(node, key, problems).ok()
    }

    /// The value of a key that has to be there, or the usual one at the group's place.
    pub fn need<T: Written>(&self, key: &str, problems: &mut Problems) -> Read<At<T>> {
        match (self.node(key), self.if_left_out(key)) {
            (Some(node), _) => self.value(node, key, problems),
            (None, IfLeftOut::Usual(text)) => {
                let value = T::written(text);
                value
                    .map(|value| At::new(value, self.heading))
                    .map_err(|unreadable| problems.unreadable(unreadable, self.heading))
            }
            (None, IfLeftOut::Required | IfLeftOut::Nothing | IfLeftOut::Else(_)) => self
                .required(key, problems)
                .and_then(|node| self.value(node, key, problems)),
        }
    }

    /// What a key says, if it is there; what could not be read stops the group, so that nothing is made
    /// of half of it.
    pub fn if_said<T: Written>(&self, key: &str, problems: &mut Problems) -> Read<Option<At<T>>> {
        let node = self.node(key);
        node.map(|node| self.value(node, key, problems)).transpose()
    }

    /// What a key says, written or usual, for what another key asks of it; nothing is reported.
    pub fn said<T: Written>(&self, key: &str) -> Option<At<T>> {
        self.need(key, &mut Problems::new()).ok()
    }

    /// A help that would do for any quantity gives way to the example of this key.
    fn value<T: Written>(&self, node: &Node, key: &str, problems: &mut Problems) -> Read<At<T>> {
        let text = node.text(&format!("`{key}`"), problems)?;
        let value = T::written(text).map_err(|unreadable| {
            let field = self.table.field(key);
            let field = field.filter(|_| unreadable.help == Amount::HOW);
            let own = field.map(|field| format!("write, for example, `{key}: {}`", field.example));
            problems.unreadable(unreadable.or_help(own), node.place)
        });
        Ok(At::new(value?, node.place))
    }

    /// The items of a list that have one name each; none where the key is left out.
    pub fn named(&self, key: &str, problems: &mut Problems) -> Vec<(At<String>, &'a Node)> {
        let Some(node) = self.node(key) else {
            return Vec::new();
        };
        let example = self.table.field(key).map_or("", |field| field.example);
        let help =
            format!("write a name, a colon, a space and a value, such as `{key}: {example}`");
        node.named(&format!("`{key}`"), &help, problems)
    }

    /// `yes` or `no`, likewise; YAML's own `true` and `false` will do.
    pub fn yes(&self, key: &str, problems: &mut Problems) -> Option<At<bool>> {
        let text = self.read::<String>(key, problems)?;
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

#[cfg(test)]
mod tests;
