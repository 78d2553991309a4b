//! How long trucks stand past their free minutes, which the plant gives by the yard or by the load.

use rust_decimal::Decimal;

use super::loads::load;
use crate::input::book::Supply;
use crate::input::job::Method;
use crate::trade::order::List;
use crate::trade::term::{Term, number, of};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Minutes each truck stands past its free ones, whole minutes a truck.
pub(super) fn standing(
    name: &str,
    order: &Quantity,
    loads: &[Decimal],
    by: Method,
    supply: &Supply,
    list: &mut List<'_>,
) -> Quantity {
    let method = by.name();
    let name = format!("{name} standing");
    let Some(rate) = list.rate(&format!("unload by {method}")) else {
        return Quantity::by("", name, Unit::Minute, number(0));
    };
    let per_yard = Quantity::given(
        format!("unload by {method}"),
        Amount::new(rate.value.much.value / rate.value.per.value, Unit::Minute),
        rate.place,
    );
    let free = Quantity::given(
        "free time",
        Amount::new(
            supply.free_time.value.much.value / supply.free_time.value.per.value,
            Unit::Minute,
        ),
        supply.free_time.place,
    );
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
        return Quantity::by(
            "unloading stays within the free minutes",
            name,
            Unit::Minute,
            number(0),
        );
    };
    let rule = if by_load {
        "each truck: yards × minutes to unload − free minutes, up to a whole minute"
    } else {
        "each truck: yards × (minutes to unload − free minutes), up to a whole minute"
    };
    list.sets
        .settle(Quantity::by(rule, name, Unit::Minute, minutes))
}
