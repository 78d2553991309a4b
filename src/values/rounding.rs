//! The only place where anything is rounded.

use rust_decimal::{Decimal, RoundingStrategy};

use super::Money;

/// Rounds to whole cents, half a cent away from zero: 1.005 becomes 1.01.
///
/// `Decimal::round_dp` would give 1.00, since it rounds half to even. Nine places are
/// kept first: inches as decimal feet end in a rounded digit, and half a cent must not
/// turn on the order in which four sides were added.
pub fn to_cents(amount: Decimal) -> Money {
    let cents = to_places(to_places(amount, 9) * Decimal::ONE_HUNDRED, 0);
    Money::cents(
        i64::try_from(cents)
            .expect("prices and quantities are limited to twelve digits on reading"),
    )
}

/// The nearest whole multiple of `step`, half a step away from zero.
pub fn to_multiple(number: i64, step: i64) -> i64 {
    (number + number.signum() * (step / 2)) / step * step
}

/// Rounds for showing, half away from zero.
pub fn to_places(number: Decimal, places: u32) -> Decimal {
    number.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero)
}

/// Rounds for showing and keeps the zeros: 15 at two places is 15.00.
pub fn with_places(number: Decimal, places: u32) -> Decimal {
    let mut shown = to_places(number, places);
    shown.rescale(places);
    shown
}

/// The next whole multiple of `step` that is not below `number`.
///
/// Nine places are kept first, so that a third of a yard taken three times does
/// not order a fourth step.
pub fn round_up_to(number: Decimal, step: Decimal) -> Decimal {
    if step.is_zero() {
        return number;
    }
    let steps = to_places(number / step, 9).ceil();
    // Drops the digits a fraction like 1/3 leaves behind: three thirds are one.
    to_places(steps * step, 9).normalize()
}

/// The whole number at or below, where more than there is would be a false promise.
pub fn whole_below(number: Decimal) -> Decimal {
    number.floor()
}

/// The number to nine places, before whole pieces are counted or money is divided by it.
pub fn to_nine_places(number: Decimal) -> Decimal {
    to_places(number, 9)
}

/// Parts of `total` in proportion to `weights`; they always add up to it.
///
/// Largest remainder, ties to the earlier part. Weights that sum to zero give
/// the whole to the first part.
pub fn split(total: Money, weights: &[Decimal]) -> Vec<Money> {
    let sum: Decimal = weights.iter().sum();
    if weights.is_empty() {
        return Vec::new();
    }
    if sum.is_zero() {
        let mut parts = vec![Money::ZERO; weights.len()];
        parts[0] = total;
        return parts;
    }
    let cents = Decimal::from(total.as_cents());
    let exact: Vec<Decimal> = weights.iter().map(|w| cents * *w / sum).collect();
    let mut parts: Vec<i64> = exact
        .iter()
        .map(|e| i64::try_from(e.floor()).expect("no part is larger than the whole"))
        .collect();
    let mut missing = total.as_cents() - parts.iter().sum::<i64>();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|&i| std::cmp::Reverse(exact[i] - exact[i].floor()));
    for i in order.into_iter().cycle() {
        if missing <= 0 {
            break;
        }
        parts[i] += 1;
        missing -= 1;
    }
    parts.into_iter().map(Money::cents).collect()
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn half_a_cent_goes_away_from_zero() {
        assert_eq!(to_cents(dec!(1.005)), Money::cents(101));
        assert_eq!(to_cents(dec!(-1.005)), Money::cents(-101));
        assert_eq!(to_cents(dec!(2.675)), Money::cents(268));
        // 95 ft 11 3/4 in at 0.72 a foot, its sides added the other way.
        let feet = dec!(95.97916666666666666666666666);
        assert_eq!(to_cents(feet * dec!(0.72)), Money::cents(6911));
        // 127 11/12 sq ft at 1.14: 145.825 in truth, a hair less in 28 digits.
        assert_eq!(
            to_cents(dec!(1535) / dec!(12) * dec!(1.14)),
            Money::cents(14583)
        );
    }

    #[test]
    fn a_step_is_never_taken_for_a_trace() {
        assert_eq!(
            round_up_to(dec!(5.0000000000000000000000000004), dec!(1)),
            dec!(5)
        );
        assert_eq!(round_up_to(dec!(2.2222) * dec!(1.1), dec!(0.25)), dec!(2.5));
        assert_eq!(round_up_to(dec!(1), Decimal::ONE / dec!(3)), dec!(1));
        assert_eq!(round_up_to(dec!(7.01), dec!(0.25)), dec!(7.25));
    }

    #[test]
    fn a_load_exactly_on_the_boundary_is_not_one_more() {
        // 1,490 compacted cy, shrinkage 95 %, swell 14 %, 12 cy trucks: 1,788 exactly, 149 loads
        // (a course question; in binary floating point the product is 1787.9999999999998).
        let loose = dec!(1490) / dec!(0.95) * dec!(1.14);
        assert_eq!(round_up_to(loose / dec!(12), dec!(1)), dec!(149));
    }

    #[test]
    fn parts_always_add_up() {
        let parts = split(Money::cents(10000), &[dec!(1), dec!(1), dec!(1)]);
        assert_eq!(parts, [3334, 3333, 3333].map(Money::cents));
        let parts = split(
            Money::cents(1_220_060),
            &[dec!(10), dec!(40), dec!(40), dec!(10)],
        );
        assert_eq!(parts.iter().map(|m| m.as_cents()).sum::<i64>(), 1_220_060);
    }
}
