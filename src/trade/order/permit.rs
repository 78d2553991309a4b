//! A permit that we take out.

use super::{List, whole};
use crate::input::job::{Permit, Takeoff};
use crate::trade::term::number;
use crate::trade::working::Quantity;

pub(super) fn list(takeoff: &Takeoff, list: &mut List<'_>) {
    let Permit::Item(item) = &takeoff.head.permit else {
        return;
    };
    if let Some(unit) = list.unit(item) {
        let one = Quantity::by("once a job", "permit", unit, number(1));
        list.buy(item, "permit", "once a job", &whole(one));
    }
}
