//! The keys of how the plant sells its concrete.

use super::field;
use crate::reading::FieldTable;

pub const SUPPLY: FieldTable = FieldTable {
    name: "`supply`",
    fields: &[
        field(
            "sold in",
            "cubic yards",
            "1/4 cu yd",
            "orders go up to a multiple",
            "1/4 cu yd",
        ),
        field(
            "smallest order",
            "cubic yards",
            "0 cu yd",
            "the plant brings no less",
            "1 cu yd",
        ),
        field("truck", "cubic yards", "10 cu yd", "a full load", "9 cu yd"),
        field(
            "short load",
            "keys",
            "",
            "what too little on a truck costs",
            "{under: 4 cu yd, counted: by truck, charge: each yard}",
        ),
        field(
            "free time",
            "rate",
            "1000 min per cu yd",
            "minutes to unload without charge",
            "5 min per cu yd",
        ),
        field(
            "pump prime",
            "cubic yards",
            "0 cu yd",
            "lost in the line, once a placement",
            "1/4 cu yd",
        ),
    ],
};

pub const SHORT_LOAD: FieldTable = FieldTable {
    name: "`short load`",
    fields: &[
        field(
            "under",
            "cubic yards",
            "",
            "a load below this is short",
            "4 cu yd",
        ),
        field(
            "counted",
            "words",
            "by truck",
            "by truck, by order or on the last truck",
            "by truck",
        ),
        field(
            "charge",
            "words",
            "each yard",
            "each yard (that is missing) or flat",
            "each yard",
        ),
    ],
};
