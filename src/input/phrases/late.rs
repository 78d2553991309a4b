//! `1% a month, simple`: what an owner asks for of an invoice that is paid late.

use std::fmt;
use std::str::FromStr;

use crate::values::{Percent, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateCharge {
    pub rate: Percent,
    pub per: LatePer,
    /// On the charges before as well; said, since the two are easily confused.
    pub is_compound: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LatePer {
    /// For each whole month past the due day.
    Month,
    /// For each day past the due day, a 365th part.
    Year,
}

impl FromStr for LateCharge {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-late-charge",
                format!("cannot read `{text}` as a late charge"),
                "write rate, time and way, for example `1% a month, simple`, `1% a month, compound` or `12% a year, simple`",
            )
        };
        let (much, way) = text.split_once(',').ok_or_else(refuse)?;
        let (rate, per) = much.trim().split_once(" a ").ok_or_else(refuse)?;
        let per = match per.trim() {
            "month" => LatePer::Month,
            "year" => LatePer::Year,
            _ => return Err(refuse()),
        };
        let is_compound = match (way.trim(), per) {
            ("simple", _) => false,
            ("compound", LatePer::Month) => true,
            _ => return Err(refuse()),
        };
        Ok(Self {
            rate: rate.parse().map_err(|_| refuse())?,
            per,
            is_compound,
        })
    }
}

impl fmt::Display for LateCharge {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let per = match self.per {
            LatePer::Month => "month",
            LatePer::Year => "year",
        };
        let way = if self.is_compound {
            "compound"
        } else {
            "simple"
        };
        write!(out, "{} a {per}, {way}", self.rate)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_late_charge_is_written_as_it_is_read() {
        for text in [
            "1% a month, simple",
            "1.5% a month, compound",
            "12% a year, simple",
        ] {
            assert_eq!(text.parse::<LateCharge>().unwrap().to_string(), text);
        }
        for text in [
            "1% a month",
            "1 a month, simple",
            "1% a week, simple",
            "12% a year, compound",
        ] {
            assert!(text.parse::<LateCharge>().is_err(), "{text}");
        }
    }
}
