//! The keys of what is bought and how: mixes, bases, steel, fiber, disposal, supply.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const MIX: FieldTable = FieldTable {
    name: "a mix",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought",
            "ready-mix 4000 air",
        ),
        field("strength", "psi", "", "ordered at 28 days", "4000 psi"),
        field("air", "percent", "0%", "entrained air", "6%"),
        field("aggregate", "length", "3/4 in", "largest stone", "3/4 in"),
        field(
            "cement",
            "word",
            "blended",
            "blended (Type IL), ordinary (Type I or II) or early (Type III)",
            "blended",
        ),
        field(
            "cement content",
            "rate",
            "",
            "in each yard; colors go by it",
            "564 lb per cu yd",
        ),
    ],
};

pub const BASE: FieldTable = FieldTable {
    name: "a base",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought",
            "crushed stone",
        ),
        field(
            "delivered",
            "rate",
            "",
            "delivered for each compacted cubic yard",
            "2 ton per cu yd",
        ),
    ],
};

pub const BARS: FieldTable = FieldTable {
    name: "a bar",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought, by the piece",
            "bar no. 4",
        ),
        field("stock", "length", "20 ft", "length it is sold in", "20 ft"),
        field(
            "lap",
            "bar diameters or rule",
            "40",
            "length of a splice: bar diameters, or `class B` of ACI 318, a rule by itself",
            "class B",
        ),
        field(
            "grade",
            "number",
            "60",
            "60 or 40, thousands of psi at which it yields; `class B` asks",
            "60",
        ),
    ],
};

pub const MESH: FieldTable = FieldTable {
    name: "a mesh",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought, by the sheet or roll",
            "mesh sheet",
        ),
        field("width", "length", "5 ft", "of a sheet or roll", "5 ft"),
        field("length", "length", "10 ft", "of a sheet or roll", "10 ft"),
        field("lap", "length", "6 in", "at sides and ends", "6 in"),
    ],
};

pub const FIBER: FieldTable = FieldTable {
    name: "a fiber",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is bought",
            "fiber at the plant",
        ),
        field(
            "by",
            "word",
            "plant",
            "plant (by the ordered yard) or us (by the bag)",
            "plant",
        ),
        field(
            "dose",
            "rate",
            "1 lb per cu yd",
            "in each yard",
            "1 lb per cu yd",
        ),
        field("bag", "pounds", "1 lb", "in a bag", "1 lb"),
    ],
};

pub const DISPOSAL: FieldTable = FieldTable {
    name: "a disposal",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item that is paid, by the ton, cubic yard or load",
            "dump broken concrete",
        ),
        field(
            "loose",
            "number",
            "1",
            "loose yards from one solid yard",
            "1.5",
        ),
        field(
            "weight",
            "rate",
            "4050 lb per cu yd",
            "of a solid yard",
            "4050 lb per cu yd",
        ),
        field(
            "load",
            "cubic yards",
            "10 cu yd",
            "loose yards in a load",
            "10 cu yd",
        ),
    ],
};

pub const SUPPLY: FieldTable = FieldTable {
    name: "`supply`",
    before: &[],
    includes: &[],
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
            "minutes to unload without charge, per cu yd or per load",
            "5 min per cu yd",
        ),
        field(
            "pump prime",
            "cubic yards",
            "0 cu yd",
            "lost in the line, once a placement",
            "1/4 cu yd",
        ),
        field(
            "loads",
            "words",
            "in turn",
            "how trucks are filled: in turn, or evened",
            "evened",
        ),
        field(
            "fees",
            "list of names",
            "",
            "items charged with every order; the unit of each says how: load, cu yd, or trip (once a pour)",
            "[fuel]",
        ),
        field(
            "zones",
            "keys by zone",
            "",
            "an item for each part of town that a takeoff may name, counted the same way; with a part for `none`, a job that names no zone is not asked about",
            "{town: none, north: north zone}",
        ),
        field(
            "saturday",
            "name",
            "",
            "the item charged when the takeoff sets the pour on a Saturday",
            "Saturday opening",
        ),
        field(
            "winter",
            "keys",
            "",
            "the item charged in a part of the year",
            "{item: winter heat, during: 11-01 to 03-31}",
        ),
        field(
            "on call",
            "name",
            "",
            "the item charged when the last truck waits for your call",
            "load on call",
        ),
        field(
            "returned",
            "keys",
            "",
            "the item charged for what comes back when nothing is lost",
            "{item: returned concrete, over: 1 cu yd}",
        ),
    ],
};

pub const SHORT_LOAD: FieldTable = FieldTable {
    name: "`short load`",
    before: &[],
    includes: &[],
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
