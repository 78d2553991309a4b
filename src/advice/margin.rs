//! Is the margin at or above the owner's floor, as quoted and whatever the customer chooses?

use rust_decimal::Decimal;

use super::Case;
use crate::input::job::Choice;
use crate::reading::Problem;
use crate::values::rounding::to_places;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let at_floor = &case.business.price.margin_floor;
    let floor = at_floor.value.number();
    let margin = |choice: &Choice| case.offer.by_choice[choice].totals().margin();
    // On a tie the first combination, which is the job as quoted.
    let mut worst: Option<(&Choice, Decimal)> = None;
    for choice in case.offer.by_choice.keys() {
        if let Some(margin) = margin(choice)
            && worst.is_none_or(|(_, lowest)| margin < lowest)
        {
            worst = Some((choice, margin));
        }
    }
    let quoted = margin(&case.offer.as_quoted).filter(|margin| *margin < floor);
    let worst = worst.filter(|(_, margin)| *margin < floor);
    let message = match (quoted, worst) {
        (None, None) => return Vec::new(),
        (Some(quoted), Some((choice, lowest))) if *choice != case.offer.as_quoted => format!(
            "the margin is `{}%` as quoted, and `{}%` with {}; your floor is {}",
            shown(quoted, floor),
            shown(lowest, floor),
            chosen(case, choice),
            at_floor.value
        ),
        (Some(quoted), _) => format!(
            "the margin is `{}%`; your floor is {}",
            shown(quoted, floor),
            at_floor.value
        ),
        (None, Some((choice, lowest))) => format!(
            "the margin is `{}%` with {}; your floor is {}",
            shown(lowest, floor),
            chosen(case, choice),
            at_floor.value
        ),
    };
    let fixed = case.takeoff.head.fixed_price.as_ref();
    let place = fixed.map_or(at_floor.place, |price| price.place);
    let message = if case.takeoff.head.discounts.is_empty() {
        message
    } else {
        message + ", and what you take off is in it"
    };
    let help = "raise the price, or keep it if you want this job; margin is (price before tax - cost) ÷ price before tax";
    vec![Problem::new("below-floor", message).at(place).help(help)]
}

/// One place, and more where rounding would show the floor itself.
fn shown(margin: Decimal, floor: Decimal) -> Decimal {
    (1..=9)
        .map(|places| to_places(margin, places))
        .find(|rounded| *rounded < floor)
        .unwrap_or(margin)
}

/// What the customer takes, in the owner's words.
fn chosen(case: Case<'_>, choice: &Choice) -> String {
    let taken = choice.taken(&case.takeoff.options).into_iter();
    let titles: Vec<String> = taken
        .map(|option| format!("`{}`", option.name.value))
        .collect();
    titles.join(" and ")
}
