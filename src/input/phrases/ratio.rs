//! `7 hours per 100 ft`: so much of one thing for each so much of another.

use rust_decimal::Decimal;

use super::reader::phrase;
use crate::values::{Amount, Unit};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ratio {
    pub much: Amount,
    pub per: Amount,
}

impl Ratio {
    /// The same for so much of another unit, where both measure the same.
    pub fn per(self, unit: Unit) -> Option<Self> {
        let per = self.per.to(unit)?;
        Some(Self { per, ..self })
    }
}

impl std::fmt::Display for Ratio {
    /// One is left out of what it is for: `2 hours per cu yd`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.per.value == Decimal::ONE {
            return write!(f, "{} per {}", self.much, self.per.unit);
        }
        write!(f, "{} per {}", self.much, self.per)
    }
}

phrase!(
    Ratio,
    "rate",
    "bad-rate",
    "a rate",
    "write so much per so much, for example `7 hours per 100 ft` or `1 lb per cu yd`",
    |said| {
        let (much, per) = said.halves(" per ")?;
        let much = much.read()?;
        let per = Amount::one_or_more(per.text())?;
        if per.value.is_zero() || per.unit == Unit::Plain {
            return Err(said.refuse());
        }
        Ok(Ratio { much, per })
    }
);
