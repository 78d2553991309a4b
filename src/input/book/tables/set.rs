//! The keys of boxes set in slabs, and of what answers about the site cost.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const BOX_STOCK: FieldTable = FieldTable {
    name: "a box",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought, by the piece",
            "valve box 12 x 18",
        ),
        field(
            "opening",
            "opening",
            "",
            "the hole it makes: `8 in round`, or east-west x north-south",
            "12 in x 18 in",
        ),
        field(
            "called",
            "text",
            "its name",
            "what the customer reads",
            "valve box",
        ),
        field("depth", "length", "", "of the box, top to bottom", "12 in"),
        field(
            "rated",
            "pounds",
            "",
            "the load its maker tested it for",
            "20800 lb",
        ),
        field(
            "design load",
            "pounds",
            "",
            "the load its maker designed it for",
            "22500 lb",
        ),
        field(
            "stands for",
            "word",
            "",
            "walk, passenger (cars) or vehicle (trucks), as its maker states",
            "vehicle",
        ),
        field(
            "says",
            "text",
            "",
            "the maker's word for its class, for the office; makers disagree on such words",
            "Tier 22",
        ),
        field(
            "lid",
            "name",
            "",
            "its lid, where that is bought by itself",
            "steel lid 12 x 18",
        ),
        field(
            "temporary lid",
            "name",
            "",
            "stands until a lid on order comes",
            "plywood lid",
        ),
        field(
            "ring",
            "name",
            "",
            "brings an existing cover up to the new surface",
            "riser ring",
        ),
        field(
            "hours",
            "hours",
            "the rate `set box`",
            "to set one",
            "3/4 hour",
        ),
    ],
};

pub const SITE_RULE: FieldTable = FieldTable {
    name: "a rule of `site`",
    before: &[],
    includes: &[],
    fields: &[
        field("item", "name", "", "an item of this book", "masking film"),
        field(
            "each",
            "rate",
            "one for one",
            "how much of the item for each foot, or for the job",
            "1 roll per 100 ft",
        ),
        field(
            "hours",
            "rate",
            "",
            "work for each foot, or for the job",
            "2 hours per 100 ft",
        ),
    ],
};
