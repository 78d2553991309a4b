//! What the plant charges beside the concrete: delivery, short loads and standing by their purposes; zone,
//! Saturday, winter, fuel by the unit of the item.

use super::ConcreteOrder;
use crate::input::book::{ItemKey, Role, Supply};
use crate::input::job::Takeoff;
use crate::reading::At;
use crate::trade::order::List;
use crate::trade::term::{Term, number, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// What an order is charged by: its loads, its yards, or once a pour.
struct Counted<'a> {
    order: &'a ConcreteOrder,
    loads: &'a Quantity,
    /// The order that carries what is charged once a pour.
    first: bool,
}

/// What the plant charges beside the concrete.
pub(super) fn fees(
    orders: &[ConcreteOrder],
    takeoff: &Takeoff,
    supply: &Supply,
    list: &mut List<'_>,
) {
    let by_truck: Vec<&ConcreteOrder> = (orders.iter())
        .filter(|order| order.bags.is_none())
        .collect();
    for (i, order) in by_truck.iter().copied().enumerate() {
        let truck = Quantity::said("truck", &supply.truck);
        let whole = |yards: &Quantity| (of(yards) / &truck).whole();
        let (rule, loads) = match &order.held {
            Some(held) if order.has_own_truck => (
                "firm yards and those on call, each ÷ a truckful, up to a whole one",
                whole(&held.firm) + whole(&held.on_call),
            ),
            Some(_) | None => (
                "ordered yards ÷ a truckful, up to a whole one",
                whole(&order.order),
            ),
        };
        let name = format!("{} loads", order.order.name());
        let loads = list
            .sets
            .settle(Quantity::by(rule, name, Unit::Load, loads));
        for (role, quantity) in [
            (Role::Delivery, &loads),
            (Role::ShortLoad, &order.short),
            (Role::Standing, &order.standing),
        ] {
            if !quantity.value().is_zero()
                && let Some(item) = list.role(role)
            {
                let (placement, shares) = (Some(order.placement), order.shares.clone());
                list.take(&item, quantity.clone(), placement, shares);
            }
        }
        let counted = Counted {
            order,
            loads: &loads,
            first: by_truck[..i]
                .iter()
                .all(|before| before.placement != order.placement),
        };
        charges(&counted, takeoff, supply, list);
    }
}

fn charges(counted: &Counted<'_>, takeoff: &Takeoff, supply: &Supply, list: &mut List<'_>) {
    let order = counted.order;
    let fees = supply.charges.fees.iter();
    for item in fees {
        charge(counted, item, &item.value, "with every order", list);
    }
    let zone = takeoff.head.zone.as_ref();
    if let Some(zone) = zone
        && let Some(Some(item)) = supply.charges.zones.get(&zone.value)
    {
        let (what, rule) = (
            format!("zone {}", zone.value),
            "as far as the zone of the takeoff",
        );
        charge(counted, item, &what, rule, list);
    }
    // A day that was only counted from the day of the quote is not a Saturday yet.
    let day = takeoff.placements.get(order.placement);
    let day = day.and_then(|pour| pour.day.as_ref());
    if let Some(item) = &supply.charges.saturday
        && day.is_some_and(|day| day.value.is_saturday())
    {
        let rule = "the pour is on a Saturday";
        charge(counted, item, "Saturday", rule, list);
    }
    if let Some(winter) = &supply.charges.winter
        && let Some(day) = list.by.pours.get(order.placement)
        && winter.during.value.holds(*day)
    {
        let rule = "the pour is in the plant's winter";
        charge(counted, &winter.item, "winter", rule, list);
    }
    if let (Some(item), Some(held)) = (&supply.charges.on_call, &order.held) {
        let rule = "yards that wait for a call";
        by_the_yard(order, item, "call", rule, &held.on_call, list);
    }
    if let (Some(returned), Some(back)) = (&supply.charges.returned, &order.back) {
        let rule = "what comes back when nothing is lost, as the plant charges it";
        by_the_yard(order, &returned.item, "returned", rule, back, list);
    }
}

/// By these yards, if the item is sold by them, else once.
fn by_the_yard(
    order: &ConcreteOrder,
    item: &At<ItemKey>,
    what: &str,
    rule: &'static str,
    yards: &Quantity,
    list: &mut List<'_>,
) {
    let much = match unit(item, list) {
        Unit::CubicYard => of(yards),
        _ => number(1),
    };
    buy(order, item, what, rule, much, list);
}

fn charge(
    counted: &Counted<'_>,
    item: &At<ItemKey>,
    what: &str,
    rule: &'static str,
    list: &mut List<'_>,
) {
    let much = match unit(item, list) {
        Unit::Load => of(counted.loads),
        Unit::CubicYard => of(&counted.order.order),
        _ if counted.first => number(1),
        _ => return,
    };
    buy(counted.order, item, what, rule, much, list);
}

fn unit(item: &At<ItemKey>, list: &List<'_>) -> Unit {
    list.unit(item).unwrap_or(Unit::Trip)
}

fn buy(
    order: &ConcreteOrder,
    item: &At<ItemKey>,
    what: &str,
    rule: &'static str,
    much: Term,
    list: &mut List<'_>,
) {
    let name = format!("{} {what}", order.order.name());
    let much = Quantity::by(rule, name.clone(), unit(item, list), much);
    let (placement, shares) = (Some(order.placement), order.shares.clone());
    list.buy_for(item, name, rule, much, placement, shares);
}
