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
    let far = access.distance.as_ref();
    let far = far.map_or_else(String::new, |far| format!(" of {}", length(far.value)));
    let gate = access.gate.as_ref();
    let wide = gate.map_or_else(String::new, |gate| {
        format!(", {}\u{a0}in wide", gate.value.in_inches().number())
    });
    match access.by.value {
        Method::Chute => Some("The mixer can reach the work with its chute".to_owned()),
        Method::Wheelbarrow if far.is_empty() && wide.is_empty() => None,
        Method::Wheelbarrow => Some(format!("A firm path{far}{wide} from the truck to the work")),
        Method::Buggy => Some(format!(
            "A path{far}{wide} from the truck to the work, firm enough for a motor buggy"
        )),
        Method::Pump => Some(format!(
            "Room for the pump beside the mixer, and a way{far} for its hose"
        )),
    }
}
