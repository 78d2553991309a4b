//! The slabs that soil is dug out under.

use super::asked::OptionNames;
use crate::input::job::Removal;
use crate::reading::{Problem, Problems};

/// Every one of them is there.
pub(super) fn check(removals: &[Removal], named: &OptionNames<'_>, problems: &mut Problems) {
    for name in removals.iter().flat_map(|one| &one.under) {
        let known = named.slabs.contains(&name.value.as_str()) || named.unsure.has(&name.value);
        if !known {
            let message = format!("this job has no slab `{}`", name.value);
            let problem = Problem::new("unknown-slab", message).at(name.place);
            problems.push(problem.help("use a name from `slabs`"));
        }
    }
}
