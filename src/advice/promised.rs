//! Does a pour lie past the last day anyone has promised a price for?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let Some(until) = &case.book.good_until else {
        return Vec::new();
    };
    let pours = case.days.iter().zip(&case.takeoff.placements);
    let late = pours.filter(|(prices, _)| until.value < prices.day);
    // The last pour says it for all of them.
    let answer = late.max_by_key(|(prices, _)| prices.day).map(|(prices, placement)| {
        let message = format!(
            "the pour of `{}` is past `{}`, the last day anyone has promised a price for",
            prices.day, until.value
        );
        let place = placement.day.as_ref().map_or(until.place, |day| day.place);
        Problem::new("past-promised-prices", message)
            .at(place)
            .help("it is priced with the last price known; ask the supplier for later ones and move `good until`")
    });
    answer.into_iter().collect()
}
