//! `trucks`: the heaviest thing that goes over a slab.

use crate::reading::words;

words! {
    /// The heaviest thing that goes over a slab.
    pub enum Carries("unknown-word", "a slab does not carry `{}`", choose) {
        People "people";
        Cars "cars";
        Trucks "trucks" "(heavier than a car)";
    }
}
