//! How quotes are numbered and bills are made.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use super::tables;
use crate::input::phrases::{Days, LateCharge, Pattern};
use crate::reading::{At, Fields, Node, Place, Problem, Problems};
use crate::values::{Amount, Unit};

/// The owner's rows of numbers.
#[derive(Clone, Debug)]
pub struct Numbers {
    pub pattern: At<Pattern>,
    /// The first count of a row that has none yet.
    pub start: u32,
}

/// How bills are made.
#[derive(Clone, Debug)]
pub struct Invoices {
    /// Days from the invoice to the day it is due.
    pub due: Days,
    /// Sentences for the customer, the first word in bold.
    pub how_to_pay: Vec<String>,
    pub late_charge: Option<LateCharge>,
    /// What the owner must not miss: so many days after the last pour.
    pub notices: Vec<(String, Days)>,
}

pub(super) fn invoices(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<Invoices> {
    let fields = match node {
        Some(node) => node.fields(&tables::INVOICES, problems).ok()?,
        None => Fields::empty(&tables::INVOICES, heading),
    };
    let due: Option<At<Days>> = fields.need("due", problems).ok();
    let how_to_pay = fields
        .node("how to pay")
        .map(|node| super::lists::texts(node, "how to pay", problems))
        .unwrap_or_default();
    let notices = fields.node("notices").map(|node| notices(node, problems));
    let late_charge: Option<At<LateCharge>> = fields.read("late charge", problems);
    Some(Invoices {
        due: due?.value,
        how_to_pay,
        late_charge: late_charge.map(|at| at.value),
        notices: notices.unwrap_or_default(),
    })
}

fn notices(node: &Node, problems: &mut Problems) -> Vec<(String, Days)> {
    let named = crate::input::named_items(node, "`notices`", problems);
    named
        .into_iter()
        .filter_map(|(name, days)| Some((name.value, days.read::<Days>(problems).ok()?)))
        .collect()
}

pub(super) fn read(
    node: Option<&Node>,
    heading: Place,
    problems: &mut Problems,
) -> Option<Numbers> {
    let fields = match node {
        Some(node) => node.fields(&tables::NUMBERS, problems).ok()?,
        None => Fields::empty(&tables::NUMBERS, heading),
    };
    let pattern = fields.need("pattern", problems).ok();
    let start: Option<At<Amount>> = fields.need("start", problems).ok();
    let start = start?;
    let whole = (start.value.unit == Unit::Plain && Decimal::ONE <= start.value.value)
        .then_some(start.value.value)
        .filter(|value| value.fract().is_zero())
        .and_then(|value| value.to_u32());
    let Some(start) = whole else {
        problems.push(
            Problem::new("bad-start", "the first number is a whole one, 1 or more")
                .at(start.place)
                .help("write, for example, `start: 41`"),
        );
        return None;
    };
    Some(Numbers {
        pattern: pattern?,
        start,
    })
}
