//! The payment schedule of a total; its parts always add up to it.

use rust_decimal::Decimal;

use crate::input::business::Payment;
use crate::input::phrases::Share;
use crate::values::{Money, rounding};

/// The payments of a total; they always add up to it.
pub fn schedule(total: Money, payments: &[Payment]) -> Vec<Money> {
    let all_percent = payments
        .iter()
        .all(|payment| matches!(payment.share, Share::Percent(_)));
    if all_percent {
        let weights: Vec<Decimal> = payments
            .iter()
            .map(|payment| {
                if let Share::Percent(percent) = payment.share {
                    percent.number()
                } else {
                    Decimal::ZERO
                }
            })
            .collect();
        return rounding::split(total, &weights);
    }
    let part = |share: Share| match share {
        Share::Percent(percent) => rounding::to_cents(total.dollars() * percent.fraction()),
        Share::Fraction { top, bottom } => rounding::to_cents(total.dollars() * top / bottom),
        Share::Amount(money) => money,
        Share::Rest => Money::ZERO,
    };
    let parts: Vec<Money> = payments.iter().map(|payment| part(payment.share)).collect();
    let rest = total - parts.iter().copied().sum();
    payments
        .iter()
        .zip(parts)
        .map(|(payment, part)| {
            if payment.share == Share::Rest {
                rest
            } else {
                part
            }
        })
        .collect()
}
