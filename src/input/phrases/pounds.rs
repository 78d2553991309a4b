//! `22,500 lb`: a load as a maker's sheet prints it.

use std::str::FromStr;

use rust_decimal::Decimal;

use crate::values::{Amount, Unit, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pounds(pub Decimal);

impl Pounds {
    pub fn amount(self) -> Amount {
        Amount::new(self.0, Unit::Pound)
    }
}

impl FromStr for Pounds {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-load",
                format!("cannot read `{text}` as a load"),
                "write what the maker states, for example `20800 lb`",
            )
        };
        let amount: Amount = text.replace(',', "").parse().map_err(|_| refuse())?;
        if amount.unit == Unit::Pound && !amount.value.is_zero() {
            Ok(Self(amount.value))
        } else {
            Err(refuse())
        }
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn reads_loads_with_and_without_commas() {
        assert_eq!("22,500 lb".parse(), Ok(Pounds(dec!(22500))));
        assert_eq!("20800 lb".parse(), Ok(Pounds(dec!(20800))));
        for text in ["20800", "20 kN", "0 lb", "H-20"] {
            assert_eq!(text.parse::<Pounds>().map_err(|e| e.code), Err("bad-load"));
        }
    }
}
