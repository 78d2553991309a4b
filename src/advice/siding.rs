//! Does the siding stay clear of the new surface?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::{Source, slopes};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let close = slabs.filter_map(|slab| {
        let clearance = slab.around.siding_clearance.as_ref()?;
        let least = slopes::SIDING_ABOVE_PAVING;
        (clearance.value < least).then(|| {
            let message = format!(
                "siding would end `{}` above `{}`; `{least}` is asked for above paving",
                clearance.value, slab.key
            );
            Problem::new("siding-close", message)
                .at(clearance.place)
                .help(format!(
                    "lower the slab, or let the owner have the siding cut back; its maker may ask for more; source: {}; for wood {}; {DECIDES}",
                    slopes::PLASTER,
                    Source::PRACTICE
                ))
        })
    });
    close.collect()
}
