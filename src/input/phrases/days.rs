//! `30 days`.

use super::reader::phrase;
use crate::reading::keys::placeless;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Days(pub u32);

phrase!(
    Days,
    "days",
    "bad-days",
    "a number of days",
    "write whole days, for example `30 days`",
    |said| {
        let number = said.before("days").or_else(|| said.before("day"));
        let number = number.and_then(|number| number.count(0..=9999));
        said.need(number).map(Days)
    }
);

placeless! { Days }
