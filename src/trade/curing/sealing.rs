//! When what is put on weeks after the pour may go on.

use crate::input::book::Rules;
use crate::input::job::Takeoff;

/// Days from the pour until the last of the job's own sealers; none where nothing is sealed.
pub fn seal_after(takeoff: &Takeoff, rules: &Rules) -> Option<u32> {
    let sealers = takeoff.slabs.iter().filter_map(|slab| {
        let name = &slab.seal.as_ref()?.value;
        rules.sealers.get(name)
    });
    sealers.map(|sealer| sealer.after.value.0.max(1)).max()
}
