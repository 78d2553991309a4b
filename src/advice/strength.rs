//! Is the mix as strong as the weather asks?

use super::{Case, DECIDES};
use crate::input::job::{Carries, Exposure, Slab};
use crate::reading::Problem;
use crate::tables::strength::{
    Least, SALTED, SALTED_IN_2014, Weathering, house_step, nonstructural,
};
use crate::values::{Amount, Unit};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let exposure = case.exposure();
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
                    older(least)
                ))
        })
    });
    answers.collect()
}

/// The house code's row names steps and garage floors but no patios, walks or driveways; the building code's does not tell them apart.
fn least(slab: &Slab, exposure: Exposure) -> Least {
    let inside = slab.is_inside();
    let weathering = match exposure {
        // Floors of garages are named beside porches and steps; other floors do not freeze.
        Exposure::Salt | Exposure::Frost if inside && slab.carries() != Carries::People => {
            return house_step(Weathering::Severe);
        }
        _ if inside => Weathering::Negligible,
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
fn older(least: Least) -> String {
    if least != SALTED {
        return String::new();
    }
    let Least { psi, source } = SALTED_IN_2014;
    let psi = Amount::new(psi.into(), Unit::Psi);
    format!("; {source} asked {psi}")
}
