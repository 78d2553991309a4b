//! `7 hours per 100 ft`: so much of one thing for each so much of another.

use std::str::FromStr;

use rust_decimal::Decimal;

use crate::values::{Amount, Unit, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ratio {
    pub much: Amount,
    pub per: Amount,
}

impl FromStr for Ratio {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-rate",
                format!("cannot read `{text}` as a rate"),
                "write so much per so much, for example `7 hours per 100 ft` or `1 lb per cu yd`",
            )
        };
        let (much, per) = text.split_once(" per ").ok_or_else(refuse)?;
        let much: Amount = much.parse()?;
        let per: Amount = if per.trim().starts_with(|c: char| c.is_ascii_digit()) {
            per.parse()?
        } else {
            Amount::new(Decimal::ONE, per.parse()?)
        };
        if per.value.is_zero() || per.unit == Unit::Plain {
            return Err(refuse());
        }
        Ok(Self { much, per })
    }
}
