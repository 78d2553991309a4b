//! Machines that bring concrete to the slab, and how they are hired.

use super::item::ItemKey;
use crate::input::checks::hours;
use crate::input::phrases::Ratio;
use crate::reading::keys::keys;
use crate::reading::{At, Problem, Problems, Read};
use crate::values::{Amount, Length, Unit};

keys! {
    /// A pump, hired by the hour.
    pub struct PumpHire in "`pump`" {
        item: At<ItemKey> = "item" as "name", required,
            "the item by the hour; its `sold in` and `at least` are those of the hire", "line pump";
        /// Cubic yards an hour.
        rate: At<Ratio> = "rate", required, "what it pumps", "20 cu yd per hour", then yards_an_hour;
        set_up: At<Amount> = "set up" as "hours", usual "0 hours",
            "paid beside pumping: setting up and washing out", "1 hour", then hours;
        travel_time: At<Amount> = "travel time" as "hours", usual "0 hours",
            "paid for the way, where it is paid by the hour", "1/2 hour", then hours;
        base_charge: Option<At<ItemKey>> = "base charge" as "name", none,
            "an item charged once a pour", "pump on site";
        travel: Option<At<ItemKey>> = "travel" as "name", none,
            "an item charged once a pour for the way", "pump travel";
        prime: Option<At<ItemKey>> = "prime" as "name", none,
            "an item charged once a pour, such as a bag of primer", "primer";
        washout: Option<At<ItemKey>> = "washout" as "name", none,
            "an item charged once a pour", "washout bag";
        hose: Option<Hose> = "hose", none,
            "hose beyond what comes with the pump, by `distance` of the access",
            "{included: 100 ft, item: extra hose}";
    }
}

keys! {
    pub struct Hose in "`hose`" {
        item: At<ItemKey> = "item" as "name", required, "the item for each foot more", "extra hose";
        included: At<Length> = "included", usual "0 ft", "what comes with the pump", "100 ft";
    }
}

keys! {
    pub struct BuggyHire in "`buggy`" {
        item: At<ItemKey> = "item" as "name", required,
            "the item by the day or hour; its `sold in` is the step of the hire, without it a day that is begun is whole",
            "power buggy";
        width: Option<At<Length>> = "width", none,
            "of the machine; a narrower gate is asked about", "36 in";
    }
}

impl PumpHire {
    /// Items charged once a pour, each with its purpose.
    pub fn once(&self) -> impl Iterator<Item = (&'static str, &At<ItemKey>)> {
        [
            ("base charge", &self.base_charge),
            ("travel", &self.travel),
            ("prime", &self.prime),
            ("washout", &self.washout),
        ]
        .into_iter()
        .filter_map(|(purpose, item)| Some((purpose, item.as_ref()?)))
    }
}

fn yards_an_hour(rate: At<Ratio>, _: &str, problems: &mut Problems) -> Read<At<Ratio>> {
    let (much, per) = (rate.value.much, rate.value.per);
    if much.unit == Unit::CubicYard && per.unit == Unit::Hour && !much.value.is_zero() {
        return Ok(rate);
    }
    let message = "a pump's rate is in cubic yards per hour";
    let problem = Problem::new("wrong-unit", message).at(rate.place);
    Err(problems.push(problem.help("write, for example, `20 cu yd per hour`")))
}
