//! Is a pour in the plant's winter, and are the days to cure counted for warmer weather?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let supply = case.book.rules.supply.as_ref();
    let Some(winter) = supply.and_then(|supply| supply.charges.winter.as_ref()) else {
        return Vec::new();
    };
    let cool = &case.business.cure.cool;
    let cold = case
        .takeoff
        .placements
        .iter()
        .zip(case.days)
        .find(|(_, prices)| winter.during.value.holds(prices.day));
    let answer = cold.map(|(pour, prices)| {
        let message = format!(
            "the pour of `{}` is in the plant's winter; the quote counts its days for `{} °F` and more",
            prices.day,
            cool.value.number()
        );
        let place = pour.day.as_ref().map_or(case.takeoff.place, |day| day.place);
        Problem::new("cold-pour", message)
            .at(place)
            .also(cool.place, "your cool spell")
            .help("write a lower `cool`, tell the customer that cold days count less, and plan covers; ask your supplier")
    });
    answer.into_iter().collect()
}
