//! `2%`, `1:48`, `1/4 in per ft`: how steep, kept exactly as it was written.

use rust_decimal::Decimal;

use super::reader::phrase;
use crate::values::{Length, number};

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

phrase!(
    Slope,
    "slope",
    "bad-slope",
    "a slope",
    "write `2%`, `1:48` or `1/4 in per ft`",
    |said| {
        if let Some(percent) = said.before("%") {
            let percent = number::digits(percent.text());
            let percent = percent.filter(|percent| *percent <= Decimal::ONE_HUNDRED);
            return said.need(percent).map(Slope::percent);
        }
        if let Some(run) = said.after("1:") {
            let run = number::digits(run.text()).filter(|run| !run.is_zero());
            return said.need(run).map(Slope::one_in);
        }
        let rise = said.need(said.before(" per ft"))?;
        rise.read().map(Slope::per_foot)
    }
);

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::super::reader::tests::refused;
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
        let others = ["2", "1:0", "two", "150%", "2:48", "-2%"];
        refused::<Slope>("bad-slope", &others);
    }
}
