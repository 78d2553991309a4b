//! The keys of a price book: what each is, its default, an example.

mod dowel;
mod hire;
mod import;
mod set;
mod stock;
mod surfaces;

pub use dowel::DOWEL;
pub use hire::{BUGGY, HOSE, PUMP, RETURNED, WINTER};
pub use import::{COLUMNS, MAPPED, MAPPING};
pub use set::{BOX_STOCK, SITE_RULE};
pub use stock::{BARS, BASE, DISPOSAL, FIBER, MESH, MIX, SHORT_LOAD, SUPPLY};
pub use surfaces::{COLOR, FINISH, SEALER};

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const BOOK: FieldTable = FieldTable {
    name: "the price book",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "book",
            "text",
            "",
            "name of this supplier world; no customer sees it",
            "River Road plant and yard",
        ),
        field("format", "number", "1", "version of this file's keys", "1"),
        field(
            "good until",
            "date",
            "",
            "the last day a price is promised for",
            "2026-12-31",
        ),
        field(
            "items",
            "keys by item",
            "",
            "what you buy, hire, haul or do, with dated prices",
            "{crushed stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}}",
        ),
        field(
            "holds",
            "list",
            "",
            "prices promised for a job until a day",
            "[{item: ready-mix, price: 174.00, until: 2026-06-30}]",
        ),
        field(
            "mixes",
            "keys by mix",
            "",
            "concrete by the name you call it",
            "{exterior: {item: ready-mix, strength: 4000 psi}}",
        ),
        field(
            "bases",
            "keys by material",
            "",
            "what stands under a slab",
            "{crushed stone: {item: crushed stone, delivered: 2 ton per cu yd}}",
        ),
        field(
            "bars",
            "keys by bar",
            "",
            "which item a bar is, and how long it is sold",
            "{no. 4: {item: bar no. 4, stock: 20 ft}}",
        ),
        field(
            "mesh",
            "keys by style",
            "",
            "which item a mesh is, and its sheet",
            "{6x6 W1.4/W1.4: {item: mesh sheet, width: 5 ft, length: 10 ft, lap: 6 in}}",
        ),
        field(
            "fiber",
            "keys by fiber",
            "",
            "who adds it, how much",
            "{micro: {item: fiber, by: plant}}",
        ),
        field(
            "dowels",
            "keys by kind",
            "",
            "bars across an edge, by the name you give them",
            "{smooth: {item: dowel 1/2 in, bar: 1/2 in smooth}}",
        ),
        field(
            "finishes",
            "keys by finish",
            "",
            "what a finish takes beside its hours, and what the customer reads of it",
            "{stamped slate: {says: stamped like split slate, hours: 7 hours per 100 sq ft}}",
        ),
        field(
            "colors",
            "keys by color",
            "",
            "colors all through the concrete",
            "{sandstone: {item: color sandstone, dose: 3% of cement}}",
        ),
        field(
            "sealers",
            "keys by sealer",
            "",
            "what is put on weeks after the pour",
            "{wet look: {item: sealer by the pail, coverage: 250 sq ft per gal}}",
        ),
        field(
            "disposal",
            "keys by material",
            "",
            "where concrete and soil go",
            "{soil: {item: dump soil, loose: 1.25, load: 10 cu yd}}",
        ),
        field(
            "boxes",
            "keys by box",
            "",
            "boxes and covers set in slabs",
            "{cleanout: {item: cleanout cover, opening: 8 in round, rated: 20800 lb}}",
        ),
        field(
            "site",
            "keys by question",
            "",
            "what the answers about a site cost",
            "{walls to cover: {item: masking film, hours: 2 hours per 100 ft}}",
        ),
        field(
            "supply",
            "keys",
            "",
            "how the plant sells concrete",
            "{sold in: 1/4 cu yd, truck: 9 cu yd}",
        ),
        field(
            "pump",
            "keys",
            "",
            "how a pump is hired; without it, one trip a pour of what `use` names",
            "{item: line pump, rate: 20 cu yd per hour}",
        ),
        field(
            "buggy",
            "keys",
            "",
            "how a power buggy is hired",
            "{item: power buggy, width: 36 in}",
        ),
        field(
            "use",
            "keys by purpose",
            "",
            "which item stands for what; `none` where you do not charge it",
            "{forms: form board}",
        ),
        field(
            "rates",
            "keys by task",
            "",
            "hours of work for so much",
            "{form straight: 7 hours per 100 ft}",
        ),
    ],
};

pub const ITEM: FieldTable = FieldTable {
    name: "an item",
    before: &[],
    includes: &[],
    fields: &[
        field("unit", "unit", "", "what one is", "cu yd"),
        field(
            "is",
            "text",
            "",
            "what it is, in words",
            "Crushed stone, 3/4 in",
        ),
        field(
            "class",
            "word",
            "",
            "material, labor, equipment, disposal, subcontract or fee",
            "material",
        ),
        field(
            "prices",
            "prices by day",
            "",
            "the price from that day on; for labor also wage and burden",
            "{2026-03-01: 34.50}",
        ),
        field("sold in", "number", "0", "bought in such steps", "1/2"),
        field("at least", "number", "0", "smallest sale", "1"),
        field(
            "work",
            "rate",
            "",
            "hours that come with it",
            "16 hours per 100 ft",
        ),
        field(
            "taxed",
            "yes or no",
            "",
            "whether you pay sales tax on it; materials are",
            "yes",
        ),
    ],
};

pub const WAGE: FieldTable = FieldTable {
    name: "a price of labor",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "wage",
            "amount",
            "",
            "what an hour is paid, the crew's mean",
            "31.40",
        ),
        field(
            "burden",
            "percent",
            "0%",
            "taxes, insurance and paid days on top of it",
            "51%",
        ),
    ],
};

pub const HOLD: FieldTable = FieldTable {
    name: "a hold",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "an item of this book",
            "ready-mix 4000 air",
        ),
        field("price", "amount", "", "the promised price", "174.00"),
        field(
            "job",
            "name",
            "",
            "the `job` of a takeoff; left out, it serves any job",
            "Garden patio",
        ),
        field("from", "date", "", "first day it counts", "2026-04-15"),
        field(
            "until",
            "date",
            "",
            "last day it counts, tested against the pour",
            "2026-06-30",
        ),
        field(
            "note",
            "text",
            "",
            "who promised it",
            "promised by the dispatcher",
        ),
    ],
};
