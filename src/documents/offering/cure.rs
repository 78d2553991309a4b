//! The cure timeline of this job: its mix, the owner's temperatures and least days.

use super::{Offering, season, surface};
use crate::documents::figures::cure::{CureView, CureWords, cure};
use crate::input::job::Carries;
use crate::press::drawing::{Drawing, Rgb};
use crate::trade::calendar::Calendar;
use crate::trade::crew::Step;
use crate::trade::curing::{
    Cement, Conditions, CuringRules, Floors, Thresholds, Timeline, Use, by_season, seal_after,
};
use crate::values::{Amount, Unit};

pub(super) fn figure(of: Offering<'_>, accent: Rgb) -> Drawing {
    let timeline = of_job(of);
    let mixes = of
        .takeoff
        .slabs
        .iter()
        .filter_map(|slab| of.rules.mixes.get(&slab.mix.value));
    let psi = mixes
        .map(|mix| mix.strength.value.value)
        .min()
        .unwrap_or_default();
    let ordered = Amount::new(psi, Unit::Psi).to_string();
    let mut uses = vec![Use::Walk];
    // A garden walk carries no cars.
    if surface::slabs_of_all(of).any(|slab| Carries::Cars <= slab.carries()) {
        uses.extend([Use::Car, Use::Heavy]);
    }
    if surface::may_be_sealed(of) {
        uses.push(Use::Seal);
    }
    cure(&CureView {
        timeline: &timeline,
        uses: &uses,
        ordered: &ordered,
        accent,
        deicer: surface::meets_winter(of),
        words: &CureWords::ENGLISH,
    })
}

/// The slowest mix decides, whatever is chosen.
fn of_job(of: Offering<'_>) -> Timeline {
    let policy = &of.business.cure;
    let jobs = std::iter::once(of.takeoff).chain(of.takeoff.otherwise.values());
    let cements = jobs
        .flat_map(|job| &job.slabs)
        .filter_map(|slab| of.rules.mixes.get(&slab.mix.value))
        .map(|mix| mix.cement.value);
    let cement = cements.min().unwrap_or(Cement::Blended);
    let (_, air) = season::coldest(of);
    let conditions = Conditions {
        cool: air.night,
        warm: air.day,
        cement,
    };
    let rules = CuringRules {
        floors: Floors {
            walk: policy.walk.0.max(covers_off(of)),
            car: policy.car.0,
            heavy: policy.heavy.0,
            seal: seal_after(of.takeoff, of.rules).unwrap_or(policy.seal.0),
        },
        thresholds: Thresholds {
            walk: policy.walk_strength,
            car: policy.car_strength,
            heavy: policy.heavy_strength,
        },
        ..CuringRules::default()
    };
    by_season(&conditions, &season::weather(of), &rules)
}

/// Days from a pour until its covers are off, the longest of all: nobody walks on them before.
fn covers_off(of: Offering<'_>) -> u32 {
    let crew = &of.offer.quoted().needs.crew;
    let calendar = Calendar::of(of.takeoff, crew, of.quoted, of.business);
    let placements = &of.takeoff.placements;
    let mut longest = 0;
    for (stretch, dated) in &calendar.stretches {
        for block in stretch
            .blocks
            .iter()
            .filter(|block| block.step == Step::Lift)
        {
            let said = block
                .pours
                .iter()
                .filter_map(|pour| placements[*pour].day.as_ref());
            let poured = said.map(|day| day.value).max();
            let lifted = dated
                .zip(poured)
                .map(|(dated, poured)| dated.from.days_since(poured));
            let lifted = lifted.and_then(|days| u32::try_from(days).ok());
            longest = longest.max(lifted.or(block.wait).unwrap_or(0));
        }
    }
    longest
}
