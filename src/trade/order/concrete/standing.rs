//! How long trucks stand past their free minutes, which the plant gives by the yard or by the load.
//!
//! Unloading takes the longer of what the way of placing takes and what this crew takes to place.

use rust_decimal::Decimal;

use super::ConcreteOrder;
use super::loads::load;
use crate::input::book::Supply;
use crate::trade::order::List;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, largest, number, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Why unloading takes as long as it does, where it waits for the crew.
pub const BY_CREW: &str = "the crew: it places more slowly than this way of placing unloads";

/// No minutes, by this rule.
pub(super) fn not_standing(rule: &'static str, tally: &Tally<'_>) -> Quantity {
    Quantity::by(rule, tally.name("standing"), Unit::Minute, number(0))
}

/// Minutes each truck stands past its free ones, whole minutes a truck.
pub(super) fn standing(order: &ConcreteOrder, supply: &Supply, tally: &Tally<'_>) -> Quantity {
    let Some(per_yard) = &order.unloading else {
        return not_standing("", tally);
    };
    let free = Quantity::each("free time", Unit::Minute, &supply.free_time);
    let by_load = supply.free_time.value.per.unit == Unit::Load;
    let minutes = |yards: &Decimal| {
        let load = load(*yards, &order.order, supply);
        if by_load {
            of(&load) * per_yard - &free
        } else {
            of(&load) * (of(per_yard) - &free)
        }
    };
    let late: Vec<Term> = order
        .loads
        .iter()
        .map(minutes)
        .filter(|past| Decimal::ZERO < past.value())
        .map(Term::whole)
        .collect();
    let Some(minutes) = late.into_iter().reduce(|a, b| a + b) else {
        return not_standing("unloading stays within the free minutes", tally);
    };
    let rule = if by_load {
        "each truck: yards × minutes to unload − free minutes, up to a whole minute"
    } else {
        "each truck: yards × (minutes to unload − free minutes), up to a whole minute"
    };
    tally.between(rule, "standing", Unit::Minute, minutes)
}

/// Minutes it takes to unload a yard.
pub(super) fn unloading(
    order: &ConcreteOrder,
    tally: &Tally<'_>,
    list: &mut List<'_>,
) -> Option<Quantity> {
    let unload = format!("unload by {}", order.by.name());
    let rate = list.rate(&unload)?;
    let by_way = Quantity::each(unload.clone(), Unit::Minute, &rate);
    let by_way = if rate.value.much.unit == Unit::Hour {
        let hours = Quantity::each(unload.clone(), Unit::Hour, &rate);
        Quantity::by("hours × 60", unload, Unit::Minute, of(&hours) * number(60))
    } else {
        by_way
    };
    let Some(placing) = &order.placing else {
        return Some(by_way);
    };
    let people = Quantity::said("people", &list.by.crew.people);
    let by_crew = tally.between(
        "hours of placing × 60 ÷ people ÷ ordered yards",
        "minutes to place a yard",
        Unit::Minute,
        of(placing) * number(60) / &people / &order.order,
    );
    let rule = if by_way.value() < by_crew.value() {
        BY_CREW
    } else {
        "the way of placing: it unloads no faster than the crew places"
    };
    let longer = largest(vec![of(&by_way), of(&by_crew)]);
    Some(tally.between(rule, "minutes to unload a yard", Unit::Minute, longer))
}
