//! What a slab is for: what goes over it, and whether a building keeps weather off it.

use super::{EdgeKind, Slab};
use crate::input::phrases::Carries;

/// Kinds that cars stand or drive on; common practice, no source.
const CARS: [&str; 5] = ["driveway", "apron", "carport", "parking", "garage"];
/// Words of names that heavier vehicles stand or drive on; common practice, no source.
const TRUCKS: [&str; 7] = [
    "truck",
    "trucks",
    "rv",
    "motorhome",
    "loading",
    "dumpster",
    "trash",
];
/// Kinds that lie inside a building; common practice, no source.
const INSIDE: [&str; 3] = ["garage", "basement", "workshop"];
/// Words of names of what lies around water that people bathe in.
const POOLS: [&str; 3] = ["pool", "spa", "poolside"];

impl Slab {
    /// As it is said, else by its kind and its names.
    pub fn carries(&self) -> Carries {
        let names = [&self.key, &self.kind, &self.called];
        match &self.carries {
            Some(said) => said.value,
            None if names.iter().any(|name| has_word(name, &TRUCKS)) => Carries::Trucks,
            None if has_word(&self.kind, &CARS) => Carries::Cars,
            None => Carries::People,
        }
    }

    /// As it is said; else one over a vapor retarder, or of a kind that has a roof and walls.
    pub fn is_inside(&self) -> bool {
        match &self.inside {
            Some(said) => said.value,
            None => self.sections.retarder.is_some() || has_word(&self.kind, &INSIDE),
        }
    }

    /// By its names.
    pub fn is_at_pool(&self) -> bool {
        let names = [&self.key, &self.kind, &self.called];
        names.iter().any(|name| has_word(name, &POOLS))
    }

    /// A floor with thick edges: what stands on it stands on them.
    pub fn carries_building(&self) -> bool {
        self.sections.thickened.is_some() && self.is_inside()
    }

    /// Frost would lift it against the house.
    pub fn is_stoop_at_house(&self) -> bool {
        let meets = self.edges.iter().any(|part| part.kind == EdgeKind::House);
        self.sections.is_stoop() && meets
    }
}

/// Whether a name has one of the words.
pub fn has_word(name: &str, words: &[&str]) -> bool {
    let name = name.to_lowercase();
    name.split(|c: char| !c.is_alphanumeric())
        .any(|word| words.contains(&word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_no_part_of_a_longer_one() {
        assert!(has_word("RV pad", &TRUCKS) && has_word("loading-dock", &TRUCKS));
        assert!(!has_word("curved walk", &TRUCKS) && !has_word("parkings", &CARS));
    }
}
