//! How the plant sells concrete, and what it charges for too little on a truck.

use std::borrow::Cow;

use super::charges::Charges;
use crate::input::checks::{cubic_yards, minutes, per_yard_or_load};
use crate::input::phrases::Ratio;
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Problem, Problems, Read, words};
use crate::values::Amount;

keys! {
    pub struct Supply in "`supply`" {
        sold_in: At<Amount> = "sold in" as "cubic yards", usual "1/4 cu yd",
            "orders go up to a multiple", "1/4 cu yd", then cubic_yards;
        smallest: At<Amount> = "smallest order" as "cubic yards", usual "0 cu yd",
            "the plant brings no less", "1 cu yd", then cubic_yards;
        truck: At<Amount> = "truck" as "cubic yards", usual "10 cu yd", "a full load", "9 cu yd",
            then a_full_load;
        short_load: Option<ShortLoad> = "short load", none, "what too little on a truck costs",
            "{under: 4 cu yd, counted: by truck, charge: each yard}";
        /// Minutes for each yard or for each load.
        free_time: At<Ratio> = "free time", usual "1000 min per cu yd",
            "minutes to unload without charge, per cu yd or per load", "5 min per cu yd",
            then per_yard_or_load;
        /// From the plant to the last yard.
        discharge: At<Amount> = "discharge within" as "minutes", usual "90 min",
            "of loading at the plant; ASTM C94/C94M-21 leaves it to buyer and plant, 90 is common practice",
            "120 min", then minutes;
        on_the_road: At<Amount> = "on the road" as "minutes", usual "0 min",
            "from the plant to the job, part of the minutes to discharge", "25 min", then minutes;
        pump_prime: At<Amount> = "pump prime" as "cubic yards", usual "0 cu yd",
            "lost in the line, once a placement", "1/4 cu yd", then cubic_yards;
        filling: Filling = "loads" as "words", usual "in turn",
            "how trucks are filled: in turn, or evened", "evened";
        called: Called = "called yards" as "words", usual "on the last truck",
            "which truck brings what is held back: the last truck, or their own truck", "on their own truck";
        .. charges: Charges;
    }
}

impl Supply {
    /// The same, with no more on a truck than this, and trucks filled this way, where either is said.
    pub fn with_trucks(
        &self,
        most: Option<&At<Amount>>,
        filling: Option<Filling>,
    ) -> Cow<'_, Self> {
        let less = most.filter(|most| most.value.value < self.truck.value.value);
        if less.is_none() && filling.is_none() {
            return Cow::Borrowed(self);
        }
        Cow::Owned(Self {
            truck: less.unwrap_or(&self.truck).clone(),
            filling: filling.unwrap_or(self.filling),
            ..self.clone()
        })
    }
}

words! {
    /// How an order is spread over its trucks.
    pub enum Filling("unknown-word", "`loads` is not `{}`", choose) {
        /// Full trucks, and the rest on the last.
        InTurn "in turn";
        Evened "evened";
    }
}

words! {
    /// Which truck brings what waits for a call.
    pub enum Called("unknown-word", "`called yards` is not `{}`", choose) {
        /// Where it carries as much; else a truck of their own.
        LastTruck "on the last truck";
        OwnTruck "on their own truck";
    }
}

keys! {
    pub struct ShortLoad in "`short load`" {
        under: At<Amount> = "under" as "cubic yards", required, "a load below this is short", "4 cu yd",
            then cubic_yards;
        counted: ShortCount = "counted" as "words", usual "by truck",
            "by truck, by order or on the last truck", "by truck";
        charge: ShortCharge = "charge" as "words", usual "each yard",
            "each yard (that is missing) or flat", "each yard";
    }
}

words! {
    /// Which loads are looked at for being short.
    pub enum ShortCount("unknown-word", "`counted` is not `{}`", either) {
        ByTruck "by truck";
        ByOrder "by order";
        LastTruck "on the last truck";
    }
}

words! {
    /// What a short load is charged by.
    pub enum ShortCharge("unknown-word", "`charge` is not `{}`", choose) {
        /// Each yard that is missing.
        EachYard "each yard";
        Flat "flat";
    }
}

placeless! { Filling Called ShortCharge ShortCount }

fn a_full_load(truck: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let truck = cubic_yards(truck, key, problems)?;
    if !truck.value.value.is_zero() {
        return Ok(truck);
    }
    let problem = Problem::new("not-above-zero", "a truck carries more than nothing");
    let help = "write what a full load is, for example `9 cu yd`";
    Err(problems.push(problem.at(truck.place).help(help)))
}
