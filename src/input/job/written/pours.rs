//! On which days what is poured, as written.

use crate::input::checks::{temperature, written};
use crate::input::job::access::{Access, own_access};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problems};
use crate::values::{Amount, Day, Percent};

keys! {
    /// One day, and the slabs poured on it; none named means all that no other pour names.
    pub struct PourWritten in "a pour" {
        day: At<Day> = "day", required, "its day", "2026-06-15";
        slabs: Vec<At<String>> = "slabs" as "list of names", required, "what is poured", "[patio, walk]";
        access: Option<Access> = "access" as "word or keys", else "that of the job",
            "how concrete reaches the slabs of this pour", "{by: pump, distance: 120 ft}", by own_access;
        allowance: Option<At<Percent>> = "allowance", else "that of the job",
            "concrete ordered over the drawing of this pour; what a slab says itself wins", "10%";
        temperature: Option<At<Amount>> = "temperature" as "degrees F", else "that of the job",
            "as you expect it while this pour sets", "85", then written(temperature);
    }
}

/// A day for all, or a list of pours.
pub(super) fn pours(
    job: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Vec<PourWritten> {
    let Some(node) = job.node(key) else {
        return Vec::new();
    };
    if node.is_list() {
        let items = node.items("`pour`", problems).into_iter();
        return items.filter_map(|item| item.group(problems).ok()).collect();
    }
    let day = node.read_at(problems);
    let all = day.map(|day| PourWritten {
        day,
        slabs: Vec::new(),
        access: None,
        allowance: None,
        temperature: None,
    });
    all.into_iter().collect()
}
