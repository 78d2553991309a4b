//! The keys of the lists: removals, extras, overrides, options.

use crate::input::job::SlabValues;
use crate::reading::FieldTable;
use crate::reading::Group as _;
use crate::reading::fields::field;

pub const REMOVAL: FieldTable = FieldTable {
    name: "a removal",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "size",
            "size",
            "",
            "length x width x depth, or area x depth; with `depth` also 20 ft x 10 ft, or circle 12 ft",
            "22 ft x 3 ft x 4 in",
        ),
        field("depth", "length", "", "where the size has none", "4 in"),
        field(
            "of",
            "word",
            "concrete",
            "concrete, asphalt, pavers or soil",
            "soil",
        ),
        field("break", "words", "by hand", "by hand or machine", "machine"),
        field(
            "reinforced",
            "yes or no",
            "no",
            "bars or mesh in the concrete; it has a rate of its own",
            "yes",
        ),
        field(
            "saw cut",
            "length",
            "none",
            "cut with the saw through its whole depth, where something stays beside it",
            "24 ft",
        ),
        field(
            "stays",
            "yes or no",
            "no",
            "used on the site, so nothing of it is hauled",
            "yes",
        ),
    ],
};

pub const LUMP: FieldTable = FieldTable {
    name: "a lump",
    before: &[],
    includes: &[],
    fields: &[
        field("cost", "amount", "", "what it costs you", "85.00"),
        field(
            "class",
            "word",
            "subcontract",
            "material, labor, equipment, disposal, subcontract or fee",
            "subcontract",
        ),
    ],
};

pub const SET: FieldTable = FieldTable {
    name: "a set quantity",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "to",
            "number",
            "",
            "the quantity you want, in the unit the program shows",
            "14",
        ),
        field(
            "because",
            "text",
            "",
            "why; the office sees both figures and this",
            "two people and the curve",
        ),
    ],
};

pub const OPTION: FieldTable = FieldTable {
    name: "an option",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "add",
            "list",
            "",
            "items of the book, or lumps",
            "[clear sealer: 540 sq ft]",
        ),
        field(
            "change",
            "keys by slab",
            "",
            "slabs that are made otherwise: any value a slab and a kind can both have",
            "{patio: {finish: stamped, thickness: 5 in}}",
        ),
        field(
            "drop",
            "list of names",
            "",
            "slabs, removals and extras that are left out",
            "[walk, old walk, topsoil]",
        ),
        field(
            "says",
            "text",
            "",
            "one line for the customer",
            "Keeps out water and salt",
        ),
    ],
};

/// A slab in `change`; a kind says what each key means.
pub const CHANGE: FieldTable = *SlabValues::TABLE;

pub const CHOOSE_ONE: FieldTable = FieldTable {
    name: "a choose-one group",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "choose one",
            "text",
            "",
            "the question",
            "Border along the open edges",
        ),
        field(
            "from",
            "list of options",
            "",
            "at most one is taken",
            "[Pebble border: {add: [pebble border: 60 ft]}]",
        ),
        field(
            "must choose",
            "yes or no",
            "no",
            "one has to be taken; the first is counted in the job as quoted",
            "yes",
        ),
    ],
};
