//! How far a job has come, line by line, as the owner writes it for a progress invoice.

use std::str::FromStr;

use super::phrases::Share;
use super::signed::Signed;
use crate::reading::keys::{keys, placeless};
use crate::reading::written::written;
use crate::reading::{
    At, Below, Fields, FromLine, Group as _, Node, Place, Problem, Problems, Read,
};
use crate::values::{Day, Money, Unreadable};

keys! {
    /// Progress as written.
    pub struct ProgressWritten in "a schedule of values" {
        to: Option<Day> = "to", else "the day of the invoice", "the last day that is counted", "2026-06-30";
        lines: Vec<LineWritten> = "lines" as "list of lines", required,
            "each with a name and its `value`; the values make the agreed price before tax, changes included",
            "[Base and forms: {value: 2400.00, done: 100%}]";
        retainage: At<Share> = "retainage" as "percent or amount", usual "0%",
            "withheld to date from work and stored materials", "5%";
        released: At<Money> = "released", usual "0.00", "retainage paid out to date", "500.00";
        held_back: Vec<HeldBack> = "held back" as "list of amounts", none,
            "other sums withheld to date, as the customer reads them", "[Corner to be patched: 150.00]";
        .. place: Place;
    } then each_once
}

keys! {
    pub struct LineWritten in "a line of a schedule of values" {
        ^ says: At<String>;
        value: Signed = "value", required,
            "its part of the agreed price; with a minus where it takes off", "2400.00";
        done: Done = "done", usual "0%", "work in place to date, of its value", "40%";
        stored: At<Money> = "stored", usual "0.00", "materials on the site that are not in place yet", "800.00";
        bears_retainage: bool = "retainage", usual "yes", "whether retainage is withheld from it", "no";
    }
}

impl FromLine for LineWritten {
    const BELOW: Below = Below::Each(&[Self::TABLE]);

    fn from_line(says: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        node.group_called(says, problems)
    }
}

/// A sum that is withheld, as the customer reads it.
#[derive(Clone, Debug)]
pub struct HeldBack {
    pub says: String,
    pub sum: Money,
}

impl FromLine for HeldBack {
    fn from_line(says: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        Ok(Self {
            says: says.value,
            sum: node.read(problems)?,
        })
    }
}

/// How much of a line is in place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    Part(Share),
    /// Below zero where the line takes off.
    Less(Money),
}

written! { Done = "percent or amount"; }
placeless! { Done }

impl FromStr for Done {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.starts_with('-') {
            return text.parse().map(|Signed(less)| Self::Less(less));
        }
        text.parse().map(Self::Part)
    }
}

/// Reads a schedule; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Read<ProgressWritten> {
    let before = problems.len();
    let progress = node.group(problems)?;
    problems.none_since(before)?;
    Ok(progress)
}

fn each_once(
    progress: ProgressWritten,
    _: &Fields<'_>,
    problems: &mut Problems,
) -> Read<ProgressWritten> {
    let before = problems.len();
    let lines = &progress.lines;
    for (i, one) in lines.iter().enumerate() {
        let mut earlier = lines[..i].iter();
        if let Some(first) = earlier.find(|other| other.says.value == one.says.value) {
            let message = format!("`{}` stands twice in the schedule", one.says.value);
            problems.push(
                Problem::new("line-twice", message)
                    .at(one.says.place)
                    .also(first.says.place, "here for the first time")
                    .help("give one of them another name"),
            );
        }
    }
    problems.none_since(before)?;
    Ok(progress)
}
