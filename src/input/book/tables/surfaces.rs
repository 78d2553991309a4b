//! The keys of finishes, colors and sealers.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const FINISH: FieldTable = FieldTable {
    name: "a finish",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "says",
            "text",
            "its name",
            "what the customer reads",
            "stamped like split slate",
        ),
        field(
            "hours",
            "rate",
            "the rate `finish NAME`",
            "work for so many square feet",
            "7 hours per 100 sq ft",
        ),
        field(
            "items",
            "list",
            "",
            "what is put on, and how much of it",
            "[release powder: 3 lb per 100 sq ft]",
        ),
        field(
            "trips",
            "number",
            "0",
            "times the crew comes back after the pour, to wash or saw",
            "1",
        ),
        field(
            "color",
            "name",
            "none",
            "a color of this book that comes with it",
            "sandstone",
        ),
        field(
            "seal",
            "name",
            "none",
            "a sealer of this book that comes with it",
            "wet look",
        ),
        field(
            "curing",
            "word",
            "compound",
            "compound (sprayed on), cover (laid over it), wet or none",
            "cover",
        ),
        field(
            "troweled",
            "yes or no",
            "by its name",
            "whether a steel trowel closes the surface",
            "yes",
        ),
    ],
};

pub const COLOR: FieldTable = FieldTable {
    name: "a color",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought",
            "color sandstone",
        ),
        field(
            "dose",
            "dose",
            "",
            "in the concrete, by its cement or its yards",
            "3% of cement",
        ),
        field(
            "says",
            "text",
            "its name",
            "what the customer reads",
            "sandstone",
        ),
    ],
};

pub const SEALER: FieldTable = FieldTable {
    name: "a sealer",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought",
            "sealer by the pail",
        ),
        field(
            "coverage",
            "dose",
            "the item is sold by the square foot",
            "how far it goes, and in how many coats",
            "\"250 sq ft per gal, 2 coats\"",
        ),
        field(
            "hours",
            "rate",
            "",
            "work for so many square feet, all coats together",
            "1 hour per 100 sq ft",
        ),
        field(
            "after",
            "days",
            "28 days",
            "from the pour to the sealing",
            "28 days",
        ),
        field(
            "trips",
            "number",
            "1",
            "times the crew comes back for it",
            "1",
        ),
        field(
            "says",
            "text",
            "its name",
            "what the customer reads",
            "a clear sealer that soaks in",
        ),
    ],
};
