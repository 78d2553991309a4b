//! The keys of `order`, `crew`, `quote` and `cure`.

use super::field;
use crate::reading::FieldTable;

pub const ORDER: FieldTable = FieldTable {
    name: "`order`",
    includes: &[],
    fields: &[
        field(
            "allowance",
            "percent",
            "7%",
            "concrete over the drawing",
            "7%",
        ),
        field(
            "thickness allowance",
            "length",
            "0 in",
            "how much too deep the ground may be, times the area",
            "1/4 in",
        ),
        field(
            "smallest allowance",
            "cubic yards",
            "0 cu yd",
            "never less than this",
            "1/4 cu yd",
        ),
        field(
            "cover",
            "length",
            "2 in",
            "from the edge of the slab to the end of a bar",
            "2 in",
        ),
        field("stake spacing", "length", "3 ft", "along a form", "3 ft"),
        field(
            "chair area",
            "square feet",
            "9 sq ft",
            "slab held by one chair",
            "9 sq ft",
        ),
        field(
            "compound coverage",
            "square feet",
            "200 sq ft",
            "slab cured by a gallon",
            "200 sq ft",
        ),
        field(
            "crossings tied",
            "percent",
            "50%",
            "share of the crossings of bars that are tied",
            "50%",
        ),
        field(
            "wire for a tie",
            "length",
            "12 in",
            "wire for one tie, what falls off included",
            "12 in",
        ),
        field(
            "tie wire",
            "rate",
            "3.5 lb per 336 ft",
            "weight and length of a roll",
            "3.5 lb per 336 ft",
        ),
        field(
            "deep form over",
            "length",
            "8 in",
            "deeper forms go by the rate `form deep`, if the book has it",
            "8 in",
        ),
        field(
            "retarder width",
            "length",
            "10 ft",
            "of a sheet of vapor retarder",
            "10 ft",
        ),
        field(
            "retarder lap",
            "length",
            "6 in",
            "where two sheets meet",
            "6 in",
        ),
        field(
            "groove depth",
            "length",
            "",
            "how deep your groover or saw cuts; you are told where a slab asks for more",
            "1 in",
        ),
        field(
            "smallest opening",
            "square feet",
            "2 sq ft",
            "a smaller opening is formed, but not taken off the area; nor a smaller box off the concrete",
            "2 sq ft",
        ),
    ],
};

pub const CREW: FieldTable = FieldTable {
    name: "`crew`",
    includes: &[],
    fields: &[
        field("people", "number", "2", "in the crew", "3"),
        field("hours in a day", "number", "8", "worked in a full day", "8"),
        field(
            "travel",
            "hours",
            "0 hours",
            "each person, each day; set-up too if you count it here",
            "3/4 hour",
        ),
        field(
            "set up and clean up",
            "hours",
            "0 hours",
            "each person, each day, where `travel` does not hold it",
            "1/4 hour",
        ),
        field(
            "round days up to",
            "number",
            "1/2",
            "crew days go up to such steps; 0 charges the hours",
            "1/2",
        ),
        field(
            "count days",
            "words",
            "by the job",
            "by the job, or by stage: remove, form, place, strip and return are visits of their own",
            "by stage",
        ),
        field(
            "charge",
            "words",
            "crew days",
            "crew days or hours; you see both",
            "hours",
        ),
        field("labor lines", "words", "one", "one, or by task", "by task"),
        field(
            "difficulty",
            "percent",
            "100%",
            "multiplies every task except travel",
            "110%",
        ),
    ],
};

/// A unit price that is made of what the work takes.
pub const UNFORESEEN: FieldTable = FieldTable {
    name: "a price for the unforeseen",
    includes: &[],
    fields: &[
        field("per", "unit", "", "what the price is for", "cu yd"),
        field(
            "of",
            "keys by item",
            "",
            "how much of which item of the price book, or of which purpose under its `use`, one takes; overhead, contingency and profit are added as for the job",
            "{ready-mix: 1 cu yd, labor: 1.2 hours}",
        ),
    ],
};

pub const QUOTE: FieldTable = FieldTable {
    name: "`quote`",
    includes: &[],
    fields: &[
        field(
            "good for",
            "days",
            "30 days",
            "how long a quote stands",
            "30 days",
        ),
        field(
            "lead time",
            "days",
            "30 days",
            "from the quote to the pour, when the takeoff names no day",
            "35 days",
        ),
        field(
            "start window",
            "days",
            "11 days",
            "how wide the promised start is",
            "11 days",
        ),
        field(
            "price stale after",
            "days",
            "60 days",
            "a price older than this is worth a call",
            "60 days",
        ),
        field(
            "deposit cap",
            "percent",
            "100%",
            "the most you may ask when the contract is signed; check your state",
            "33%",
        ),
        field(
            "deposit limit",
            "amount",
            "0.00",
            "and never more than this; 0 means no such limit",
            "1000.00",
        ),
        field(
            "right to cancel",
            "yes or no",
            "no",
            "whether your customers may cancel within three business days; check your state's law",
            "yes",
        ),
    ],
};

pub const CURE: FieldTable = FieldTable {
    name: "`cure`",
    includes: &[],
    fields: &[
        field(
            "cool",
            "degrees F",
            "60",
            "a cool spell, day and night averaged",
            "60",
        ),
        field(
            "warm",
            "degrees F",
            "80",
            "a warm spell, day and night averaged",
            "80",
        ),
        field("walk", "days", "2 days", "never promised earlier", "2 days"),
        field("car", "days", "7 days", "never promised earlier", "7 days"),
        field(
            "heavier vehicle",
            "days",
            "14 days",
            "never promised earlier",
            "14 days",
        ),
        field(
            "seal",
            "days",
            "28 days",
            "never promised earlier",
            "28 days",
        ),
        field(
            "strength to walk",
            "percent",
            "25%",
            "of the strength ordered",
            "25%",
        ),
        field(
            "strength for a car",
            "percent",
            "75%",
            "of the strength ordered",
            "75%",
        ),
        field(
            "strength for a heavier vehicle",
            "percent",
            "95%",
            "of the strength ordered",
            "95%",
        ),
    ],
};
