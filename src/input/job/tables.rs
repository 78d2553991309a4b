//! The keys of a takeoff: what each is, its default, an example.

mod boxes;
mod lists;
mod sections;
mod site;
mod slab;

pub use crate::input::site::tables::SITE;
pub use boxes::BOX;
pub use lists::{CHANGE, CHOOSE_ONE, LUMP, OPTION, REMOVAL, SET};
pub use sections::{STEPS, THICKENED};
pub use site::{ACCESS, CUSTOMER, PLACEMENT};
pub use slab::{EDGES, OPENING, SLAB};

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const JOB: FieldTable = FieldTable {
    name: "a takeoff",
    before: &[],
    includes: &[],
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
            "zone",
            "name",
            "",
            "the part of town, where the plant charges for it",
            "north",
        ),
        field(
            "hold back",
            "cubic yards",
            "",
            "of the last load of each pour, until you call for it",
            "1 1/2 cu yd",
        ),
        field(
            "permit",
            "word or name",
            "not said",
            "`customer` takes it out, `none` is asked for, or the item of the book that we pay",
            "town permit",
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
            "left alone",
            "list",
            "",
            "what stays as it is; told to the customer as not included",
            "[light post base]",
        ),
        field(
            "site",
            "keys by question",
            "the usual of business.yaml",
            "what was asked about the site",
            "{overhead wires: 16 ft}",
        ),
        field(
            "photos",
            "list of paths",
            "",
            "JPEG pictures inside the business folder; one with words after it is printed in the quote",
            "[wall.jpg, gate.jpg: The gate we come through]",
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
