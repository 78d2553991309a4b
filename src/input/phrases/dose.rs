//! `3 lb per 100 sq ft`, `250 sq ft per gal, 2 coats`, `3% of cement`: how much of an item a surface takes.

use std::str::FromStr;

use rust_decimal::Decimal;

use super::Ratio;
use crate::values::{Amount, Percent, Unit, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dose {
    /// So much for so many square feet, in each coat.
    Area { ratio: Ratio, coats: u32 },
    /// So many square feet from each, in each coat.
    Coverage { ratio: Ratio, coats: u32 },
    /// So much for each foot of formed edge.
    Edge(Ratio),
    /// So much in every yard of concrete.
    Yard(Ratio),
    /// A share of the weight of the cement.
    Cement(Percent),
    /// So much whenever it is poured.
    Pour(Amount),
}

impl Dose {
    /// Whether it goes into the concrete, not onto it.
    pub const fn is_mixed_in(self) -> bool {
        matches!(self, Self::Yard(_) | Self::Cement(_))
    }

    /// The unit of what is bought.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Area { ratio, .. } | Self::Edge(ratio) | Self::Yard(ratio) => ratio.much.unit,
            Self::Coverage { ratio, .. } => ratio.per.unit,
            Self::Cement(_) => Unit::Pound,
            Self::Pour(much) => much.unit,
        }
    }
}

impl FromStr for Dose {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-dose",
                format!("cannot read `{text}` as how much is needed"),
                "write `3 lb per 100 sq ft`, `250 sq ft per gal, 2 coats`, `0.2 lb per ft` (of formed edge), `2 pieces per pour`, or for what is mixed in `3% of cement` or `5 lb per cu yd`",
            )
        };
        let text = text.trim();
        if let Some(percent) = text.strip_suffix("of cement") {
            let percent: Percent = percent.trim_end().parse()?;
            return Ok(Self::Cement(percent));
        }
        if let Some(much) = text.strip_suffix(" per pour") {
            return Ok(Self::Pour(much.parse()?));
        }
        let (rate, coats) = match text.split_once(',') {
            Some((rate, coats)) => (rate, self::coats(coats).ok_or_else(refuse)?),
            None => (text, 1),
        };
        if !rate.contains(" per ") {
            return Err(refuse());
        }
        let ratio: Ratio = rate.parse()?;
        if ratio.much.unit == Unit::Plain {
            return Err(refuse());
        }
        match (ratio.much.unit, ratio.per.unit) {
            (_, Unit::SquareFoot) => Ok(Self::Area { ratio, coats }),
            (Unit::SquareFoot, _) if ratio.much.value != Decimal::ZERO => {
                Ok(Self::Coverage { ratio, coats })
            }
            (_, Unit::Foot) if coats == 1 => Ok(Self::Edge(ratio)),
            (_, Unit::CubicYard) if coats == 1 => Ok(Self::Yard(ratio)),
            _ => Err(refuse()),
        }
    }
}

/// `2 coats`; more than nine would be a slip.
fn coats(text: &str) -> Option<u32> {
    let text = text.trim();
    let number = text
        .strip_suffix("coats")
        .or_else(|| text.strip_suffix("coat"))?;
    let number: u32 = number.trim_end().parse().ok()?;
    (1..=9).contains(&number).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_how_much_as_it_stands_on_the_pail() {
        #[track_caller]
        fn case(text: &str, fits: impl Fn(Dose) -> bool, unit: Unit) {
            let dose: Dose = text.parse().unwrap();
            assert!(fits(dose), "{text}: {dose:?}");
            assert_eq!(dose.unit(), unit, "{text}");
        }
        case(
            "3 lb per 100 sq ft",
            |dose| matches!(dose, Dose::Area { coats: 1, .. }),
            Unit::Pound,
        );
        case(
            "250 sq ft per gal, 2 coats",
            |dose| matches!(dose, Dose::Coverage { coats: 2, .. }),
            Unit::Gallon,
        );
        case(
            "1.05 sq ft per sq ft",
            |dose| matches!(dose, Dose::Area { .. }),
            Unit::SquareFoot,
        );
        case(
            "0.2 lb per ft",
            |dose| matches!(dose, Dose::Edge(_)),
            Unit::Pound,
        );
        case(
            "5 lb per cu yd",
            |dose| matches!(dose, Dose::Yard(_)) && dose.is_mixed_in(),
            Unit::Pound,
        );
        case(
            "3% of cement",
            |dose| matches!(dose, Dose::Cement(_)) && dose.is_mixed_in(),
            Unit::Pound,
        );
        case(
            "1 day per pour",
            |dose| matches!(dose, Dose::Pour(_)) && !dose.is_mixed_in(),
            Unit::Day,
        );
    }

    #[test]
    fn what_says_too_little_is_refused() {
        for text in [
            "3 lb",
            "3 per 100 sq ft",
            "250 sq ft per gal, thick",
            "250 sq ft per gal, 0 coats",
            "0.2 lb per ft, 2 coats",
            "0 sq ft per gal",
            "3 lb per gal",
        ] {
            assert_eq!(text.parse::<Dose>().unwrap_err().code, "bad-dose", "{text}");
        }
    }
}
