//! What the air is like after a pour, and what that asks for.
//!
//! Cold weather, by the newer of ACI 306R's two definitions (read in part): the air has fallen, or is
//! expected to fall, below 40 °F while concrete has to be protected. Days of protection against
//! freezing, and the warmth it keeps: ACI 306R as a textbook adapts it (Beall, figures 3-37 and 3-38).

use crate::input::book::{Cement, Role, Rules};
use crate::input::business::CurePolicy;
use crate::input::job::{Exposure, Slab, Takeoff};
use crate::input::phrases::Air;
use crate::values::Day;

/// What blankets keep a slab under a foot thick at, in Fahrenheit.
pub const UNDER_BLANKETS: i32 = 55;

/// Water freezes at this, in Fahrenheit.
pub const FREEZING: i32 = 32;

/// Nights and days of a day of the year: the month's normals, else the plant's winter, else the owner's
/// cool and warm spells.
pub fn air(day: Day, cure: &CurePolicy, rules: &Rules) -> Air {
    if let Some(normal) = cure.normals.on(day) {
        return normal.value;
    }
    let winter = rules
        .supply
        .as_ref()
        .and_then(|supply| supply.charges.winter.as_ref());
    if winter.is_some_and(|winter| winter.during.value.holds(day)) {
        return cure.winter.value;
    }
    cure.usual()
}

/// As the takeoff says; else frost where the nights of some month freeze.
pub fn exposure(takeoff: &Takeoff, cure: &CurePolicy) -> Exposure {
    let mut months = (1..=12).filter_map(|month| cure.normals.of(month));
    match &takeoff.head.exposure {
        Some(said) => said.value,
        None if months.any(|normal| normal.value.night <= FREEZING) => Exposure::Frost,
        None => Exposure::Mild,
    }
}

/// Whether a slab poured on a day must be kept from freezing.
pub fn is_cold(slab: &Slab, day: Day, cure: &CurePolicy, rules: &Rules) -> bool {
    !slab.is_inside() && cure.is_cold(air(day, cure, rules))
}

/// Whole days that a slab outdoors is protected: three, and two with cement that hardens early.
pub const fn protected_days(cement: Cement) -> u32 {
    match cement {
        Cement::Blended | Cement::Ordinary => 3,
        Cement::HighEarly => 2,
    }
}

/// Whether the book has blankets, at a price or for nothing.
pub fn has_blankets(rules: &Rules) -> bool {
    rules.roles.contains_key(&Role::Blankets)
}

/// The pours with a slab that must be kept from freezing.
pub fn cold_pours(takeoff: &Takeoff, days: &[Day], cure: &CurePolicy, rules: &Rules) -> Vec<usize> {
    let pours = takeoff.pours().map(|(pour, _)| pour);
    let is_cold = |pour: &usize| {
        let mut slabs = takeoff.slabs.iter().filter(|slab| slab.placement == *pour);
        let day = days.get(*pour);
        day.is_some_and(|day| slabs.any(|slab| is_cold(slab, *day, cure, rules)))
    };
    pours.filter(is_cold).collect()
}
