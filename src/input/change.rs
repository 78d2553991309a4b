//! A change order as the owner writes it: work added, work left out, lines with a price.

use std::str::FromStr;

use super::job::{self, WorkWritten};
use super::signed::Signed;
use crate::reading::keys::{keys, placeless};
use crate::reading::written::written;
use crate::reading::{At, Fields, FromLine, Node, Problem, Problems, Read};
use crate::values::{Day, Unreadable};

keys! {
    /// A change order as written.
    pub struct ChangeWritten in "a change order" {
        title: String = "change", required, "what it is, as the customer reads it", "A walk to the shed";
        because: Option<String> = "because", none,
            "why, as the customer reads it", "You asked for it on June 12";
        days: WorkingDays = "days", usual "0", "working days more; -1 for one fewer", "1";
        priced: Option<Day> = "priced", else "the day of the change",
            "the day whose prices count, where `add` or `deduct` names no `pour`", "2026-06-15";
        add: Option<Box<WorkWritten>> = "add" as "keys of a takeoff", none,
            "work more; `title` is what the customer reads, else the names of its slabs",
            "{slabs: {walk: 20 ft x 3 ft}}", by work;
        deduct: Option<Box<WorkWritten>> = "deduct" as "keys of a takeoff", none,
            "work less, written in the same way", "{title: No topsoil, extra: [topsoil: 1 cu yd]}", by work;
        /// Added concrete comes with a load of the job.
        same_truck: bool = "same truck", usual "no",
            "the concrete of `add` comes with a load of the job, so that no truck and no short load is counted",
            "yes";
        lines: Vec<PriceLine> = "lines" as "list of amounts", none,
            "what the customer pays more, or with a minus less, before tax", "[Downspout moved: 85.00]";
    }
}

/// Keys of a takeoff that a part of a job cannot have.
const OF_THE_JOB: [&str; 9] = [
    "customer",
    "job",
    "measured",
    "quoted",
    "options",
    "discounts",
    "photos",
    "assumptions",
    "not included",
];

/// Days by which the work takes longer, or below zero shorter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkingDays(pub i32);

written! { WorkingDays = "number"; }
placeless! { WorkingDays }

impl FromStr for WorkingDays {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let days = text.parse().ok().filter(|days: &i32| days.abs() <= 365);
        days.map(Self).ok_or_else(|| {
            let message = format!("`{text}` is no number of working days");
            let help = "write a whole number such as `2`, or `-1` for one day fewer";
            Unreadable::new("bad-days", message, help)
        })
    }
}

/// A line with a price of its own; below zero it is taken off.
#[derive(Clone, Debug)]
pub struct PriceLine {
    pub says: String,
    pub price: At<Signed>,
}

impl FromLine for PriceLine {
    fn from_line(says: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        Ok(Self {
            says: says.value,
            price: node.read_at(problems)?,
        })
    }
}

/// Reads a change order; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Read<ChangeWritten> {
    let before = problems.len();
    let change: ChangeWritten = node.group(problems)?;
    problems.none_since(before)?;
    let has_work = change.add.is_some() || change.deduct.is_some() || !change.lines.is_empty();
    if has_work || change.days != WorkingDays(0) {
        return Ok(change);
    }
    let problem = Problem::new("empty-change", "this change order changes nothing");
    Err(problems.push(
        problem
            .at(node.heading)
            .help("write `add`, `deduct` or `lines`, or `days` where only the time changes"),
    ))
}

fn work(
    change: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<Box<WorkWritten>>> {
    let Some(node) = change.node(key) else {
        return Ok(None);
    };
    let before = problems.len();
    if node.is_map() {
        for entry in node.entries(key, problems) {
            if OF_THE_JOB.contains(&entry.key.as_str()) {
                let message = format!("`{key}` of a change order has no `{}`", entry.key);
                let problem = Problem::new("not-in-change", message).at(entry.key_place);
                problems.push(problem.help("take it out: that was settled with the quote"));
            }
        }
    }
    let work = job::read_work(node, problems)?;
    if work.is_nameless() && problems.len() == before {
        let message = format!("the customer has to read what `{key}` is");
        let help = "write `title: ` and a few words for it, since it has no slab to be named by";
        problems.push(
            Problem::new("untitled-work", message)
                .at(work.place)
                .help(help),
        );
    }
    Ok(Some(Box::new(work)))
}
