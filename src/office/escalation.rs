//! What the escalation clause of a contract comes to at a published price.

use rust_decimal::Decimal;

use crate::input::business::Escalation;
use crate::values::{Money, Percent, rounding};

/// The change of the price before tax, and how it came about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Followed {
    /// Below zero where it is taken off.
    pub amount: Money,
    /// `($192.00 − $178.00 × 105%) × 8.25 cu yd`.
    pub working: String,
}

/// What lies beyond the share of the reference that is not followed, for so many yards; rounded once, to the cent.
pub fn followed(clause: &Escalation, index: Money, yards: Decimal) -> Option<Followed> {
    beyond(clause.reference.value, clause.over, index, yards)
}

fn beyond(reference: Money, over: Percent, index: Money, yards: Decimal) -> Option<Followed> {
    let (named, today) = (reference.dollars(), index.dollars());
    let (over, share) = (over.fraction(), over.number());
    let hundred = Decimal::ONE_HUNDRED;
    let (high, low) = (named * (Decimal::ONE + over), named * (Decimal::ONE - over));
    let (limit, percent) = if high < today {
        (high, hundred + share)
    } else if today < low {
        (low, hundred - share)
    } else {
        return None;
    };
    let amount = rounding::to_cents((today - limit) * yards);
    let working = format!(
        "({index} \u{2212} {} × {}%) × {} cu yd",
        reference,
        percent.normalize(),
        yards.normalize()
    );
    (!amount.is_zero()).then_some(Followed { amount, working })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_lies_beyond_the_share_is_followed() {
        let followed = |over: &str, index: i64| {
            let (named, over) = (Money::cents(17_800), over.parse().unwrap());
            let found = beyond(named, over, Money::cents(index), Decimal::new(825, 2));
            found.map(|one| one.amount.as_cents())
        };
        // 178.00 × 1.05 is 186.90: 5.10 × 8.25 is 42.075, so 42.08 (by hand).
        assert_eq!(followed("5%", 19_200), Some(4208));
        assert_eq!(followed("5%", 18_690), None);
        assert_eq!(followed("5%", 18_691), Some(8));
        // 178.00 × 0.95 is 169.10.
        assert_eq!(followed("5%", 16_910), None);
        assert_eq!(followed("5%", 16_909), Some(-8));
        assert_eq!(followed("5%", 16_000), Some(-7508));
        assert_eq!(followed("0%", 19_200), Some(11_550));
        assert_eq!(followed("0%", 17_800), None);
    }
}
