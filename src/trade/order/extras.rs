//! What the takeoff adds by hand: items of the book, lumps, a permit that we take out.

use super::{List, Need, NeedItem, Section, whole};
use crate::input::book::{Role, Rules};
use crate::input::job::{Extra, ExtraWhat, Permit, Takeoff};
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};
use rust_decimal::Decimal;

/// Whether hours of the crew are added; they are charged with all its hours.
pub(in crate::trade) fn is_labor(extra: &Extra, rules: &Rules) -> bool {
    let labor = rules.roles.get(&Role::Labor);
    labor.and_then(|role| role.value.as_ref()) == Some(&extra.name.value)
}

pub(super) fn list(extras: &[&Extra], list: &mut List<'_>) {
    for extra in extras
        .iter()
        .filter(|extra| !is_labor(extra, list.by.rules))
    {
        match &extra.what {
            ExtraWhat::Item(amount) => {
                let Some(unit) = list.unit(&extra.name) else {
                    continue;
                };
                let given = Quantity::given(
                    format!("{}, as written", extra.name.value),
                    Amount::new(amount.value.value, unit),
                    amount.place,
                );
                let (name, parts) = (extra.name.value.clone(), [(Section::Extras, given)]);
                list.buy(&extra.name, name, "as the takeoff says", &parts);
            }
            ExtraWhat::Lump { cost, class, group } => {
                let once = Quantity::given(
                    extra.name.value.clone(),
                    Amount::new(Decimal::ONE, Unit::Lump),
                    cost.place,
                );
                list.needs.push(Need {
                    item: NeedItem::Lump {
                        cost: cost.clone(),
                        class: *class,
                        group: group.clone(),
                    },
                    quantity: once,
                    placement: None,
                    shares: vec![(Section::Extras, Decimal::ONE)],
                });
            }
        }
    }
}

/// A permit, if it is ours to take out.
pub(super) fn permit(takeoff: &Takeoff, list: &mut List<'_>) {
    let Permit::Item(item) = &takeoff.head.permit else {
        return;
    };
    if let Some(unit) = list.unit(item) {
        let one = Quantity::by("once a job", "permit", unit, number(1));
        list.buy(item, "permit", "once a job", &whole(one));
    }
}
