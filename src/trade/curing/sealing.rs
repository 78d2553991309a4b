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

/// Days from the pour until the last of the job's own sealers, on a slab or added by the takeoff; none
/// where nothing is sealed.
pub fn seal_after(takeoff: &Takeoff, rules: &Rules) -> Option<u32> {
    let of_slabs = takeoff.slabs.iter().filter_map(|slab| {
        let name = &slab.seal.as_ref()?.value;
        Some(rules.sealers.get(name)?.after.value)
    });
    let extras = takeoff.head.extras.iter().chain(&takeoff.added);
    let added = extras.filter(|extra| is_sealer(&extra.name.value, rules));
    let added = added.filter_map(|extra| {
        let after = rules.selling.get(&extra.name.value)?.after.as_ref()?;
        Some(after.value)
    });
    of_slabs.chain(added).map(|days| days.0.max(1)).max()
}

/// An item of a sealer of the book, or one that is called so; what cures too, or fills joints, is none.
pub fn is_sealer(item: &str, rules: &Rules) -> bool {
    let name = item.to_lowercase();
    let called = name.contains("sealer") && !name.contains("cur") && !name.contains("joint");
    called
        || rules
            .sealers
            .values()
            .any(|sealer| sealer.item.value == item)
}
