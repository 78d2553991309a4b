//! What the slabs need by the names a takeoff gives it: fiber, base, bars, mesh, dowels.

mod dowels;
mod loose;
mod steel;

pub(in crate::trade) use loose::delivered;

use super::{ConcreteOrder, List};
use crate::input::job::Takeoff;
use crate::trade::measure::SlabQuantities;

pub(super) fn list(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    loose::fiber(takeoff, orders, list);
    loose::base(takeoff, slabs, list);
    steel::bars(slabs, list);
    steel::mesh(takeoff, slabs, list);
    dowels::list(slabs, list);
}
