//! The keys around the slabs: customer, access, pours.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const CUSTOMER: FieldTable = FieldTable {
    name: "the customer",
    before: &[],
    includes: &[],
    fields: &[
        field("name", "text", "", "who the quote is for", "Dana Example"),
        field(
            "address",
            "text",
            "",
            "where",
            "\"18 Sample Lane, Quillhaven\"",
        ),
        field("email", "text", "", "mail address", "dana@example.com"),
        field("phone", "text", "", "telephone", "555-0117"),
    ],
};

pub const ACCESS: FieldTable = FieldTable {
    name: "`access`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "by",
            "word",
            "chute",
            "chute, wheelbarrow, buggy or pump",
            "wheelbarrow",
        ),
        field(
            "distance",
            "length",
            "",
            "from the truck to the slab",
            "85 ft",
        ),
        field("gate", "length", "", "narrowest place on the way", "42 in"),
    ],
};

pub const PLACEMENT: FieldTable = FieldTable {
    name: "a pour",
    before: &[],
    includes: &[],
    fields: &[
        field("day", "date", "", "its day", "2026-06-15"),
        field(
            "slabs",
            "list of names",
            "",
            "what is poured",
            "[patio, walk]",
        ),
        field(
            "access",
            "word or keys",
            "that of the job",
            "how concrete reaches the slabs of this pour",
            "{by: pump, distance: 120 ft}",
        ),
    ],
};
