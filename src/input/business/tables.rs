//! The keys of `business.yaml`: what each is, its default, an example.
//!
//! These tables feed the reader, the suggestions, the schema and the guide.

mod office;
mod policy;

pub use crate::input::site::tables::USUAL_SITE;
pub use office::{ESCALATION, INVOICES, NUMBERS};
pub use policy::{CREW, CURE, ORDER, QUOTE, UNFORESEEN};

use crate::reading::{Field, FieldTable, IfLeftOut};

pub(crate) const fn field(
    key: &'static str,
    kind: &'static str,
    default: &'static str,
    meaning: &'static str,
    example: &'static str,
) -> Field {
    Field {
        key,
        kind,
        if_left_out: if default.is_empty() {
            IfLeftOut::Nothing
        } else {
            IfLeftOut::Usual(default)
        },
        meaning,
        example,
    }
}

pub const BUSINESS: FieldTable = FieldTable {
    name: "the business",
    includes: &[],
    fields: &[
        field("format", "number", "1", "version of this file's keys", "1"),
        field(
            "firm",
            "keys",
            "",
            "who you are, for the letterhead",
            "{name: Larkspur Flatwork}",
        ),
        field(
            "books",
            "list of paths",
            "",
            "price books; the first is the usual one",
            "[price-books/my-plant.yaml]",
        ),
        field(
            "price",
            "keys",
            "",
            "from cost to price",
            "{overhead: 14%, profit: markup 25%}",
        ),
        field(
            "order",
            "keys",
            "",
            "what is ordered beyond the drawing",
            "{allowance: 7%}",
        ),
        field("crew", "keys", "", "people and hours", "{people: 3}"),
        field(
            "quote",
            "keys",
            "",
            "days and limits of a quote",
            "{good for: 30 days}",
        ),
        field(
            "numbers",
            "keys",
            "",
            "how quotes are numbered",
            "{pattern: YYYY-0000, start: 41}",
        ),
        field(
            "invoices",
            "keys",
            "",
            "how bills are made",
            "{due: 10 days}",
        ),
        field(
            "escalation",
            "keys",
            "",
            "a clause by which the price follows a published price of concrete; printed with the terms",
            "{index: the ready-mix price the county posts, reference: 190.00, over: 5%}",
        ),
        field(
            "payments",
            "list",
            "",
            "when the customer pays, and which share",
            "[When you sign: 10%, When it is done: rest]",
        ),
        field(
            "kinds",
            "keys by kind",
            "",
            "what is usual for each kind of slab",
            "{patio: {thickness: 4 in, mix: exterior}}",
        ),
        field(
            "cure",
            "keys",
            "",
            "temperatures and waiting times",
            "{cool: 60, warm: 80}",
        ),
        field(
            "promises",
            "list of sentences",
            "",
            "what the workmanship promise covers",
            "[We come back within a year.]",
        ),
        field(
            "assumptions",
            "list of sentences",
            "",
            "what every quote counts on",
            "[Water and power at the house]",
        ),
        field(
            "not included",
            "list of sentences",
            "",
            "what no quote contains",
            "[Town permit]",
        ),
        field(
            "unforeseen",
            "list of prices",
            "",
            "unit prices for what nobody could see, in dollars or made of items",
            "[Soft soil out: 150.00 per cu yd]",
        ),
        field(
            "terms",
            "list of sentences",
            "",
            "your terms",
            "[Invoices are due in 10 days.]",
        ),
        field(
            "site",
            "keys by question",
            "",
            "usual answers about a site, and which questions are asked",
            "{washout: on site, ask: [overhead wires]}",
        ),
    ],
};

pub const FIRM: FieldTable = FieldTable {
    name: "the firm",
    includes: &[],
    fields: &[
        field("name", "text", "", "your firm's name", "Larkspur Flatwork"),
        field(
            "does",
            "text",
            "",
            "one line below the name",
            "Concrete patios and walks",
        ),
        field("phone", "text", "", "telephone", "555-0142"),
        field("email", "text", "", "mail address", "office@example.com"),
        field(
            "address",
            "text",
            "",
            "street and town",
            "4 Kiln Yard, Quillhaven",
        ),
        field(
            "license",
            "text",
            "",
            "licence number, where you have one",
            "0000-118",
        ),
        field(
            "insurance",
            "text",
            "",
            "what you are insured for",
            "Liability insured to $1,000,000",
        ),
        field(
            "logo",
            "path",
            "",
            "a PNG or JPEG inside the business folder",
            "logo.png",
        ),
    ],
};

