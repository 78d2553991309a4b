//! How quotes are numbered and bills are made.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use crate::input::phrases::{Days, LateCharge, Pattern};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Problem, Problems, Read};
use crate::values::{Amount, Unit};

keys! {
    /// The owner's rows of numbers.
    pub struct Numbers in "`numbers`" {
        pattern: At<Pattern> = "pattern", usual "YYYY-0000",
            "YYYY or YY is the year, the zeros are counted; letters in front make a series for another person or machine",
            "B-YYYY-0000";
        /// The first count of a row that has none yet.
        start: u32 = "start" as "number", usual "1",
            "the first number of a row that has none yet", "41", by start;
    }
}

keys! {
    /// How bills are made.
    pub struct Invoices in "`invoices`" {
        due: Days = "due", usual "10 days", "from the invoice to the day it is due", "10 days";
        /// Sentences for the customer, the first word in bold.
        how_to_pay: Vec<String> = "how to pay", none, "what the customer reads; the first word is in bold",
            "[\"Check to Larkspur Flatwork, 4 Kiln Yard, Quillhaven.\"]";
        late_charge: Option<LateCharge> = "late charge", none,
            "what your terms ask of an invoice past its day, simple or compound; it is shown and never billed by itself",
            "1% a month, simple";
        /// What the owner must not miss: so many days after the last pour.
        notices: Vec<(String, Days)> = "notices" as "list of days", none,
            "dates you must not miss, counted from the last pour; told to you with the final invoice, never to the customer",
            "[Lien notice: 60 days]", by notices;
    }
}

placeless! { LateCharge }

fn notices(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<(String, Days)> {
    let notices = fields.named(key, problems).into_iter();
    notices
        .filter_map(|(name, days)| Some((name.value, days.read(problems).ok()?)))
        .collect()
}

fn start(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<u32> {
    let start: At<Amount> = fields.need(key, problems)?;
    let number = start.value.value;
    let whole =
        start.value.unit == Unit::Plain && Decimal::ONE <= number && number.fract().is_zero();
    number.to_u32().filter(|_| whole).ok_or_else(|| {
        let message = "the first number is a whole one, 1 or more";
        let problem = Problem::new("bad-start", message).at(start.place);
        problems.push(problem.help("write, for example, `start: 41`"))
    })
}
