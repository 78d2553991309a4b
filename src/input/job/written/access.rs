//! Reads how concrete reaches the slab, for the job and for a pour of its own.

use crate::input::job::tables;
use crate::input::job::takeoff::{Access, Method};
use crate::reading::{At, Fields, Node, Problems};

/// The job's way; by the chute where nothing is said.
pub(super) fn access(job: &Fields<'_>, problems: &mut Problems) -> Option<Access> {
    match job.node("access") {
        None => Some(Access {
            by: At {
                value: Method::Chute,
                place: job.heading(),
            },
            distance: None,
            gate: None,
        }),
        Some(node) => way(node, problems),
    }
}

pub(super) fn way(node: &Node, problems: &mut Problems) -> Option<Access> {
    if node.is_map() {
        let fields = node.fields(&tables::ACCESS, problems).ok()?;
        let by = fields.need("by", problems).ok();
        let distance = fields.read("distance", problems);
        let gate = fields.read("gate", problems);
        return Some(Access {
            by: by?,
            distance,
            gate,
        });
    }
    node.read(problems).ok().map(|by| Access {
        by: At {
            value: by,
            place: node.place,
        },
        distance: None,
        gate: None,
    })
}
