//! The keys of numbers and bills.

use super::field;
use crate::reading::FieldTable;

pub const NUMBERS: FieldTable = FieldTable {
    name: "`numbers`",
    includes: &[],
    fields: &[
        field(
            "pattern",
            "pattern",
            "YYYY-0000",
            "YYYY or YY is the year, the zeros are counted; letters in front make a series for another person or machine",
            "B-YYYY-0000",
        ),
        field(
            "start",
            "number",
            "1",
            "the first number of a row that has none yet",
            "41",
        ),
    ],
};

pub const INVOICES: FieldTable = FieldTable {
    name: "`invoices`",
    includes: &[],
    fields: &[
        field(
            "due",
            "days",
            "10 days",
            "from the invoice to the day it is due",
            "10 days",
        ),
        field(
            "how to pay",
            "list of sentences",
            "",
            "what the customer reads; the first word is in bold",
            "[\"Check to Larkspur Flatwork, 4 Kiln Yard, Quillhaven.\"]",
        ),
        field(
            "late charge",
            "rate and way",
            "",
            "what your terms ask of an invoice past its day, simple or compound; it is shown and never billed by itself",
            "1% a month, simple",
        ),
        field(
            "notices",
            "days by notice",
            "",
            "dates you must not miss, counted from the last pour; told to you with the final invoice, never to the customer",
            "[Lien notice: 60 days]",
        ),
    ],
};

pub const ESCALATION: FieldTable = FieldTable {
    name: "`escalation`",
    includes: &[],
    fields: &[
        field(
            "of",
            "text",
            "Ready-mix",
            "what it is, as the customer reads it",
            "Ready-mix",
        ),
        field(
            "index",
            "text",
            "",
            "whose published price counts; never what you pay",
            "the ready-mix price the county posts",
        ),
        field(
            "reference",
            "amount",
            "",
            "that price when the quote goes out, for a cubic yard",
            "190.00",
        ),
        field(
            "over",
            "percent",
            "0%",
            "so much either way is not followed",
            "5%",
        ),
    ],
};
