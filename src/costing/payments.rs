//! The payment schedule of a total; its parts always add up to it.

use rust_decimal::Decimal;

use crate::input::business::Payment;
use crate::input::phrases::Share;
use crate::values::{Money, rounding};

/// The payments of a total; they always add up to it.
pub fn schedule(total: Money, payments: &[Payment]) -> Vec<Money> {
    let shares: Vec<Share> = payments.iter().map(|payment| payment.share).collect();
    parts(total, &shares)
}

/// A total in these shares; they always add up to it.
pub fn parts(total: Money, shares: &[Share]) -> Vec<Money> {
    let percent = |share: &Share| match share {
        Share::Percent(percent) => Some(percent.number()),
        Share::Fraction { .. } | Share::Amount(_) | Share::Rest => None,
    };
    let weights: Option<Vec<Decimal>> = shares.iter().map(percent).collect();
    if let Some(weights) = weights {
        return rounding::split(total, &weights);
    }
    let part = |share: Share| match share {
        Share::Percent(percent) => rounding::to_cents(total.dollars() * percent.fraction()),
        Share::Fraction { top, bottom } => rounding::to_cents(total.dollars() * top / bottom),
        Share::Amount(money) => money,
        Share::Rest => Money::ZERO,
    };
    let parts: Vec<Money> = shares.iter().map(|share| part(*share)).collect();
    let rest = total - parts.iter().copied().sum();
    shares
        .iter()
        .zip(parts)
        .map(|(share, part)| if *share == Share::Rest { rest } else { part })
        .collect()
}
