//! Groups by name, which remember the names of those that could not be read.

use super::fields::{Below, Fields};
use super::keys::{FromKey, Keyed};
use super::problem::{Problem, Problems, Read, Reported};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::{Deref, DerefMut};

/// Names of what could not be read, every one of them reported.
#[derive(Clone, Debug, Default)]
pub struct BrokenNames(BTreeSet<String>);

impl BrokenNames {
    pub fn insert(&mut self, name: String, _: Reported) {
        self.0.insert(name);
    }

    pub fn has(&self, name: &str) -> bool {
        self.0.contains(name)
    }

    /// The proof of one of them, if there is any.
    ///
    /// # Errors
    /// When there is one.
    pub fn none(&self) -> Read<()> {
        if self.0.is_empty() {
            Ok(())
        } else {
            Err(Reported::before())
        }
    }
}

/// Groups by the names that the owner chose, and the names of those that could not be read:
/// nobody is told a second time that they are unknown.
#[derive(Clone, Debug)]
pub struct Named<G> {
    read: BTreeMap<String, G>,
    pub broken: BrokenNames,
}

impl<G> Named<G> {
    /// The group of this name; what `unknown` says of a name is only said where it was never written.
    pub fn known(
        &self,
        name: &str,
        problems: &mut Problems,
        unknown: impl FnOnce() -> Problem,
    ) -> Read<&G> {
        match self.read.get(name) {
            Some(group) => Ok(group),
            None if self.broken.has(name) => Err(Reported::before()),
            None => Err(problems.push(unknown())),
        }
    }
}

impl<G> Default for Named<G> {
    fn default() -> Self {
        Named {
            read: BTreeMap::new(),
            broken: BrokenNames::default(),
        }
    }
}

impl<G> Deref for Named<G> {
    type Target = BTreeMap<String, G>;

    fn deref(&self) -> &Self::Target {
        &self.read
    }
}

impl<G> DerefMut for Named<G> {
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.read
    }
}

impl<G: Keyed> FromKey for Named<G> {
    const KIND: &'static str = "keys by name";
    const BELOW: Below = Below::Each(&[G::TABLE]);

    fn from_key(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Self> {
        let mut named = Named::default();
        let node = fields.unless_left_out(key, problems).ok().flatten();
        let entries =
            node.map_or_else(Vec::new, |node| node.entries(&format!("`{key}`"), problems));
        for entry in entries {
            let name = entry.key.clone();
            match entry.node.group(problems) {
                Ok(group) => drop(named.read.insert(name, group)),
                Err(reported) => named.broken.insert(name, reported),
            }
        }
        Ok(named)
    }
}
