//! `22,500 lb`: a load as a maker's sheet prints it.

use rust_decimal::Decimal;

use super::reader::phrase;
use crate::values::{Amount, Unit};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pounds(pub Decimal);

impl Pounds {
    pub fn amount(self) -> Amount {
        Amount::new(self.0, Unit::Pound)
    }
}

phrase!(
    Pounds,
    "pounds",
    "bad-load",
    "a load",
    "write what the maker states, for example `20800 lb`",
    |said| {
        let amount: Option<Amount> = said.text().replace(',', "").parse().ok();
        let load = amount.filter(|load| load.unit == Unit::Pound && !load.value.is_zero());
        said.need(load).map(|load| Pounds(load.value))
    }
);

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_loads_with_and_without_commas() {
        assert_eq!("22,500 lb".parse(), Ok(Pounds(dec!(22500))));
        assert_eq!("20800 lb".parse(), Ok(Pounds(dec!(20800))));
        refused::<Pounds>("bad-load", &["20800", "20 kN", "0 lb", "H-20"]);
    }
}
