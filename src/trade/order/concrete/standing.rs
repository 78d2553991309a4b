//! How long trucks stand past their free minutes, which the plant gives by the yard or by the load.

use rust_decimal::Decimal;

use super::loads::load;
use crate::input::book::Supply;
use crate::input::job::Method;
use crate::trade::order::List;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, number, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Minutes each truck stands past its free ones, whole minutes a truck.
pub(super) fn standing(
    order: &Quantity,
    loads: &[Decimal],
    by: Method,
    supply: &Supply,
    tally: &Tally<'_>,
    list: &mut List<'_>,
) -> Quantity {
    let none = |rule| Quantity::by(rule, tally.name("standing"), Unit::Minute, number(0));
    let unload = format!("unload by {}", by.name());
    let Some(rate) = list.rate(&unload) else {
        return none("");
    };
    let per_yard = Quantity::each(unload, Unit::Minute, &rate);
    let free = Quantity::each("free time", Unit::Minute, &supply.free_time);
    let by_load = supply.free_time.value.per.unit == Unit::Load;
    let minutes = |yards: &Decimal| {
        let load = load(*yards, order, supply);
        if by_load {
            of(&load) * &per_yard - &free
        } else {
            of(&load) * (of(&per_yard) - &free)
        }
    };
    let late: Vec<Term> = loads
        .iter()
        .map(minutes)
        .filter(|past| Decimal::ZERO < past.value())
        .map(Term::whole)
        .collect();
    let Some(minutes) = late.into_iter().reduce(|a, b| a + b) else {
        return none("unloading stays within the free minutes");
    };
    let rule = if by_load {
        "each truck: yards × minutes to unload − free minutes, up to a whole minute"
    } else {
        "each truck: yards × (minutes to unload − free minutes), up to a whole minute"
    };
    tally.between(rule, "standing", Unit::Minute, minutes)
}
