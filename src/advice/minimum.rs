//! Is a price fixed by the owner below the owner's own minimum?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let minimum = &case.business.price.minimum;
    let fixed = case.takeoff.head.fixed_price.as_ref();
    let answer = fixed
        .filter(|price| price.value < minimum.value)
        .map(|price| {
            let message = format!(
                "`{}` is below your minimum job of {}",
                price.value, minimum.value
            );
            Problem::new("below-minimum", message)
            .at(price.place)
            .also(minimum.place, "your minimum")
            .help("raise `price`, or keep it if you mean it: a fixed price is never raised for you")
        });
    answer.or_else(|| taken_off(case)).into_iter().collect()
}

/// The price that is left when everything is taken off.
fn taken_off(case: Case<'_>) -> Option<Problem> {
    let minimum = &case.business.price.minimum;
    let first = case.takeoff.head.discounts.first()?;
    let left = case.offer.quoted().totals().price;
    (left < minimum.value).then(|| {
        let least = minimum.value;
        let message = format!("the discounts leave `{left}`, and your minimum job is {least}");
        Problem::new("below-minimum", message)
            .at(first.off.place)
            .also(minimum.place, "your minimum")
            .help("take less off, or keep it if you mean it")
    })
}
