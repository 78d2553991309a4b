//! How far a job has come, line by line, as the owner writes it for a progress invoice.

use super::phrases::Share;
use crate::reading::fields::field;
use crate::reading::{At, FieldTable, Node, Place, Problem, Problems};
use crate::values::{Day, Money, Unreadable};

pub const PROGRESS: FieldTable = FieldTable {
    name: "a schedule of values",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "to",
            "date",
            "the day of the invoice",
            "the last day that is counted",
            "2026-06-30",
        ),
        field(
            "lines",
            "list of lines",
            "required",
            "each with a name and its `value`; the values make the agreed price before tax, changes included",
            "[Base and forms: {value: 2400.00, done: 100%}]",
        ),
        field(
            "retainage",
            "percent or amount",
            "0%",
            "withheld to date from work and stored materials",
            "5%",
        ),
        field(
            "released",
            "amount",
            "0.00",
            "retainage paid out to date",
            "500.00",
        ),
        field(
            "held back",
            "list of amounts",
            "",
            "other sums withheld to date, as the customer reads them",
            "[Corner to be patched: 150.00]",
        ),
    ],
};

pub const PROGRESS_LINE: FieldTable = FieldTable {
    name: "a line of a schedule of values",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "value",
            "amount",
            "required",
            "its part of the agreed price; with a minus where it takes off",
            "2400.00",
        ),
        field(
            "done",
            "percent or amount",
            "0%",
            "work in place to date, of its value",
            "40%",
        ),
        field(
            "stored",
            "amount",
            "0.00",
            "materials on the site that are not in place yet",
            "800.00",
        ),
        field(
            "retainage",
            "yes or no",
            "yes",
            "whether retainage is withheld from it",
            "no",
        ),
    ],
};

/// Progress as written.
#[derive(Clone, Debug)]
pub struct ProgressWritten {
    pub to: Option<Day>,
    pub lines: Vec<LineWritten>,
    pub retainage: At<Share>,
    pub released: At<Money>,
    pub held_back: Vec<(String, Money)>,
    pub place: Place,
}

#[derive(Clone, Debug)]
pub struct LineWritten {
    pub says: At<String>,
    pub value: Money,
    pub done: Done,
    pub stored: Money,
    pub bears_retainage: bool,
}

/// How much of a line is in place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    Part(Share),
    /// Below zero where the line takes off.
    Less(Money),
}

/// Reads a schedule; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Option<ProgressWritten> {
    let before = problems.len();
    let fields = node.fields(&PROGRESS, problems).ok()?;
    let to = fields.read("to", problems).map(|at| at.value);
    let lines: Vec<LineWritten> = fields
        .required("lines", problems)
        .ok()
        .map(|node| {
            node.named("`lines`", problems)
                .into_iter()
                .filter_map(|(says, node)| line(says, node, problems))
                .collect()
        })
        .unwrap_or_default();
    for (i, one) in lines.iter().enumerate() {
        let mut earlier = lines[..i].iter();
        if let Some(first) = earlier.find(|other| other.says.value == one.says.value) {
            problems.push(
                Problem::new(
                    "line-twice",
                    format!("`{}` stands twice in the schedule", one.says.value),
                )
                .at(one.says.place)
                .also(first.says.place, "here for the first time")
                .help("give one of them another name"),
            );
        }
    }
    let retainage = fields.need("retainage", problems).ok();
    let released = fields.need("released", problems).ok();
    let held_back = fields
        .node("held back")
        .map(|node| {
            node.named("`held back`", problems)
                .into_iter()
                .filter_map(|(says, node)| Some((says.value, node.read(problems).ok()?)))
                .collect()
        })
        .unwrap_or_default();
    (problems.len() == before).then_some(ProgressWritten {
        to,
        lines,
        retainage: retainage?,
        released: released?,
        held_back,
        place: fields.heading(),
    })
}

fn line(says: At<String>, node: &Node, problems: &mut Problems) -> Option<LineWritten> {
    let fields = node.fields(&PROGRESS_LINE, problems).ok()?;
    fields.required("value", problems).ok()?;
    let value = fields.read::<String>("value", problems)?;
    let value = told(signed(&value.value), value.place, problems);
    let done = match fields.read::<String>("done", problems) {
        None => Some(Done::Part(Share::Amount(Money::ZERO))),
        Some(text) => {
            let done = if text.value.starts_with('-') {
                signed(&text.value).map(Done::Less)
            } else {
                text.value.parse().map(Done::Part)
            };
            told(done, text.place, problems)
        }
    };
    let stored: Option<At<Money>> = fields.need("stored", problems).ok();
    let bears = fields
        .yes("retainage", problems)
        .is_none_or(|yes| yes.value);
    Some(LineWritten {
        says,
        value: value?,
        done: done?,
        stored: stored?.value,
        bears_retainage: bears,
    })
}

/// `2400.00`, or `-350.00` where it takes off.
fn signed(text: &str) -> Result<Money, Unreadable> {
    match text.strip_prefix('-') {
        Some(less) => less.trim_start().parse().map(|less: Money| -less),
        None => text.parse(),
    }
}

fn told<T>(read: Result<T, Unreadable>, place: Place, problems: &mut Problems) -> Option<T> {
    read.map_err(|unreadable| problems.push(Problem::from(unreadable).at(place)))
        .ok()
}
