//! What the customer keeps open for us, by the way concrete reaches the slab.

use super::Offering;
use super::phrases::length;
use crate::input::job::{Access, Method};

/// One sentence for each way of the job.
pub(super) fn sentences(of: Offering<'_>) -> Vec<String> {
    let ways = of.takeoff.ways_in();
    ways.into_iter().filter_map(sentence).collect()
}

fn sentence(access: &Access) -> Option<String> {
    let distance = access
        .distance
        .as_ref()
        .map(|distance| format!(" of {}", length(distance.value)));
    let gate = access
        .gate
        .as_ref()
        .map(|gate| format!(", {}\u{a0}in wide", gate.value.in_inches().number()));
    match access.by.value {
        Method::Chute => Some("The mixer can reach the work with its chute".to_owned()),
        Method::Wheelbarrow => (distance.is_some() || gate.is_some()).then(|| {
            format!(
                "A firm path{}{} from the truck to the work",
                distance.unwrap_or_default(),
                gate.unwrap_or_default()
            )
        }),
        Method::Buggy => Some(format!(
            "A path{}{} from the truck to the work, firm enough for a motor buggy",
            distance.unwrap_or_default(),
            gate.unwrap_or_default()
        )),
        Method::Pump => Some(format!(
            "Room for the pump beside the mixer, and a way{} for its hose",
            distance.unwrap_or_default()
        )),
    }
}
