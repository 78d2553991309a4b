//! What is wrong with the day of a pour.

use crate::input::business::Business;
use crate::input::job::{Method, Takeoff};
use crate::trade::crew::{Over, PourDay};

/// Why a pour cannot be placed or finished, the worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::advice) enum Fault {
    /// It sets before it is placed or finished, or takes longer than a day may.
    Long,
    /// A truck is not empty within its limit.
    Truck,
    /// The chute does not reach the slab.
    Reach,
}

pub(in crate::advice) fn faults(
    takeoff: &Takeoff,
    business: &Business,
    day: &PourDay,
) -> Vec<Fault> {
    let access = takeoff.access_of(day.pour);
    let far = access.distance.as_ref();
    let is_far = access.is_by(Method::Chute)
        && far.is_some_and(|far| business.pour_day.chute.value < far.value);
    let of_day = day.over().map(|over| match over {
        Over::Truck => Fault::Truck,
        Over::Place | Over::Finish | Over::Day => Fault::Long,
    });
    let mut found: Vec<Fault> = of_day.chain(is_far.then_some(Fault::Reach)).collect();
    found.sort_unstable();
    found.dedup();
    found
}
