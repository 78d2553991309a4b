//! The keys of a kind of slab, and of its cure.

use super::field;
use crate::reading::{Field, FieldTable};

/// What a kind and a slab can both say.
pub const SLAB_VALUES: [Field; 9] = [
    field("thickness", "length", "", "of the concrete", "4 in"),
    field("mix", "name", "", "a mix of the price book", "exterior"),
    field(
        "base",
        "depth of material",
        "none",
        "compacted under the slab",
        "4 in of crushed stone",
    ),
    field(
        "bars",
        "bar at spacing",
        "none",
        "both ways",
        "no. 3 at 18 in",
    ),
    field("mesh", "style", "none", "welded wire", "6x6 W1.4/W1.4"),
    field(
        "fiber",
        "name",
        "none",
        "a fiber of the price book",
        "micro",
    ),
    field("finish", "name", "broom", "of the surface", "broom"),
    field(
        "joints",
        "length",
        "none",
        "longest side of a panel",
        "8 ft",
    ),
    field(
        "fall",
        "slope",
        "level",
        "so that water runs off",
        "1/4 in per ft",
    ),
];

pub const KIND: FieldTable = FieldTable {
    name: "a kind of slab",
    fields: &SLAB_VALUES,
};

pub const CURE: FieldTable = FieldTable {
    name: "`cure`",
    fields: &[
        field(
            "cool",
            "degrees F",
            "60",
            "a cool spell, day and night averaged",
            "60",
        ),
        field(
            "warm",
            "degrees F",
            "80",
            "a warm spell, day and night averaged",
            "80",
        ),
        field("walk", "days", "2 days", "never promised earlier", "2 days"),
        field("car", "days", "7 days", "never promised earlier", "7 days"),
        field(
            "heavier vehicle",
            "days",
            "14 days",
            "never promised earlier",
            "14 days",
        ),
        field(
            "seal",
            "days",
            "28 days",
            "never promised earlier",
            "28 days",
        ),
        field(
            "strength to walk",
            "percent",
            "25%",
            "of the strength ordered",
            "25%",
        ),
        field(
            "strength for a car",
            "percent",
            "75%",
            "of the strength ordered",
            "75%",
        ),
        field(
            "strength for a heavier vehicle",
            "percent",
            "95%",
            "of the strength ordered",
            "95%",
        ),
    ],
};
