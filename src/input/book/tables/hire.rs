//! The keys of hired machines, and of charges that have keys of their own.

use crate::reading::FieldTable;
use crate::reading::fields::field;

pub const WINTER: FieldTable = FieldTable {
    name: "`winter`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "an item by the cu yd, load or trip",
            "winter heat",
        ),
        field(
            "during",
            "days of the year",
            "",
            "first and last day, month and day",
            "11-01 to 03-31",
        ),
    ],
};

pub const RETURNED: FieldTable = FieldTable {
    name: "`returned`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "an item by the cu yd, load or trip",
            "returned concrete",
        ),
        field(
            "over",
            "cubic yards",
            "0 cu yd",
            "so much may come back without charge",
            "1 cu yd",
        ),
    ],
};

pub const PUMP: FieldTable = FieldTable {
    name: "`pump`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item by the hour; its `sold in` and `at least` are those of the hire",
            "line pump",
        ),
        field("rate", "rate", "", "what it pumps", "20 cu yd per hour"),
        field(
            "set up",
            "hours",
            "0 hours",
            "paid beside pumping: setting up and washing out",
            "1 hour",
        ),
        field(
            "travel time",
            "hours",
            "0 hours",
            "paid for the way, where it is paid by the hour",
            "1/2 hour",
        ),
        field(
            "base charge",
            "name",
            "",
            "an item charged once a pour",
            "pump on site",
        ),
        field(
            "travel",
            "name",
            "",
            "an item charged once a pour for the way",
            "pump travel",
        ),
        field(
            "prime",
            "name",
            "",
            "an item charged once a pour, such as a bag of primer",
            "primer",
        ),
        field(
            "washout",
            "name",
            "",
            "an item charged once a pour",
            "washout bag",
        ),
        field(
            "hose",
            "keys",
            "",
            "hose beyond what comes with the pump, by `distance` of the access",
            "{included: 100 ft, item: extra hose}",
        ),
    ],
};

pub const HOSE: FieldTable = FieldTable {
    name: "`hose`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item for each foot more",
            "extra hose",
        ),
        field(
            "included",
            "length",
            "0 ft",
            "what comes with the pump",
            "100 ft",
        ),
    ],
};

pub const BUGGY: FieldTable = FieldTable {
    name: "`buggy`",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "item",
            "name",
            "",
            "the item by the day or hour; its `sold in` is the step of the hire",
            "power buggy",
        ),
        field(
            "width",
            "length",
            "",
            "of the machine; a narrower gate is asked about",
            "36 in",
        ),
    ],
};
