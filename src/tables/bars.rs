//! Reinforcing bars: nominal diameter and weight.
//!
//! Source: ASTM A615/A615M, read on three secondary pages that agree (a trade
//! magazine, a handbook's design aid, a textbook); the standard itself was not
//! opened.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::values::{Length, Unreadable};

/// A deformed bar of a size used in flatwork; the number is eighths of an inch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Bar {
    No3 = 3,
    No4,
    No5,
    No6,
    No7,
    No8,
}

impl Bar {
    pub const ALL: [Self; 6] = [
        Self::No3,
        Self::No4,
        Self::No5,
        Self::No6,
        Self::No7,
        Self::No8,
    ];

    /// The bar's number, which is its diameter in eighths of an inch.
    pub const fn number(self) -> u8 {
        self as u8
    }

    pub const fn diameter(self) -> Length {
        Length::sixty_fourths(self.number() as i64 * 8)
    }

    /// Pounds per foot, as printed.
    ///
    /// Not to be derived from the areas that are printed beside it: the rounded area of a
    /// no. 4 bar would weigh 1.8% too much.
    pub const fn weight_per_foot(self) -> Decimal {
        match self {
            Self::No3 => dec!(0.376),
            Self::No4 => dec!(0.668),
            Self::No5 => dec!(1.043),
            Self::No6 => dec!(1.502),
            Self::No7 => dec!(2.044),
            Self::No8 => dec!(2.670),
        }
    }
}

/// How the trade says it: `no. 4`.
impl fmt::Display for Bar {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&format!("no. {}", self.number()))
    }
}

impl FromStr for Bar {
    type Err = Unreadable;

    /// Reads `no. 4`, `No 4`, `#4` and `4`.
    ///
    /// # Errors
    /// When the text is not a bar from no. 3 to no. 8.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let lower = text.trim().to_lowercase();
        let digits = ["no.", "no", "#"]
            .iter()
            .find_map(|sign| lower.strip_prefix(sign))
            .unwrap_or(&lower)
            .trim();
        Self::ALL
            .into_iter()
            .find(|bar| bar.number().to_string() == digits)
            .ok_or_else(|| {
                Unreadable::new(
                    "unknown-bar",
                    format!("`{}` is not a bar size", text.trim()),
                    "write `no. 3` to `no. 8`; a no. 4 bar is 1/2 in thick",
                )
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PI: Decimal = dec!(3.14159265);

    fn square_inches(diameter: Length) -> Decimal {
        PI / dec!(4) * diameter.inches() * diameter.inches()
    }

    /// The table is πd²/4 × 3.4 lb/ft per square inch of bar, printed to three
    /// places, so a slip in copying a digit cannot hide.
    #[test]
    fn weights_agree_with_diameters() {
        for bar in Bar::ALL {
            let computed = square_inches(bar.diameter()) * dec!(3.4);
            let error = (computed - bar.weight_per_foot()).abs();
            assert!(error <= dec!(0.0005), "{bar:?}: computed {computed}");
        }
    }

    /// The same steel by another road: 490 lb to the cubic foot.
    #[test]
    fn weights_agree_with_the_density_of_steel() {
        for bar in Bar::ALL {
            let cubic_feet = square_inches(bar.diameter()) / dec!(144);
            let error = (cubic_feet * dec!(490) - bar.weight_per_foot()).abs();
            assert!(error <= dec!(0.003), "{bar:?}");
        }
    }

    #[test]
    fn reads_bars_as_they_are_said() {
        #[track_caller]
        fn case(text: &str, bar: Bar) {
            assert_eq!(text.parse(), Ok(bar), "{text}");
        }
        case("no. 4", Bar::No4);
        case("No 5", Bar::No5);
        case("#3", Bar::No3);
        case("# 6", Bar::No6);
        case(" 8 ", Bar::No8);
        for bar in Bar::ALL {
            case(&bar.to_string(), bar);
        }
    }

    #[test]
    fn refuses_what_is_not_a_bar() {
        for text in ["", "no.", "#2", "9", "44", "1/2 in", "no. 4.0", "04"] {
            let refused = text.parse::<Bar>().map_err(|e| e.code);
            assert_eq!(refused, Err("unknown-bar"), "{text}");
        }
    }
}
