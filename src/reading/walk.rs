//! From a node to the text, items or entries it should hold, or a problem at its place.

use super::place::{At, Place};
use super::problem::{Problem, Problems, Read, Reported};
use super::tree::{Entry, Node, Value};
use super::written::Written;
use super::yaml;

impl Node {
    pub fn is_list(&self) -> bool {
        matches!(self.value, Value::List(_))
    }

    pub fn is_map(&self) -> bool {
        matches!(self.value, Value::Map(_))
    }

    /// Whether this one word is all that is written.
    pub fn says(&self, word: &str) -> bool {
        matches!(&self.value, Value::Text(text) if text == word)
    }

    /// The entries of a map whose keys the owner chose; `what` stands in messages as given.
    pub fn entries<'a>(&'a self, what: &str, problems: &mut Problems) -> Vec<&'a Entry> {
        let help = "write each name on its own line below it, then a colon and a space";
        self.entries_or(what, help, problems)
    }

    fn entries_or<'a>(&'a self, what: &str, help: &str, problems: &mut Problems) -> Vec<&'a Entry> {
        match &self.value {
            _ if self.reported => Vec::new(),
            Value::Map(entries) => entries.iter().collect(),
            other => {
                let found = other.described();
                let message = format!("{what} is a group of names, but this is {found}");
                let help = self.space_after_colon().unwrap_or_else(|| help.to_owned());
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

    /// The items of a list that have one name each: `- sod repair: 120 sq ft`; `help` is for a line
    /// that has none.
    pub(super) fn named<'a>(
        &'a self,
        what: &str,
        help: &str,
        problems: &mut Problems,
    ) -> Vec<(At<String>, &'a Node)> {
        let mut found = Vec::new();
        for item in self.items(what, problems) {
            match item.entries_or(&format!("each line of {what}"), help, problems)[..] {
                [] => {}
                [entry] => found.push((entry.name(), &entry.node)),
                [_, second, ..] => {
                    let many = item.len();
                    let message = format!("each line of {what} has one name, and here are {many}");
                    let problem = Problem::new("not-one-name", message).at(second.key_place);
                    let help =
                        "start a new line with a dash, or indent what belongs to the first name";
                    problems.push(problem.help(help));
                }
            }
        }
        found
    }

    /// How many items or entries it holds.
    fn len(&self) -> usize {
        match &self.value {
            Value::List(items) => items.len(),
            Value::Map(entries) => entries.len(),
            Value::Nothing | Value::Text(_) => 0,
        }
    }

    /// The text of a single value; `what` stands in messages as given.
    pub fn text<'a>(&'a self, what: &str, problems: &mut Problems) -> Read<&'a str> {
        let problem = match &self.value {
            _ if self.reported => return Err(Reported::before()),
            Value::Text(text) => return Ok(text),
            Value::Nothing => Problem::new("empty-value", format!("{what} is empty"))
                .help("write a value after the colon, or take the line out"),
            other => {
                let found = other.described();
                let message = format!("{what} is a single value, but this is {found}");
                Problem::new("not-a-value", message).help("write it on one line, after the colon")
            }
        };
        Err(problems.push(problem.at(self.shown())))
    }

    /// The same, with its place.
    pub fn text_at(&self, what: &str, problems: &mut Problems) -> Read<At<String>> {
        let text = self.text(what, problems)?;
        Ok(At::new(text.to_owned(), self.place))
    }

    /// The texts of a list.
    pub fn texts(&self, what: &str, problems: &mut Problems) -> Vec<At<String>> {
        let mut found = Vec::new();
        for item in self.items(what, problems) {
            found.extend(item.text_at("a line of the list", problems));
        }
        found
    }

    /// Reads a single value of any kind.
    pub fn read<T: Written>(&self, problems: &mut Problems) -> Read<T> {
        let text = self.text("this", problems)?;
        T::written(text).map_err(|unreadable| problems.unreadable(unreadable, self.place))
    }

    /// The same, with its place.
    pub fn read_at<T: Written>(&self, problems: &mut Problems) -> Read<At<T>> {
        Ok(At::new(self.read(problems)?, self.place))
    }

    /// What to write if `patio:12 ft` is read as text for want of a space.
    pub(super) fn space_after_colon(&self) -> Option<String> {
        let Value::Text(text) = &self.value else {
            return None;
        };
        let meant = yaml::with_space_after_colon(text)?;
        let (key, _) = meant.split_once(':')?;
        Some(format!(
            "a colon after a key needs a space: `{key}: ` and then its value"
        ))
    }

    /// Where to point when the value as a whole is wrong: at its key if it spans lines.
    pub(super) fn shown(&self) -> Place {
        match self.value {
            Value::Text(_) | Value::Nothing => self.place,
            Value::List(_) | Value::Map(_) => self.heading,
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::reading::place::Sources;
    use crate::reading::yaml;
    use crate::reading::{Problem, Problems};

    #[test]
    fn lists_and_names_are_walked_or_reported() {
        let (mut sources, mut problems) = (Sources::default(), Problems::new());
        let text = "slabs: {patio: 1, walk: 2}\nphotos: [a, b, c]\n";
        let file = sources.add("job.yaml", text.to_owned());
        let root = yaml::read(file, &sources, &mut problems).expect("a tree");
        let top = root.entries("the file", &mut problems);
        let (slabs, photos) = (&top[0].node, &top[1].node);
        let keys: Vec<&str> = slabs
            .entries("slabs", &mut problems)
            .iter()
            .map(|entry| entry.key.as_str())
            .collect();
        assert_eq!(keys, ["patio", "walk"]);
        let photos_read = photos.items("photos", &mut problems).len();
        assert_eq!((photos_read, problems.len()), (3, 0));

        assert!(slabs.items("slabs", &mut problems).is_empty());
        assert!(photos.entries("photos", &mut problems).is_empty());
        assert!(photos.text("photos", &mut problems).is_err());
        let found: Vec<(&str, &str)> = problems
            .iter()
            .map(|problem: &Problem| (problem.code, problem.message.as_str()))
            .collect();
        let expected = [
            ("not-a-list", "slabs is a list, but this is a group of keys"),
            ("not-keys", "photos is a group of names, but this is a list"),
            (
                "not-a-value",
                "photos is a single value, but this is a list",
            ),
        ];
        assert_eq!(found, expected);
    }
}
