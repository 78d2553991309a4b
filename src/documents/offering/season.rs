//! What the time of the year means to the customer: blankets, and the weather that days are counted by.

use super::{Offering, english};
use crate::input::job::{Exposure, Slab};
use crate::input::phrases::Air;
use crate::trade::curing::{is_too_cold, season};
use crate::values::Day;

/// What is done about frost on the first days.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Frost {
    /// Nights are not cold, or nothing lies outdoors.
    None,
    /// Under blankets, for so many days at most.
    Protected { days: u32 },
    /// Nobody has priced it.
    NotIncluded,
}

pub(super) fn frost(of: Offering<'_>) -> Frost {
    let (cure, rules) = (&of.business.cure, of.rules);
    let days = pour_days(of);
    let is_cold = !season::cold_pours(of.takeoff, &days, cure, rules).is_empty();
    if !is_cold {
        return Frost::None;
    }
    if !season::has_blankets(rules) {
        return Frost::NotIncluded;
    }
    let mixes = of.takeoff.slabs.iter();
    let mixes = mixes.filter_map(|slab| rules.mixes.get(&slab.mix.value));
    let days = mixes.map(|mix| season::protected_days(mix.cement.value));
    Frost::Protected {
        days: days.max().unwrap_or_default(),
    }
}

/// Whether it freezes where the job lies.
pub(super) fn freezes(of: Offering<'_>) -> bool {
    season::exposure(of.takeoff, &of.business.cure) != Exposure::Mild
}

/// Whether the slab must be kept from freezing.
pub(super) fn is_cold(of: Offering<'_>, slab: &Slab) -> bool {
    season::is_cold(slab, pour_day(of, slab), &of.business.cure, of.rules)
}

/// Whether so many days after its pour it is too cold to seal the slab.
pub(super) fn is_too_cold_to_seal(of: Offering<'_>, slab: &Slab, after: u32) -> bool {
    let day = pour_day(of, slab).plus(i64::from(after));
    is_too_cold(day, &of.business.cure) && !slab.is_inside()
}

fn pour_day(of: Offering<'_>, slab: &Slab) -> Day {
    let days = pour_days(of);
    days.get(slab.placement).copied().unwrap_or(of.quoted)
}

/// Whether the ground may be frozen on the day of a pour outdoors.
pub(super) fn may_be_frozen(of: Offering<'_>) -> bool {
    let (_, air) = coldest(of);
    frost(of) != Frost::None && air.night <= season::FREEZING
}

/// Of every pour; the first where a pour has no day.
fn pour_days(of: Offering<'_>) -> Vec<Day> {
    let pours = of.takeoff.placements.iter();
    pours
        .map(|pour| pour.day.as_ref().map_or(of.quoted, |day| day.value))
        .collect()
}

/// The coldest of the pours, by its nights.
pub(super) fn coldest(of: Offering<'_>) -> (Day, Air) {
    let air = |day: Day| season::air(day, &of.business.cure, of.rules);
    let days = pour_days(of).into_iter();
    days.map(|day| (day, air(day)))
        .min_by_key(|(_, air)| *air)
        .unwrap_or((of.quoted, air(of.quoted)))
}

/// Nights and days after the coldest pour, for a year; blankets keep the first ones warm.
pub(super) fn weather(of: Offering<'_>) -> Vec<(i32, i32)> {
    let (pour, _) = coldest(of);
    let protected = match frost(of) {
        Frost::Protected { days } => i64::from(days),
        Frost::None | Frost::NotIncluded => 0,
    };
    let days = 0..365;
    days.map(|day| {
        let air = season::air(pour.plus(day), &of.business.cure, of.rules);
        let least = if day < protected {
            season::UNDER_BLANKETS
        } else {
            air.night
        };
        (air.night.max(least), air.day.max(least))
    })
    .collect()
}

/// What weather may move.
pub(super) fn moves(of: Offering<'_>) -> &'static str {
    match frost(of) {
        Frost::None => english::RAIN,
        Frost::Protected { .. } => english::FROST_IN,
        Frost::NotIncluded => english::FROST_OUT,
    }
}

/// How the days of the cure are counted.
pub(super) fn lead(of: Offering<'_>) -> String {
    let (day, air) = coldest(of);
    let lead = match of.takeoff.pours().count() {
        0 | 1 => english::CURE_LEAD,
        _ => english::CURE_LEAD_OF_EACH,
    };
    if air == of.business.cure.usual() {
        return lead.to_owned();
    }
    let frozen = if air.night <= season::FREEZING {
        " Frozen days count nothing."
    } else {
        ""
    };
    let blankets = match frost(of) {
        Frost::Protected { days } => format!(", the first {days} days under blankets"),
        Frost::None | Frost::NotIncluded => String::new(),
    };
    format!(
        "{} We counted by the weather that is usual from {} on, nights of {}\u{a0}°F and days of {}\u{a0}°F at first{blankets}.{frozen}",
        lead,
        day.month(),
        air.night,
        air.day
    )
}
