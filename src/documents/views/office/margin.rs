//! A margin held against its floor, at as many places as it takes to see the difference.

use rust_decimal::Decimal;

use crate::values::rounding;

/// The margin in percent at two places, or more where rounding would make it look like the floor.
pub fn margin(margin: Decimal, floor: Decimal) -> String {
    let places = (2..=6).find(|places| {
        let shown = rounding::to_places(margin, *places);
        shown.cmp(&floor) == margin.cmp(&floor)
    });
    let shown = rounding::with_places(margin, places.unwrap_or(6));
    format!("{shown}%")
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn a_margin_just_below_its_floor_does_not_look_like_it() {
        #[track_caller]
        fn case(number: Decimal, floor: Decimal, expected: &str) {
            assert_eq!(margin(number, floor), expected);
        }
        case(dec!(20.0216), dec!(15), "20.02%");
        case(dec!(15), dec!(15), "15.00%");
        case(dec!(14.997), dec!(15), "14.997%");
        case(dec!(14.9996), dec!(15), "14.9996%");
        case(dec!(-11.111), dec!(0), "-11.11%");
    }
}
