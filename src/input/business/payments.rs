//! The payment schedule.

use rust_decimal::Decimal;

use crate::input::phrases::Share;
use crate::reading::{Fields, Place, Problem, Problems, Read};
use crate::values::{Percent, rounding};

/// One payment of the schedule.
#[derive(Clone, Debug)]
pub struct Installment {
    pub when: String,
    pub share: Share,
    pub place: Place,
}

pub(super) fn read(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<Installment>> {
    let Some(node) = fields.unless_left_out(key, problems)? else {
        return Ok(Vec::new());
    };
    let mut payments = Vec::new();
    for (when, share) in fields.named(key, problems) {
        if let Ok(value) = share.read::<Share>(problems) {
            payments.push(Installment {
                when: when.value,
                share: value,
                place: share.place,
            });
        }
    }
    check_whole(&payments, node.place, problems);
    Ok(payments)
}

/// Percents make 100, or shares the whole; anything else needs one `rest`, so that the parts always do.
fn check_whole(payments: &[Installment], place: Place, problems: &mut Problems) {
    let rests = payments.iter().filter(|p| p.share == Share::Rest).count();
    if 1 < rests {
        let second = payments
            .iter()
            .filter(|p| p.share == Share::Rest)
            .nth(1)
            .map_or(place, |p| p.place);
        problems.push(
            Problem::new("two-rests", "only one payment can be the `rest`")
                .at(second)
                .help("give the others a percentage or an amount"),
        );
    }
    let percents = payments.iter().filter_map(|p| {
        if let Share::Percent(percent) = p.share {
            Some(percent.number())
        } else {
            None
        }
    });
    let sum = Percent::new(percents.sum());
    let all_percent = payments
        .iter()
        .all(|p| matches!(p.share, Share::Percent(_)));
    let shares: Option<Decimal> = payments.iter().map(|p| p.share.of_one()).sum();
    // Three thirds are the whole, though no decimal is a third.
    let whole = shares.is_some_and(|sum| rounding::to_nine_places(sum) == Decimal::ONE);
    if rests == 0
        && !payments.is_empty()
        && !(whole && (!all_percent || sum.number() == Decimal::ONE_HUNDRED))
    {
        let message = if all_percent {
            format!("the payments make {sum}, not 100%")
        } else if shares.is_some() {
            "the shares of the payments do not make the whole".to_owned()
        } else {
            "the payments leave no `rest`".to_owned()
        };
        problems.push(
            Problem::new("payments-not-whole", message)
                .at(payments[0].place)
                .help("let them make 100%, or write `rest` for the last one"),
        );
    }
}
