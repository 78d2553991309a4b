//! `40` or `class B`: how long bars lap, by the rule the owner names.

use super::reader::phrase;
use crate::values::{Amount, Unit};

/// The two rules give different lengths, so whoever prints a lap says which it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LapPhrase {
    /// So many bar diameters.
    Diameters(Amount),
    /// The tension splice of ACI 318, from the strength of the slab's mix.
    ClassB,
}

phrase!(
    LapPhrase,
    "lap",
    "bad-lap",
    "a lap of bars",
    "write how many bar diameters, for example `40`, or `class B`",
    |said| {
        if said.text().eq_ignore_ascii_case("class b") {
            return Ok(LapPhrase::ClassB);
        }
        let amount = said.read::<Amount>().ok();
        let plain = amount.filter(|amount| amount.unit == Unit::Plain);
        said.need(plain).map(LapPhrase::Diameters)
    }
);

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_the_two_rules() {
        let forty = LapPhrase::Diameters(Amount::new(dec!(40), Unit::Plain));
        assert_eq!("40".parse(), Ok(forty));
        for text in ["class B", "Class B", "class b", " class B "] {
            assert_eq!(text.parse(), Ok(LapPhrase::ClassB), "{text}");
        }
        refused::<LapPhrase>("bad-lap", &["", "class A", "20 in", "forty"]);
    }
}
