//! From a node to the text, items or entries it should hold, or a problem at its place.

use super::place::Place;
use super::problem::{Problem, Problems};
use super::tree::{Entry, Node, Value};
use crate::values::Unreadable;
use std::str::FromStr;

impl Node {
    pub fn is_list(&self) -> bool {
        matches!(self.value, Value::List(_))
    }

    pub fn is_map(&self) -> bool {
        matches!(self.value, Value::Map(_))
    }

    /// The entries of a map whose keys the owner chose; `what` stands in messages as given.
    pub fn entries<'a>(&'a self, what: &str, problems: &mut Problems) -> Vec<&'a Entry> {
        match &self.value {
            _ if self.reported => Vec::new(),
            Value::Map(entries) => entries.iter().collect(),
            other => {
                let found = other.described();
                let message = format!("{what} is a group of names, but this is {found}");
                let help = "write each name on its own line below it, followed by a colon";
                problems.push(
                    Problem::new("not-keys", message)
                        .at(self.shown())
                        .help(help),
                );
                Vec::new()
            }
        }
    }

    /// The items of a list; `what` stands in messages as given.
    pub fn items<'a>(&'a self, what: &str, problems: &mut Problems) -> Vec<&'a Node> {
        match &self.value {
            _ if self.reported => Vec::new(),
            Value::List(items) => items.iter().collect(),
            other => {
                let found = other.described();
                let message = format!("{what} is a list, but this is {found}");
                let help = "write each item on its own line below it, after a dash: `- item`";
                problems.push(
                    Problem::new("not-a-list", message)
                        .at(self.shown())
                        .help(help),
                );
                Vec::new()
            }
        }
    }

    /// The text of a single value; `what` stands in messages as given.
    pub fn text<'a>(&'a self, what: &str, problems: &mut Problems) -> Option<&'a str> {
        let problem = match &self.value {
            _ if self.reported => return None,
            Value::Text(text) => return Some(text),
            Value::Nothing => Problem::new("empty-value", format!("{what} is empty"))
                .help("write a value after the colon, or take the line out"),
            other => {
                let found = other.described();
                let message = format!("{what} is a single value, but this is {found}");
                Problem::new("not-a-value", message).help("write it on one line, after the colon")
            }
        };
        problems.push(problem.at(self.shown()));
        None
    }

    /// Reads a single value of any kind.
    pub fn read<T>(&self, problems: &mut Problems) -> Option<T>
    where
        T: FromStr<Err = Unreadable>,
    {
        match self.text("this", problems)?.parse() {
            Ok(value) => Some(value),
            Err(unreadable) => {
                problems.push(Problem::from(unreadable).at(self.place));
                None
            }
        }
    }

    /// Where to point when the value as a whole is wrong: at its key if it spans lines.
    pub(super) fn shown(&self) -> Place {
        match self.value {
            Value::Text(_) | Value::Nothing => self.place,
            Value::List(_) | Value::Map(_) => self.heading,
        }
    }
}
