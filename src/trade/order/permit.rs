//! A permit that we take out.

use super::{List, Section};
use crate::input::job::{Permit, Takeoff};
use crate::trade::term::number;
use crate::trade::working::Quantity;

pub(super) fn list(takeoff: &Takeoff, list: &mut List<'_>) {
    let Permit::Item(item) = &takeoff.head.permit else {
        return;
    };
    let Some(selling) = list.ways.rules.selling.get(&item.value) else {
        return;
    };
    let one = Quantity::by("once a job", "permit", selling.unit, number(1));
    list.buy(item, "permit", "once a job", &[(Section::Whole, one)], None);
}
