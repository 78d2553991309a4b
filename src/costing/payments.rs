//! The payment schedule of a total; its parts always add up to it.

use rust_decimal::Decimal;

use crate::input::business::{Business, Installment};
use crate::input::phrases::Share;
use crate::trade::crew::Crew;
use crate::values::{Money, rounding};

/// When the customer of this job pays: on a short one, as the owner says for those.
pub fn payments<'a>(business: &'a Business, crew: &Crew) -> &'a [Installment] {
    if crew.is_short() && !business.short_payments.is_empty() {
        &business.short_payments
    } else {
        &business.payments
    }
}

/// The payments of a total; they always add up to it.
pub fn schedule(total: Money, payments: &[Installment]) -> Vec<Money> {
    let shares: Vec<Share> = payments.iter().map(|payment| payment.share).collect();
    parts(total, &shares)
}

/// A total in these shares; they always add up to it.
pub fn parts(total: Money, shares: &[Share]) -> Vec<Money> {
    let weights: Option<Vec<Decimal>> = shares.iter().map(|share| share.of_one()).collect();
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::{FileId, Place};

    #[test]
    fn shares_alone_make_the_whole_and_the_earlier_part_takes_the_odd_cent() {
        #[track_caller]
        fn case(shares: &[&str], total: i64, parts: &[i64]) {
            let place = Place {
                file: FileId(0),
                start: 0,
                end: 0,
            };
            let payments: Vec<Installment> = shares
                .iter()
                .map(|share| Installment {
                    when: String::new(),
                    share: share.parse().unwrap(),
                    place,
                })
                .collect();
            let found: Vec<i64> = schedule(Money::cents(total), &payments)
                .into_iter()
                .map(Money::as_cents)
                .collect();
            assert_eq!(found, parts, "{shares:?}");
        }
        case(&["1/3", "1/3", "1/3"], 10_000, &[3334, 3333, 3333]);
        case(&["1/2", "50%"], 101, &[51, 50]);
        case(&["1/6", "1/3", "1/2"], 600, &[100, 200, 300]);
        case(
            &["10%", "40%", "40%", "10%"],
            1_220_060,
            &[122_006, 488_024, 488_024, 122_006],
        );
        case(&["1/3", "rest"], 10_000, &[3333, 6667]);
    }
}
