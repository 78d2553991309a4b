//! What the takeoff adds by hand: items of the book, and lumps.

use super::{List, Need, NeedItem, Section};
use crate::input::job::{Extra, ExtraWhat};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};
use rust_decimal::Decimal;

pub(super) fn list(extras: &[&Extra], list: &mut List<'_>) {
    for extra in extras {
        match &extra.what {
            ExtraWhat::Item(amount) => {
                let Some(selling) = list.ways.rules.selling.get(&extra.name.value) else {
                    continue;
                };
                let given = Quantity::given(
                    format!("{}, as written", extra.name.value),
                    Amount::new(amount.value.value, selling.unit),
                    amount.place,
                );
                list.buy(
                    &extra.name,
                    &extra.name.value,
                    "as the takeoff says",
                    &[(Section::Extras, given)],
                    None,
                );
            }
            ExtraWhat::Lump { cost, class } => {
                let once = Quantity::given(
                    extra.name.value.clone(),
                    Amount::new(Decimal::ONE, Unit::Lump),
                    cost.place,
                );
                list.needs.push(Need {
                    item: NeedItem::Lump {
                        cost: cost.clone(),
                        class: *class,
                    },
                    quantity: once,
                    placement: None,
                    shares: vec![(Section::Extras, Decimal::ONE)],
                });
            }
        }
    }
}
