//! `1% a month, simple`: what an owner asks for of an invoice that is paid late.

use std::fmt;

use super::reader::phrase;
use crate::reading::words;
use crate::values::Percent;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateCharge {
    pub rate: Percent,
    pub per: LatePer,
    /// On the charges before as well; said, since the two are easily confused.
    pub is_compound: bool,
}

words! {
    pub enum LatePer {
        /// For each whole month past the due day.
        Month "month";
        /// For each day past the due day, a 365th part.
        Year "year";
    }
}

phrase!(
    LateCharge,
    "charge",
    "bad-late-charge",
    "a late charge",
    "write rate, time and way, for example `1% a month, simple`, `1% a month, compound` or `12% a year, simple`",
    |said| {
        let (much, way) = said.halves(",")?;
        let (rate, per) = much.halves(" a ")?;
        let mut times = LatePer::ALL.into_iter();
        let per = said.need(times.find(|time| per.is(time.name())))?;
        let is_compound = match (way.text(), per) {
            ("simple", _) => false,
            ("compound", LatePer::Month) => true,
            _ => return Err(said.refuse()),
        };
        Ok(LateCharge {
            rate: said.need(rate.read().ok())?,
            per,
            is_compound,
        })
    }
);

impl fmt::Display for LateCharge {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let way = if self.is_compound {
            "compound"
        } else {
            "simple"
        };
        write!(out, "{} a {}, {way}", self.rate, self.per.name())
    }
}

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
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
        let others = [
            "1% a month",
            "1 a month, simple",
            "1% a week, simple",
            "12% a year, compound",
        ];
        refused::<LateCharge>("bad-late-charge", &others);
    }
}
