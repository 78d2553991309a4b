//! Do trucks stand past their free minutes?

use super::Case;
use crate::input::book::Role;
use crate::reading::Problem;
use crate::trade::order::BY_CREW;
use crate::values::rounding;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let orders = case.offer.quoted().needs.orders.iter();
    let answers = orders.filter_map(|order| {
        let minutes = &order.standing;
        let item = case.book.rules.roles.get(&Role::Standing)?;
        let prices = case.days.get(order.placement)?;
        let each = prices.get(item.value.as_ref()?)?;
        let fee = rounding::to_cents(minutes.value() * each.price.dollars());
        if fee.is_zero() {
            return None;
        }
        let trucks = match order.loads.len() {
            1 => "its truck stands".to_owned(),
            several => format!("its {several} trucks stand"),
        };
        let waits = minutes.parts().iter().any(|part| part.rule() == BY_CREW);
        let (why, help) = if waits {
            (" while this crew places it", "more people, or another way to place it, may cost less; it is in the price as it is")
        } else {
            ("", "another pair of hands at the truck, or another way to place it, may cost less; it is in the price as it is")
        };
        let message = format!(
            "`{}`: {trucks} `{}` past the free minutes{why}, which costs {fee}",
            order.order.name(),
            minutes.amount()
        );
        let by = &case.takeoff.access_of(order.placement).by;
        Some(
            Problem::new("standing-time", message)
                .at(by.place)
                .help(help),
        )
    });
    answers.collect()
}
