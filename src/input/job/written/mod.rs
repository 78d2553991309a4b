//! A takeoff exactly as written, before any name is looked up.

mod head;
mod lists;
mod openings;
pub(super) mod options;
mod pours;
mod shape;
mod slab;

pub use head::{Customer, Exposure, JobHead};
pub use lists::{Extra, ExtraWhat, Says, SetTo};
pub use openings::OpeningWritten;
pub(super) use openings::wrong_edge;
pub use pours::PourWritten;
pub use shape::ShapeWritten;
pub use slab::SlabWritten;

use crate::reading::keys::keys;
use crate::reading::{BrokenNames, Fields, Group as _, Node, Place, Problem, Problems, Read};

keys! {
    pub struct JobWritten in "a takeoff" {
        slabs: SlabsWritten = "slabs" as "keys by slab", required,
            "the concrete; the name of a slab is its kind, or say `kind`", "{patio: 12 ft x 15 ft}",
            by slabs, of SlabWritten;
        customer: Customer = "customer" as "text or keys", required, "who the quote is for: name, address",
            "Dana Example, 12 Quarry Rd, Quillhaven", by head::customer, of Customer;
        .. head: JobHead;
        .. place: Place;
    }
}

/// The slabs that could be read, and the names of the others.
#[derive(Clone, Debug, Default)]
pub struct SlabsWritten {
    pub read: Vec<SlabWritten>,
    pub unread: BrokenNames,
}

/// Reads a takeoff; what cannot be read is reported and left out.
pub fn read(node: &Node, problems: &mut Problems) -> Read<JobWritten> {
    node.group(problems)
}

/// Work of a job whose customer is known already; it may have no slab.
#[derive(Clone, Debug)]
pub struct WorkWritten {
    pub slabs: SlabsWritten,
    pub head: JobHead,
    pub place: Place,
}

impl WorkWritten {
    /// Whether neither a title nor a slab says what it is.
    pub fn is_nameless(&self) -> bool {
        self.head.title.is_none() && self.slabs.read.is_empty()
    }

    /// As a takeoff of its own.
    pub fn of(self, customer: Customer) -> JobWritten {
        let Self { slabs, head, place } = self;
        JobWritten {
            slabs,
            customer,
            head,
            place,
        }
    }
}

/// Reads work by the keys of a takeoff, but for its customer.
pub fn read_work(node: &Node, problems: &mut Problems) -> Read<WorkWritten> {
    let fields = node.fields(JobWritten::TABLE, problems)?;
    let slabs = match fields.node("slabs") {
        Some(_) => slabs(&fields, "slabs", problems),
        None => Ok(SlabsWritten::default()),
    };
    let head = JobHead::read(&fields, problems);
    Ok(WorkWritten {
        slabs: slabs?,
        head: head?,
        place: fields.heading(),
    })
}

fn slabs(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<SlabsWritten> {
    let node = fields.required(key, problems)?;
    let entries = node.entries("`slabs`", problems);
    if entries.is_empty() && node.is_map() {
        let problem = Problem::new("no-slabs", "this job has no slab").at(node.heading);
        problems.push(problem.help("name one under `slabs`, for example `patio: 12 ft x 15 ft`"));
    }
    let mut slabs = SlabsWritten::default();
    for entry in entries {
        match slab::slab(entry, problems) {
            Ok(slab) => slabs.read.push(slab),
            Err(reported) => slabs.unread.insert(entry.key.clone(), reported),
        }
    }
    Ok(slabs)
}
