//! Does the plant charge by zones, and the job name none? A zone without a charge is where the other jobs lie.

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let supply = case.book.rules.supply.as_ref();
    let zones: Vec<&str> = supply
        .iter()
        .flat_map(|supply| supply.charges.zones.keys().map(String::as_str))
        .collect();
    let usual = supply.is_some_and(|supply| supply.charges.zones.values().any(Option::is_none));
    if zones.is_empty() || usual || case.takeoff.head.zone.is_some() {
        return Vec::new();
    }
    let problem = Problem::new("no-zone", "this job names no zone, and the plant has zones")
        .at(case.takeoff.place)
        .help(format!(
            "write `zone: {}` if the job lies in one; they are {}",
            zones[0],
            zones.join(", ")
        ));
    vec![problem]
}
