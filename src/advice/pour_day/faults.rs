//! What is wrong with the day of a pour.

use crate::input::business::Business;
use crate::input::job::{Method, Takeoff};
use crate::trade::crew::PourDay;

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
    let setting = day.setting.value();
    let is_long = setting < day.placing.value()
        || setting < day.finishing.value()
        || day.day_may.value() < day.day.value();
    let access = takeoff.access_of(day.pour);
    let far = access.distance.as_ref();
    let is_far = access.is_by(Method::Chute)
        && far.is_some_and(|far| business.pour_day.chute.value < far.value);
    let truck = day.truck.as_ref();
    let is_slow = truck.is_some_and(|(_, minutes)| day.truck_may.value() < minutes.value());
    let all = [
        (is_long, Fault::Long),
        (is_slow, Fault::Truck),
        (is_far, Fault::Reach),
    ];
    let found = all.into_iter().filter(|(is, _)| *is);
    found.map(|(_, fault)| fault).collect()
}
