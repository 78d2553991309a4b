//! `30 days`.

use std::str::FromStr;

use crate::values::Unreadable;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Days(pub u32);

impl FromStr for Days {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let number = text
            .strip_suffix("days")
            .or_else(|| text.strip_suffix("day"))
            .map(str::trim_end);
        number
            .filter(|n| n.len() <= 4)
            .and_then(|n| n.parse().ok())
            .map(Self)
            .ok_or_else(|| {
                Unreadable::new(
                    "bad-days",
                    format!("cannot read `{text}` as a number of days"),
                    "write whole days, for example `30 days`",
                )
            })
    }
}
