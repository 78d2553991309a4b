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
    answer.into_iter().collect()
}
