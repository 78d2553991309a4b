//! The keys of a kind of dowel.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const DOWEL: FieldTable = FieldTable {
    name: "a kind of dowel",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought, by the piece",
            "dowel 1/2 in",
        ),
        field(
            "bar",
            "bar",
            "",
            "smooth, so that it slides, or a deformed bar that ties",
            "1/2 in smooth",
        ),
        field("length", "length", "18 in", "of the bar", "18 in"),
        field(
            "depth",
            "length",
            "9 in",
            "of the hole in concrete that stays",
            "9 in",
        ),
        field(
            "hole",
            "length",
            "1/8 in over the bar",
            "across the hole that is drilled",
            "5/8 in",
        ),
        field(
            "spacing",
            "length",
            "24 in",
            "the most from one to the next",
            "24 in",
        ),
        field(
            "from ends",
            "length",
            "12 in",
            "from each end of the edge to the nearest one",
            "12 in",
        ),
        field(
            "cap",
            "name",
            "",
            "the item on the end that slides, one for each drilled dowel",
            "dowel cap 1/2 in",
        ),
        field(
            "bonded",
            "yes or no",
            "yes for deformed, and where `adhesive` is named",
            "whether it is set in adhesive",
            "yes",
        ),
        field(
            "adhesive",
            "name",
            "",
            "the item that bonds it, by the cartridge; `none` where you do not charge it",
            "adhesive cartridge",
        ),
        field(
            "cartridge",
            "milliliters",
            "300 ml",
            "in a cartridge",
            "300 ml",
        ),
        field(
            "loss",
            "percent",
            "10%",
            "adhesive left in nozzle and cartridge",
            "10%",
        ),
    ],
};
