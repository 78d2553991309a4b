//! The keys of a box in a slab.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const BOX: FieldTable = FieldTable {
    name: "a box in a slab",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "at",
            "spot",
            "",
            "the middle of the box, from two sides of the slab",
            "4 ft from west and 3 ft from south",
        ),
        field(
            "box",
            "name",
            "its own name",
            "a box of the price book",
            "cleanout 8 in",
        ),
        field(
            "lid",
            "word",
            "now",
            "now, on order (a temporary one stands until it comes) or theirs (its owner brings it)",
            "on order",
        ),
        field(
            "isolated",
            "yes or no",
            "no",
            "a soft strip around it",
            "yes",
        ),
        field(
            "adjust",
            "raise or lower",
            "",
            "an existing cover brought to the new surface; no box is bought",
            "raise 2 in",
        ),
    ],
};
