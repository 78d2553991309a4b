//! Does water stay below the sill, and can people step up to what meets the slab?

use super::{Case, DECIDES, limit};
use crate::input::phrases::Done;
use crate::reading::Problem;
use crate::tables::Source;
use crate::tables::steps::{SOURCE, TALLEST_RISER};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let least = &case.business.order.sill_above;
    let met = case.takeoff.slabs.iter().flat_map(|slab| {
        let meets = slab.around.meets.iter();
        meets.map(move |(name, height)| (&slab.key, &name.value, height))
    });
    let mut found = Vec::new();
    for (slab, name, height) in met {
        let above = height.value.above;
        let is_door = ["sill", "door"].iter().any(|word| name.contains(word));
        if is_door && above < least.value {
            let message = format!("`{name}` is not `{}` above `{slab}`", least.value);
            found.push(Problem::new("low-sill", message).at(height.place).also(
                least.place,
                limit("your limit", least.place),
            ).help(format!(
                "water and snow stand against it: lower the slab, or lay a drain before the door ({}); {DECIDES}",
                Source::PRACTICE
            )));
        }
        if height.value.done() == Done::Step && TALLEST_RISER < above.abs() {
            let message = format!(
                "`{name}` and `{slab}` are `{}` apart, more than one step",
                above.abs()
            );
            found.push(Problem::new("tall-step", message).at(height.place).help(format!(
                "give it steps, `steps` of this slab or a slab `on` it; a riser is `{TALLEST_RISER}` at most; source: {SOURCE}; {DECIDES}"
            )));
        }
    }
    found
}
