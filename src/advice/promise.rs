//! Can what the owner promises be kept with this concrete?

use super::{Case, DECIDES};
use crate::input::job::Exposure;
use crate::reading::{At, Problem};
use crate::tables::Source;
use crate::tables::strength::SALTED;
use crate::values::{Amount, Unit};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let promises = case.business.promises.iter();
    promises
        .flat_map(|promise| {
            let said = promise.value.to_lowercase();
            let mut found = Vec::new();
            // A promise that is kept only where no salt was used says so itself.
            if said.contains("scal") && !said.contains("salt") {
                found.extend(scaling(case, promise));
            }
            if said.contains("crack") && !said.chars().any(|c| c.is_ascii_digit()) {
                found.push(cracks(promise));
            }
            found
        })
        .collect()
}

/// Salt peels off what is weaker.
fn scaling(case: Case<'_>, promise: &At<String>) -> Vec<Problem> {
    if case.exposure() != Exposure::Salt {
        return Vec::new();
    }
    let outdoors = case.takeoff.slabs.iter().filter(|slab| !slab.is_inside());
    let weak = outdoors.filter_map(|slab| {
        let mix = case.mix(slab)?;
        let asked = Amount::new(SALTED.psi.into(), Unit::Psi);
        (mix.strength.value.value < asked.value).then(|| {
            let message = format!(
                "you promise something about scaling, salt is expected, and `{}` of `{}` is `{}`",
                slab.mix.value, slab.key, mix.strength.value
            );
            Problem::new("promise-scaling", message)
                .at(promise.place)
                .help(format!(
                    "order {asked} and a water-cement ratio of 0.45 at most, or leave salt out of the promise; source: {}; {DECIDES}",
                    SALTED.source
                ))
        })
    });
    weak.collect()
}

fn cracks(promise: &At<String>) -> Problem {
    Problem::new("promise-cracks", "a promise about cracks says no width")
        .at(promise.place)
        .help(format!(
            "all concrete cracks: say from which width on you come back, for example 1/4 in ({})",
            Source::PRACTICE
        ))
}
