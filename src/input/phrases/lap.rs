//! `40` or `class B`: how long bars lap, by the rule the owner names.

use std::str::FromStr;

use crate::values::{Amount, Unit, Unreadable};

/// The two rules give different lengths, so whoever prints a lap says which it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LapPhrase {
    /// So many bar diameters.
    Diameters(Amount),
    /// The tension splice of ACI 318, from the strength of the slab's mix.
    ClassB,
}

impl FromStr for LapPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim().eq_ignore_ascii_case("class b") {
            return Ok(Self::ClassB);
        }
        match text.parse::<Amount>() {
            Ok(amount) if amount.unit == Unit::Plain => Ok(Self::Diameters(amount)),
            _ => Err(Unreadable::new(
                "bad-lap",
                format!("cannot read `{}` as a lap of bars", text.trim()),
                "write how many bar diameters, for example `40`, or `class B`",
            )),
        }
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn reads_the_two_rules() {
        let forty = LapPhrase::Diameters(Amount::new(dec!(40), Unit::Plain));
        assert_eq!("40".parse(), Ok(forty));
        for text in ["class B", "Class B", "class b", " class B "] {
            assert_eq!(text.parse(), Ok(LapPhrase::ClassB), "{text}");
        }
        for text in ["", "class A", "20 in", "forty"] {
            let refused = text.parse::<LapPhrase>().map_err(|e| e.code);
            assert_eq!(refused, Err("bad-lap"), "{text}");
        }
    }
}
