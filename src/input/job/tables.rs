//! The keys of a takeoff: what each is, its default, an example.

use crate::input::business::tables::{SLAB_VALUES, field};
use crate::reading::{Field, FieldTable};

pub const JOB: FieldTable = FieldTable {
    name: "a takeoff",
    fields: &[
        field(
            "slabs",
            "keys by slab",
            "",
            "the concrete; the name of a slab is its kind, or say `kind`",
            "{patio: 12 ft x 15 ft}",
        ),
        field(
            "customer",
            "text or keys",
            "",
            "who the quote is for: name, address",
            "Dana Example, 12 Quarry Rd, Quillhaven",
        ),
        field("format", "number", "1", "version of this file's keys", "1"),
        field(
            "job",
            "text",
            "the file's name",
            "what you call the job; a supplier's hold may name it",
            "Garden patio",
        ),
        field(
            "title",
            "text",
            "from the slabs",
            "what the customer reads at the top",
            "A new patio behind your house",
        ),
        field(
            "measured",
            "date",
            "",
            "the day you were there",
            "2026-04-30",
        ),
        field(
            "quoted",
            "date",
            "today, or `--on`",
            "the day of the quote",
            "2026-05-04",
        ),
        field(
            "pour",
            "date or list",
            "quote day and lead time",
            "the day of the pour; prices are those of this day",
            "2026-06-15",
        ),
        field(
            "exposure",
            "word",
            "mild",
            "mild, frost or salt (de-icer is expected)",
            "frost",
        ),
        field(
            "access",
            "word or keys",
            "chute",
            "how concrete reaches the slab",
            "{by: wheelbarrow, distance: 85 ft, gate: 42 in}",
        ),
        field(
            "difficulty",
            "percent",
            "the crew's",
            "multiplies every task except travel",
            "115%",
        ),
        field(
            "remove",
            "list",
            "",
            "what is broken out or dug out and hauled away",
            "[old walk: 22 ft x 3 ft x 4 in]",
        ),
        field(
            "extra",
            "list",
            "",
            "any item of the book, or a lump",
            "[topsoil: 1.5 cu yd]",
        ),
        field(
            "set",
            "keys by quantity",
            "",
            "overrules a computed quantity, with a reason",
            "{finish broom hours: {to: 14, because: two people}}",
        ),
        field(
            "price",
            "amount",
            "",
            "fixes the price before tax",
            "9800.00",
        ),
        field(
            "options",
            "list",
            "",
            "what the customer may choose",
            "[Clear sealer: {add: [clear sealer: 540 sq ft]}]",
        ),
        field(
            "assumptions",
            "list of sentences",
            "",
            "what this quote counts on, beside the usual",
            "[A clear way through the side gate]",
        ),
        field(
            "not included",
            "list of sentences",
            "",
            "what this quote does not contain, beside the usual",
            "[Grass seed]",
        ),
        field(
            "photos",
            "list of paths",
            "",
            "pictures inside the business folder, for the office",
            "[gate.jpg]",
        ),
        field(
            "notes",
            "text",
            "",
            "for yourself; never printed for the customer",
            "dog",
        ),
    ],
};

pub const CUSTOMER: FieldTable = FieldTable {
    name: "the customer",
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

const OWN: [Field; 7] = [
    field(
        "size",
        "size",
        "",
        "east-west x north-south, or `circle` and a diameter",
        "12 ft x 15 ft",
    ),
    field(
        "outline",
        "list of sides",
        "",
        "the sides as walked with the tape",
        "[east 24 ft, south 12 ft, west 24 ft, north 12 ft]",
    ),
    field(
        "kind",
        "name",
        "the slab's name",
        "a kind of business.yaml",
        "patio",
    ),
    field(
        "edges",
        "keys by side",
        "open",
        "what stands at the north, east, south, west",
        "{north: house}",
    ),
    field(
        "beside",
        "position",
        "",
        "which slab it touches, where",
        "patio, west edge, 2 ft from north end",
    ),
    field(
        "on",
        "position",
        "",
        "which slab it stands on, for a step",
        "patio, north edge, 10 ft from west end",
    ),
    field(
        "called",
        "text",
        "its key",
        "what the customer reads",
        "front walk",
    ),
];

const fn joined() -> [Field; OWN.len() + SLAB_VALUES.len()] {
    let mut all = [OWN[0]; OWN.len() + SLAB_VALUES.len()];
    let mut i = 0;
    while i < all.len() {
        all[i] = if i < OWN.len() {
            OWN[i]
        } else {
            SLAB_VALUES[i - OWN.len()]
        };
        i += 1;
    }
    all
}

/// A slab's own keys, and those a kind has too.
pub const SLAB: FieldTable = FieldTable {
    name: "a slab",
    fields: &joined(),
};

pub const EDGES: FieldTable = FieldTable {
    name: "`edges`",
    fields: &[
        field(
            "north",
            "kind of edge",
            "open",
            "open, house, existing concrete, curb, isolated, joined or bulkhead",
            "house",
        ),
        field("east", "kind of edge", "open", "the same", "open"),
        field("south", "kind of edge", "open", "the same", "open"),
        field("west", "kind of edge", "open", "the same", "open"),
    ],
};

pub const ACCESS: FieldTable = FieldTable {
    name: "`access`",
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

pub const REMOVAL: FieldTable = FieldTable {
    name: "a removal",
    fields: &[
        field(
            "size",
            "size",
            "",
            "length x width x depth, or area x depth",
            "22 ft x 3 ft x 4 in",
        ),
        field("of", "word", "concrete", "concrete or soil", "soil"),
    ],
};

pub const LUMP: FieldTable = FieldTable {
    name: "a lump",
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
    fields: &[
        field(
            "add",
            "list",
            "",
            "items of the book, or lumps",
            "[clear sealer: 540 sq ft]",
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

pub const CHOOSE_ONE: FieldTable = FieldTable {
    name: "a choose-one group",
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
    ],
};

pub const PLACEMENT: FieldTable = FieldTable {
    name: "a pour",
    fields: &[
        field("day", "date", "", "its day", "2026-06-15"),
        field(
            "slabs",
            "list of names",
            "",
            "what is poured",
            "[patio, walk]",
        ),
    ],
};
