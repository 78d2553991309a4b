//! A margin held against its floor, at as many places as it takes to see the difference.

use rust_decimal::Decimal;

use super::Sheet;
use crate::costing::Totals;
use crate::costing::outcome::Finding;
use crate::documents::column::Cell;
use crate::values::{Percent, rounding};

/// A margin, none where there is no price, and the least that the owner wants.
#[derive(Clone, Copy, Debug)]
pub struct Margin {
    pub number: Option<Decimal>,
    pub floor: Percent,
}

impl Margin {
    pub fn is_below(self) -> bool {
        self.number
            .is_some_and(|number| number < self.floor.number())
    }

    /// In percent at two places, or more where rounding would make it look like the floor.
    pub fn shown(self) -> Option<String> {
        let (number, floor) = (self.number?, self.floor.number());
        let places = (2..=6).find(|places| {
            let shown = rounding::to_places(number, *places);
            shown.cmp(&floor) == number.cmp(&floor)
        });
        let shown = rounding::with_places(number, places.unwrap_or(6));
        Some(format!("{shown}%"))
    }

    /// The same, or that there is none.
    pub fn or_none(self) -> String {
        self.shown().unwrap_or_else(|| "none".to_owned())
    }

    /// For programs at two places.
    pub fn cell(self) -> Cell {
        let percent = |number| Cell::percent(number, 2, self.shown().unwrap_or_default());
        self.number.map(percent).into()
    }

    /// A word where the owner wants to be told.
    pub fn warning(self) -> &'static str {
        if self.is_below() { "below floor" } else { "" }
    }
}

impl Sheet<'_> {
    /// The margin of such totals against the owner's floor.
    pub fn margin(&self, totals: &Totals) -> Margin {
        Margin {
            number: totals.margin(),
            floor: self.business.price.margin_floor.value,
        }
    }
}

impl Finding<'_> {
    /// The margin if the promised price is held.
    pub fn margin(&self) -> Margin {
        Margin {
            number: self.found.margin_held(),
            floor: self.floor,
        }
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn a_margin_just_below_its_floor_does_not_look_like_it() {
        #[track_caller]
        fn case(number: Decimal, floor: Decimal, expected: &str) {
            let margin = Margin {
                number: Some(number),
                floor: Percent::new(floor),
            };
            assert_eq!(margin.or_none(), expected);
        }
        case(dec!(20.0216), dec!(15), "20.02%");
        case(dec!(15), dec!(15), "15.00%");
        case(dec!(14.997), dec!(15), "14.997%");
        case(dec!(14.9996), dec!(15), "14.9996%");
        case(dec!(-11.111), dec!(0), "-11.11%");
    }
}
