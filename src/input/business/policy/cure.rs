//! Temperatures and waiting times: what the cure timeline counts with.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use crate::input::checks::plain;
use crate::input::phrases::{Air, Days};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problem, Problems};
use crate::values::{Amount, Day, Percent};

keys! {
    pub struct CurePolicy in "`cure`" {
        cool: At<Amount> = "cool" as "degrees F", usual "60",
            "a cool spell, day and night averaged", "60", then plain;
        warm: At<Amount> = "warm" as "degrees F", usual "80",
            "a warm spell, day and night averaged", "80", then plain;
        normals: Normals = "normals" as "degrees F by month", none,
            "nights and days of a month on the mean of years; a pour in it is counted by them and not by `cool` and `warm`, and sets at that of the days",
            "{january: 20 to 36 F}";
        winter: At<Air> = "winter" as "degrees F", usual "35 to 45 F",
            "nights and days in the plant's winter, where its month has no normals", "28 to 42 F";
        cold_below: At<Amount> = "cold below" as "degrees F", usual "40",
            "a pour whose nights are colder is kept under blankets", "35", then plain;
        walk: Days = "walk", usual "2 days", "never promised earlier", "2 days";
        car: Days = "car", usual "7 days", "never promised earlier", "7 days";
        heavy: Days = "heavier vehicle", usual "14 days", "never promised earlier", "14 days";
        seal: Days = "seal", usual "28 days", "never promised earlier", "28 days";
        walk_strength: Percent = "strength to walk", usual "25%", "of the strength ordered", "25%";
        car_strength: Percent = "strength for a car", usual "75%", "of the strength ordered", "75%";
        heavy_strength: Percent = "strength for a heavier vehicle", usual "95%", "of the strength ordered", "95%";
    } then temperate
}

keys! {
    /// What the air is like, month by month.
    pub struct Normals in "`normals`" {
        january: Option<At<Air>> = "january", none, "nights and days", "20 to 36 F";
        february: Option<At<Air>> = "february", none, "nights and days", "22 to 39 F";
        march: Option<At<Air>> = "march", none, "nights and days", "29 to 47 F";
        april: Option<At<Air>> = "april", none, "nights and days", "39 to 58 F";
        may: Option<At<Air>> = "may", none, "nights and days", "49 to 68 F";
        june: Option<At<Air>> = "june", none, "nights and days", "58 to 77 F";
        july: Option<At<Air>> = "july", none, "nights and days", "64 to 82 F";
        august: Option<At<Air>> = "august", none, "nights and days", "63 to 80 F";
        september: Option<At<Air>> = "september", none, "nights and days", "56 to 73 F";
        october: Option<At<Air>> = "october", none, "nights and days", "45 to 61 F";
        november: Option<At<Air>> = "november", none, "nights and days", "36 to 51 F";
        december: Option<At<Air>> = "december", none, "nights and days", "26 to 41 F";
    }
}

impl Normals {
    /// Of the month a day is in.
    pub fn on(&self, day: Day) -> Option<&At<Air>> {
        let (month, _) = day.in_year();
        self.of(month)
    }

    /// Of a month by its number.
    pub fn of(&self, month: u32) -> Option<&At<Air>> {
        let found = match month {
            1 => &self.january,
            2 => &self.february,
            3 => &self.march,
            4 => &self.april,
            5 => &self.may,
            6 => &self.june,
            7 => &self.july,
            8 => &self.august,
            9 => &self.september,
            10 => &self.october,
            11 => &self.november,
            _ => &self.december,
        };
        found.as_ref()
    }
}

impl CurePolicy {
    /// A cool spell and a warm one, where nothing tells the season.
    pub fn usual(&self) -> Air {
        let degrees = |amount: &At<Amount>| amount.value.value.to_i32().unwrap_or(60);
        Air {
            night: degrees(&self.cool),
            day: degrees(&self.warm),
        }
    }

    pub fn is_cold(&self, air: Air) -> bool {
        Decimal::from(air.night) < self.cold_below.value.value
    }
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
