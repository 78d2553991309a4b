//! A change order as the owner writes it: work added, work left out, lines with a price.

use super::job::{self, Customer, JobWritten};
use crate::reading::fields::field;
use crate::reading::{At, FieldTable, Fields, Node, Problem, Problems};
use crate::values::{Day, Money};

pub const CHANGE: FieldTable = FieldTable {
    name: "a change order",
    before: &[],
    includes: &[],
    fields: &[
        field(
            "change",
            "text",
            "required",
            "what it is, as the customer reads it",
            "A walk to the shed",
        ),
        field(
            "because",
            "text",
            "",
            "why, as the customer reads it",
            "You asked for it on June 12",
        ),
        field(
            "days",
            "number",
            "0",
            "working days more; -1 for one fewer",
            "1",
        ),
        field(
            "priced",
            "date",
            "the day of the change",
            "the day whose prices count, where `add` or `deduct` names no `pour`",
            "2026-06-15",
        ),
        field(
            "add",
            "keys of a takeoff",
            "",
            "work more; `title` is what the customer reads, else the names of its slabs",
            "{slabs: {walk: 20 ft x 3 ft}}",
        ),
        field(
            "deduct",
            "keys of a takeoff",
            "",
            "work less, written in the same way",
            "{title: No topsoil, extra: [topsoil: 1 cu yd]}",
        ),
        field(
            "same truck",
            "yes or no",
            "no",
            "the concrete of `add` comes with a load of the job, so that no truck and no short load is counted",
            "yes",
        ),
        field(
            "lines",
            "list of amounts",
            "",
            "what the customer pays more, or with a minus less, before tax",
            "[Downspout moved: 85.00]",
        ),
    ],
};

/// Keys of a takeoff that a part of a job cannot have.
const OF_THE_JOB: [&str; 8] = [
    "customer",
    "job",
    "measured",
    "quoted",
    "options",
    "photos",
    "assumptions",
    "not included",
];

/// A change order as written.
#[derive(Clone, Debug)]
pub struct ChangeWritten {
    pub title: At<String>,
    pub because: Option<String>,
    pub days: i32,
    pub priced: Option<Day>,
    /// Added concrete comes with a load of the job.
    pub same_truck: bool,
    pub add: Option<Box<JobWritten>>,
    pub deduct: Option<Box<JobWritten>>,
    pub lines: Vec<PriceLine>,
}

/// A line with a price of its own; below zero it is taken off.
#[derive(Clone, Debug)]
pub struct PriceLine {
    pub says: String,
    pub price: At<Money>,
}

/// Reads a change order for this customer; what cannot be read is reported.
pub fn read(customer: &Customer, node: &Node, problems: &mut Problems) -> Option<ChangeWritten> {
    let before = problems.len();
    let fields = node.fields(&CHANGE, problems).ok()?;
    let title = fields
        .required("change", problems)
        .ok()
        .and_then(|_| fields.read::<String>("change", problems));
    let because = fields
        .read::<String>("because", problems)
        .map(|at| at.value);
    let days = days(&fields, problems);
    let priced = fields.read("priced", problems).map(|at| at.value);
    let same_truck = fields.yes("same truck", problems);
    let add = part("add", customer, &fields, problems);
    let deduct = part("deduct", customer, &fields, problems);
    let lines: Vec<PriceLine> = fields
        .node("lines")
        .map(|node| {
            node.named("`lines`", problems)
                .into_iter()
                .filter_map(|(says, node)| line(says, node, problems))
                .collect()
        })
        .unwrap_or_default();
    let is_empty = add.is_none() && deduct.is_none() && lines.is_empty() && days == Some(0);
    if is_empty && problems.len() == before {
        problems.push(
            Problem::new("empty-change", "this change order changes nothing")
                .at(fields.heading())
                .help("write `add`, `deduct` or `lines`, or `days` where only the time changes"),
        );
    }
    (problems.len() == before).then_some(ChangeWritten {
        title: title?,
        because,
        days: days?,
        priced,
        same_truck: same_truck.is_some_and(|yes| yes.value),
        add,
        deduct,
        lines,
    })
}

fn days(fields: &Fields<'_>, problems: &mut Problems) -> Option<i32> {
    let Some(text) = fields.read::<String>("days", problems) else {
        return Some(0);
    };
    let days = text
        .value
        .parse()
        .ok()
        .filter(|days: &i32| days.abs() <= 365);
    if days.is_none() {
        problems.push(
            Problem::new(
                "bad-days",
                format!("`{}` is no number of working days", text.value),
            )
            .at(text.place)
            .help("write a whole number such as `2`, or `-1` for one day fewer"),
        );
    }
    days
}

fn part(
    key: &str,
    customer: &Customer,
    fields: &Fields<'_>,
    problems: &mut Problems,
) -> Option<Box<JobWritten>> {
    let node = fields.node(key)?;
    let before = problems.len();
    if node.is_map() {
        for entry in node.entries(key, problems) {
            if OF_THE_JOB.contains(&entry.key.as_str()) {
                problems.push(
                    Problem::new(
                        "not-in-change",
                        format!("`{key}` of a change order has no `{}`", entry.key),
                    )
                    .at(entry.key_place)
                    .help("take it out: that was settled with the quote"),
                );
            }
        }
    }
    let written = job::read_for(customer.clone(), node, problems).ok()?;
    let is_nameless = written.head.title.is_none() && written.slabs.read.is_empty();
    if is_nameless && problems.len() == before {
        problems.push(
            Problem::new(
                "untitled-work",
                format!("the customer has to read what `{key}` is"),
            )
            .at(written.place)
            .help("write `title: ` and a few words for it, since it has no slab to be named by"),
        );
    }
    Some(Box::new(written))
}

fn line(says: At<String>, node: &Node, problems: &mut Problems) -> Option<PriceLine> {
    let text = node.text(&format!("`{}`", says.value), problems).ok()?;
    let (is_less, amount) = match text.strip_prefix('-') {
        Some(amount) => (true, amount.trim_start()),
        None => (false, text),
    };
    match amount.parse::<Money>() {
        Ok(amount) => Some(PriceLine {
            says: says.value,
            price: At {
                value: if is_less { -amount } else { amount },
                place: node.place,
            },
        }),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(node.place));
            None
        }
    }
}
