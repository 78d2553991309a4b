//! Groups by name, which remember the names of those that could not be read.

use super::fields::{Below, Fields};
use super::keys::{FromKey, Keyed};
use super::problem::{Problems, Read};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::{Deref, DerefMut};

/// Groups by the names that the owner chose, and the names of those that could not be read:
/// nobody is told a second time that they are unknown.
#[derive(Clone, Debug)]
pub struct Named<G> {
    read: BTreeMap<String, G>,
    pub broken: BTreeSet<String>,
}

impl<G> Default for Named<G> {
    fn default() -> Self {
        Named {
            read: BTreeMap::new(),
            broken: BTreeSet::new(),
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
                Err(_) => drop(named.broken.insert(name)),
            }
        }
        Ok(named)
    }
}
