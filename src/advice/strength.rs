//! Is the mix as strong as the weather asks?

use super::{Case, DECIDES};
use crate::input::job::{Exposure, Slab};
use crate::reading::Problem;
use crate::tables::strength::{
    Aci332, FrostClass, IrcMember, Least, Weathering, ibc, irc, salted_flatwork,
};
use crate::values::Amount;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let exposure = case.takeoff.exposure.value;
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
    match (exposure, slab.kind.as_str()) {
        (Exposure::Salt, _) => salted_flatwork(Aci332::Of2020),
        (Exposure::Frost, "step") => irc(IrcMember::PorchCarportStep, Weathering::Severe),
        (Exposure::Mild, "step") => irc(IrcMember::PorchCarportStep, Weathering::Negligible),
        (Exposure::Frost, _) => ibc(FrostClass::F2),
        (Exposure::Mild, _) => ibc(FrostClass::F0),
    }
}

/// Editions differ, and a town may still go by the older one.
fn older(exposure: Exposure) -> String {
    if exposure != Exposure::Salt {
        return String::new();
    }
    let old = salted_flatwork(Aci332::Of2014);
    format!(", where {} asks {} psi", old.source, old.psi)
}
