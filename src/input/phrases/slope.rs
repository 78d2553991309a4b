//! `2%`, `1:48`, `1/4 in per ft`: how steep, kept exactly as it was written.

use std::str::FromStr;

use rust_decimal::Decimal;

use crate::values::{Length, Unreadable, digits};

/// Rise over run as two exact numbers, since 1:48 has no last decimal.
#[derive(Clone, Copy, Debug)]
pub struct Slope {
    rise: Decimal,
    run: Decimal,
}

impl Slope {
    pub fn per_foot(rise: Length) -> Self {
        Self {
            rise: rise.inches(),
            run: Decimal::from(12),
        }
    }

    /// `1:run`.
    pub const fn one_in(run: Decimal) -> Self {
        Self {
            rise: Decimal::ONE,
            run,
        }
    }

    pub fn percent(of_hundred: Decimal) -> Self {
        Self {
            rise: of_hundred,
            run: Decimal::ONE_HUNDRED,
        }
    }

    /// How much it rises in a foot, to the nanometre.
    pub fn in_a_foot(self) -> Length {
        Length::of_feet(self.rise / self.run)
    }

    /// Compared without dividing, so that nothing is lost at the limit.
    pub fn is_steeper_than(self, limit: Self) -> bool {
        limit.rise * self.run < self.rise * limit.run
    }
}

impl FromStr for Slope {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-slope",
                format!("cannot read `{text}` as a slope"),
                "write `2%`, `1:48` or `1/4 in per ft`",
            )
        };
        let text = text.trim();
        if let Some(percent) = text.strip_suffix('%') {
            let percent = digits(percent.trim()).map_err(|_| refuse())?;
            return if percent <= Decimal::ONE_HUNDRED {
                Ok(Self::percent(percent))
            } else {
                Err(refuse())
            };
        }
        if let Some(run) = text.strip_prefix("1:") {
            let run = digits(run.trim()).map_err(|_| refuse())?;
            return if run.is_zero() {
                Err(refuse())
            } else {
                Ok(Self::one_in(run))
            };
        }
        let rise = text.strip_suffix(" per ft").ok_or_else(refuse)?;
        Ok(Self::per_foot(rise.parse()?))
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    /// A quarter inch in a foot is 1:48, which is 2.0833... %: more than 2 and less than 2.084.
    #[test]
    fn a_quarter_inch_in_a_foot_is_one_in_forty_eight() {
        let limit = Slope::one_in(dec!(48));
        let read = |text: &str| text.parse::<Slope>().unwrap();
        for (text, steeper) in [
            ("2.00%", false),
            ("2.083%", false),
            ("1:48", false),
            ("1/4 in per ft", false),
            ("2.0834%", true),
            ("2.084%", true),
            ("1:47.99", true),
            ("17/64 in per ft", true),
        ] {
            assert_eq!(read(text).is_steeper_than(limit), steeper, "{text}");
        }
        for text in ["2", "1:0", "two", "150%", "2:48", "-2%"] {
            assert!(text.parse::<Slope>().is_err(), "{text}");
        }
    }
}
