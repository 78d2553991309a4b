//! Temperatures and waiting times: what the cure timeline counts with.

use rust_decimal::Decimal;

use crate::input::checks::plain;
use crate::input::phrases::Days;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problem, Problems};
use crate::values::{Amount, Percent};

keys! {
    pub struct CurePolicy in "`cure`" {
        cool: At<Amount> = "cool" as "degrees F", usual "60",
            "a cool spell, day and night averaged", "60", then plain;
        warm: At<Amount> = "warm" as "degrees F", usual "80",
            "a warm spell, day and night averaged", "80", then plain;
        walk: Days = "walk", usual "2 days", "never promised earlier", "2 days";
        car: Days = "car", usual "7 days", "never promised earlier", "7 days";
        heavy: Days = "heavier vehicle", usual "14 days", "never promised earlier", "14 days";
        seal: Days = "seal", usual "28 days", "never promised earlier", "28 days";
        walk_strength: Percent = "strength to walk", usual "25%", "of the strength ordered", "25%";
        car_strength: Percent = "strength for a car", usual "75%", "of the strength ordered", "75%";
        heavy_strength: Percent = "strength for a heavier vehicle", usual "95%", "of the strength ordered", "95%";
    } then temperate
}

/// Whole degrees at which concrete cures, the cool ones below the warm ones.
fn temperate(cure: CurePolicy, _: &Fields<'_>, problems: &mut Problems) -> CurePolicy {
    for at in [&cure.cool, &cure.warm] {
        let degrees = at.value.value;
        let cures = Decimal::from(35) <= degrees && degrees <= Decimal::from(90);
        if !cures || !degrees.fract().is_zero() {
            let message = format!("{degrees} is not a temperature concrete is cured at");
            problems.push(Problem::new("bad-temperature", message).at(at.place).help(
                "write whole degrees Fahrenheit from 35 to 90; colder than that, concrete needs protection",
            ));
        }
    }
    if cure.warm.value.value < cure.cool.value.value {
        let problem = Problem::new("bad-temperature", "`cool` is warmer than `warm`");
        problems.push(problem.at(cure.cool.place).help("swap the two"));
    }
    cure
}
