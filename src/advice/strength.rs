//! Is the mix as strong as the weather asks?

use super::{Case, DECIDES};
use crate::input::job::{Exposure, Slab};
use crate::reading::Problem;
use crate::tables::strength::{
    Least, SALTED, SALTED_IN_2014, Weathering, house_step, nonstructural,
};
use crate::values::Amount;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let exposure = case.takeoff.head.exposure.value;
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let mix = case.mix(slab)?;
        let least = least(slab, exposure);
        (mix.strength.value.value < least.psi.into()).then(|| {
            let asked = Amount::new(least.psi.into(), mix.strength.value.unit);
            let message = format!(
                "`{}` of `{}` is `{}`; `{asked}` is asked for in this weather",
                slab.mix.value, slab.key, mix.strength.value
            );
            Problem::new("weak-mix", message)
                .at(slab.mix.place)
                .help(format!(
                    "order a mix of {asked} or more; source: {}{}; {DECIDES}",
                    least.source,
                    older(exposure)
                ))
        })
    });
    answers.collect()
}

/// The house code's row names steps but no patios, walks or driveways; the building code's does not tell them apart.
fn least(slab: &Slab, exposure: Exposure) -> Least {
    let weathering = match exposure {
        Exposure::Salt => return SALTED,
        Exposure::Frost => Weathering::Severe,
        Exposure::Mild => Weathering::Negligible,
    };
    match slab.kind.as_str() {
        "step" => house_step(weathering),
        _ => nonstructural(weathering),
    }
}

/// Editions differ, and a town may still go by the older one.
fn older(exposure: Exposure) -> String {
    if exposure != Exposure::Salt {
        return String::new();
    }
    let Least { psi, source } = SALTED_IN_2014;
    format!(", where {source} asks {psi} psi")
}
