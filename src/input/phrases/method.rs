//! `pump`, `wheelbarrow`: how concrete gets from the truck to the slab.

use crate::reading::words;

words! {
    /// How concrete gets from the truck to the slab.
    pub enum Method("unknown-word", "concrete is not placed by `{}`", choose) {
        Chute "chute";
        Wheelbarrow "wheelbarrow";
        Buggy "buggy";
        Pump "pump";
    }
}
