//! The day of a pour: what a crew, a chute and setting concrete allow, all of it rules of thumb.
//!
//! Setting time halves for 20 °F more and doubles for 20 less (nfba.org, October 2020, as an excerpt);
//! every other default is common practice without a source.

use crate::input::checks::{
    hours_above_zero, length_above_zero, minutes, number_above_zero, temperature,
};
use crate::reading::At;
use crate::reading::keys::keys;
use crate::values::{Amount, Length, Percent};

keys! {
    pub struct PourDayPolicy in "`pour day`" {
        setting: At<Amount> = "setting" as "hours", usual "6 hours",
            "from placing until it takes no tool any more, at 70 °F; halves for 20 °F more, doubles for 20 less; common practice",
            "5 hours", then hours_above_zero;
        temperature: At<Amount> = "temperature" as "degrees F", usual "70",
            "while it sets, where neither the takeoff nor the month's `normals` give one; a mild day", "80", then temperature;
        stiff_after: At<Percent> = "stiff after", usual "40%",
            "of the setting time; earlier it takes no last pass; common practice", "50%";
        longest: At<Amount> = "longest day" as "hours", usual "10 hours",
            "of one person, from the first truck to the last pass; common practice", "11 hours",
            then hours_above_zero;
        most_people: At<Amount> = "people at once" as "number", usual "6",
            "no more find room to finish one pour; common practice", "8", then number_above_zero;
        between_trucks: At<Amount> = "between trucks" as "minutes", usual "20 min",
            "the plant sends the next no sooner; common practice", "30 min", then minutes;
        chute: At<Length> = "chute" as "length", usual "18 ft",
            "how far the chute of a truck reaches; common practice", "16 ft", then length_above_zero;
    }
}
