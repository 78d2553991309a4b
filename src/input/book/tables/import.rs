//! The keys of a mapping: how a supplier's price list is read into the book.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const MAPPING: FieldTable = FieldTable {
    name: "a mapping",
    before: &[],
    includes: &[],
    fields: &[
        field("format", "number", "1", "version of this file's keys", "1"),
        field(
            "columns",
            "keys",
            "required",
            "what the columns of the list are called",
            "{article: Item No., price: Net, unit: UOM}",
        ),
        field(
            "separator",
            "word",
            "comma",
            "what stands between two cells: comma, semicolon, tab or bar",
            "semicolon",
        ),
        field(
            "units",
            "keys by word",
            "",
            "what the list's words for units are here; a word that the book knows needs no line",
            "{CY: cu yd, EA: piece, C: 100 pieces}",
        ),
        field(
            "items",
            "keys by article",
            "required",
            "which item of the book an article of the list is",
            "{RM-4000A: ready-mix 4000 air}",
        ),
    ],
};

pub const COLUMNS: FieldTable = FieldTable {
    name: "`columns`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "article",
            "text",
            "required",
            "the supplier's number or name of what is sold",
            "Item No.",
        ),
        field(
            "price",
            "text",
            "required",
            "the price, as `1,234.50` or `$1,234.50`",
            "Net",
        ),
        field("unit", "text", "required", "what the price is for", "UOM"),
        field(
            "from",
            "text",
            "",
            "the day the price begins, as `2026-05-15` or `5/15/2026`; an empty cell means `--from`",
            "Effective",
        ),
    ],
};

pub const MAPPED: FieldTable = FieldTable {
    name: "an article",
    before: &[],
    includes: &[],
    fields: &[
        field("item", "name", "required", "an item of the book", "chair"),
        field(
            "per",
            "number",
            "1",
            "the list's price is for so many of its unit",
            "100",
        ),
        field(
            "units",
            "keys by word",
            "",
            "as `units` above, for this article alone",
            "{TN: 149 pieces}",
        ),
    ],
};
