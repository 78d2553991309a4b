//! When what is put on weeks after the pour may go on.

use crate::input::book::Rules;
use crate::input::business::CurePolicy;
use crate::input::job::Takeoff;
use crate::values::Day;

/// In Fahrenheit: most sealers form no film on what is colder. Common practice, no source.
pub const SEALS_FROM: i32 = 50;

/// Whether the days of that month are too cold to seal; none of a month whose normals nobody gave.
pub fn is_too_cold(day: Day, cure: &CurePolicy) -> bool {
    let normal = cure.normals.on(day);
    normal.is_some_and(|air| air.value.day < SEALS_FROM)
}

/// Days from the pour until the last of the job's own sealers; none where nothing is sealed.
pub fn seal_after(takeoff: &Takeoff, rules: &Rules) -> Option<u32> {
    let sealers = takeoff.slabs.iter().filter_map(|slab| {
        let name = &slab.seal.as_ref()?.value;
        rules.sealers.get(name)
    });
    sealers.map(|sealer| sealer.after.value.0.max(1)).max()
}
