//! How concrete reaches the slab, as written for the job or for a pour of its own.

use crate::input::job::{Access, Method};
use crate::reading::{At, Fields, Group as _, Node, Problems, Read};

/// The job's way; by the chute where nothing is said.
pub(super) fn access(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Access> {
    match job.node(key) {
        Some(node) => way(node, problems),
        None => Ok(Access::only(At::new(Method::Chute, job.heading()))),
    }
}

/// The way of a pour, where it has one of its own.
#[expect(clippy::unnecessary_wraps, reason = "a reader of a key")]
pub(super) fn own_access(
    pour: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<Access>> {
    let node = pour.node(key);
    Ok(node.and_then(|node| way(node, problems).ok()))
}

fn way(node: &Node, problems: &mut Problems) -> Read<Access> {
    if node.is_map() {
        return Access::read(&node.fields(Access::TABLE, problems)?, problems);
    }
    node.read_at(problems).map(Access::only)
}
