//! The keys of a thickened edge and of a flight of steps.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const THICKENED: FieldTable = FieldTable {
    name: "`thickened`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "edges",
            "edges",
            "",
            "`all`, `all open`, or sides by direction or number",
            "[north, south]",
        ),
        field("width", "length", "", "at the bottom", "12 in"),
        field(
            "depth",
            "length",
            "",
            "the whole of it, from the top of the slab",
            "12 in",
        ),
        field(
            "taper",
            "length",
            "square inside",
            "how far inside the bottom comes up to the slab",
            "12 in",
        ),
        field(
            "bars",
            "number and bar",
            "none",
            "along the edge",
            "2 no. 4",
        ),
        field(
            "kind",
            "word",
            "thickened",
            "thickened or turndown; the customer reads it",
            "turndown",
        ),
    ],
};

pub const STEPS: FieldTable = FieldTable {
    name: "`steps`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "risers",
            "number",
            "",
            "steps up, the one onto the slab too",
            "3",
        ),
        field("rise", "length", "", "of each riser", "7 in"),
        field(
            "tread",
            "length",
            "",
            "of each step; needed from two risers on",
            "12 in",
        ),
        field("width", "length", "the edge's", "along the edge", "5 ft"),
        field(
            "from",
            "side",
            "",
            "the edge they lead down from",
            "south edge",
        ),
        field(
            "at",
            "distance",
            "in the middle",
            "where along that edge",
            "1 ft from west end",
        ),
        field(
            "in all",
            "length",
            "",
            "from bottom to top, as you measured it; a check only",
            "21 in",
        ),
    ],
};
