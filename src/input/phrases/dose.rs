//! `3 lb per 100 sq ft`, `250 sq ft per gal, 2 coats`, `3% of cement`: how much of an item a surface takes.

use rust_decimal::Decimal;

use super::Ratio;
use super::reader::phrase;
use crate::values::{Amount, Percent, Unit};

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

phrase!(
    Dose,
    "dose",
    "bad-dose",
    "how much is needed",
    "write `3 lb per 100 sq ft`, `250 sq ft per gal, 2 coats`, `0.2 lb per ft` (of formed edge), `2 pieces per pour`, or for what is mixed in `3% of cement` or `5 lb per cu yd`",
    |said| {
        if let Some(percent) = said.before("of cement") {
            return percent.read().map(Dose::Cement);
        }
        if let Some(much) = said.before(" per pour") {
            return much.read().map(Dose::Pour);
        }
        let (rate, coats) = match said.split(",") {
            Some((rate, coats)) => {
                let coats = coats.before("coats").or_else(|| coats.before("coat"));
                // More than nine would be a slip.
                let coats = coats.and_then(|coats| coats.count(1..=9));
                (rate, said.need(coats)?)
            }
            None => (said, 1),
        };
        rate.halves(" per ")?;
        let ratio: Ratio = rate.read()?;
        match (ratio.much.unit, ratio.per.unit) {
            (Unit::Plain, _) => Err(said.refuse()),
            (_, Unit::SquareFoot) => Ok(Dose::Area { ratio, coats }),
            (Unit::SquareFoot, _) if ratio.much.value != Decimal::ZERO => {
                Ok(Dose::Coverage { ratio, coats })
            }
            (_, Unit::Foot) if coats == 1 => Ok(Dose::Edge(ratio)),
            (_, Unit::CubicYard) if coats == 1 => Ok(Dose::Yard(ratio)),
            _ => Err(said.refuse()),
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
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
        let others = [
            "3 lb",
            "3 per 100 sq ft",
            "250 sq ft per gal, thick",
            "250 sq ft per gal, 0 coats",
            "0.2 lb per ft, 2 coats",
            "0 sq ft per gal",
            "3 lb per gal",
        ];
        refused::<Dose>("bad-dose", &others);
    }
}
