//! What every text becomes before anyone knows what it means: values and their places.

use super::place::{At, Place};

/// One value and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Node {
    pub place: Place,
    /// Where the value is announced: its key, or the value itself where it has none.
    pub heading: Place,
    pub value: Value,
    /// Its problem is already reported, so readers leave it out without another word.
    pub reported: bool,
}

/// What is written: scalars are text, since only a reader knows what they should mean.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// Nothing after the key, or `null`, or `~`.
    Nothing,
    Text(String),
    List(Vec<Node>),
    /// In the order written; no key twice.
    Map(Vec<Entry>),
}

/// A key and what belongs to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    pub key: String,
    pub key_place: Place,
    pub node: Node,
}

impl Entry {
    /// The key as a name that the owner chose.
    pub fn name(&self) -> At<String> {
        At::new(self.key.clone(), self.key_place)
    }
}

impl Node {
    pub fn is_nothing(&self) -> bool {
        self.value == Value::Nothing
    }
}

impl Value {
    /// What it is, in a sentence that says it should have been something else.
    pub(super) fn described(&self) -> &'static str {
        match self {
            Value::Nothing => "empty",
            Value::Text(_) => "a single value",
            Value::List(_) => "a list",
            Value::Map(_) => "a group of keys",
        }
    }
}