pub const PRICE: FieldTable = FieldTable {
    name: "`price`",
    includes: &[],
    fields: &[
        field("overhead", "percent", "0%", "of direct cost", "14%"),
        field(
            "contingency",
            "percent",
            "0%",
            "of direct cost, for what goes wrong; or `3% of cost and overhead`",
            "3%",
        ),
        field(
            "profit",
            "markup or margin",
            "",
            "markup is on cost, margin is of the price before tax",
            "markup 25%",
        ),
        field(
            "minimum job",
            "amount",
            "0.00",
            "no job is sold for less, before tax",
            "1500.00",
        ),
        field(
            "round up to",
            "amount",
            "0.01",
            "the price before tax goes up to a multiple of this",
            "10.00",
        ),
        field(
            "margin floor",
            "percent",
            "0%",
            "you are told when a job leaves less",
            "15%",
        ),
        field(
            "tax",
            "none, one tax, or a list",
            "none",
            "`on` is none, sale, receipts, materials or purchases",
            "{on: sale, rate: 6%, name: sales tax}",
        ),
    ],
};

pub const TAX: FieldTable = FieldTable {
    name: "`tax`",
    includes: &[],
    fields: &[
        field(
            "on",
            "word",
            "none",
            "none; sale (added to the price); receipts (added to the price, and on itself too: 2% of all you receive is 2% ÷ (1 − 2%) of the price); materials (at the selling price); purchases (paid by you, a cost)",
            "sale",
        ),
        field("rate", "percent", "0%", "the combined rate", "6%"),
        field(
            "name",
            "text",
            "sales tax",
            "what the customer reads",
            "sales tax",
        ),
    ],
};

/// What a kind and a slab can both say.
pub const SLAB_VALUES: &[Field] = &[
    field(
        "thickness",
        "length",
        "",
        "of the concrete; `4 in to 6 in north` where one end is thicker",
        "4 in",
    ),
    field("mix", "name", "", "a mix of the price book", "exterior"),
    field(
        "base",
        "depth of material",
        "none",
        "compacted under the slab",
        "4 in of crushed stone",
    ),
    field(
        "bars",
        "bar at spacing",
        "none",
        "both ways; or each by itself, `no. 4 at 12 in east-west and no. 3 at 18 in north-south`",
        "no. 3 at 18 in",
    ),
    field("mesh", "style", "none", "welded wire", "6x6 W1.4/W1.4"),
    field(
        "dowels",
        "name, at spacing",
        "the book's only smooth kind",
        "across its doweled edges",
        "smooth at 24 in",
    ),
    field(
        "ties",
        "name, at spacing",
        "the book's only deformed kind",
        "across its tied edges",
        "no. 4 ties",
    ),
    field(
        "fiber",
        "name",
        "none",
        "a fiber of the price book",
        "micro",
    ),
    field("finish", "name", "broom", "of the surface", "broom"),
    field(
        "border",
        "width of a finish",
        "none",
        "a band of another finish along the open edges",
        "12 in of washed pebbles",
    ),
    field(
        "color",
        "name",
        "the finish's",
        "a color of the price book, all through the concrete; or none",
        "sandstone",
    ),
    field(
        "seal",
        "name",
        "the finish's",
        "a sealer of the price book, put on later; or none",
        "wet look",
    ),
    field(
        "curing",
        "word",
        "the finish's, else compound",
        "compound (sprayed on), cover (laid over it), wet or none",
        "wet",
    ),
    field(
        "joints",
        "length",
        "none",
        "longest side of a panel",
        "8 ft",
    ),
    field(
        "fall",
        "slope",
        "level",
        "so that water runs off",
        "1/4 in per ft",
    ),
    field(
        "thickened",
        "edges",
        "none",
        "edges that go deeper, with the whole depth",
        "all open, 12 in wide, 12 in deep",
    ),
    field(
        "vapor retarder",
        "yes or no",
        "no",
        "a sheet under the slab",
        "yes",
    ),
];

pub const KIND: FieldTable = FieldTable {
    name: "a kind of slab",
    includes: &[],
    fields: SLAB_VALUES,
};
