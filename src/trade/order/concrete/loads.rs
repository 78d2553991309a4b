//! Trucks: how they are filled, which are short, how long they stand.

use rust_decimal::Decimal;

use crate::input::book::{ShortCount, Supply};
use crate::input::job::Takeoff;
use crate::trade::order::List;
use crate::trade::term::{Term, number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// Full trucks in turn, and the rest on the last.
pub(super) fn loads(order: Decimal, truck: Decimal) -> Vec<Decimal> {
    let mut rest = order;
    let mut loads = Vec::new();
    while Decimal::ZERO < rest {
        let load = rest.min(truck);
        loads.push(load);
        rest -= load;
    }
    loads
}

/// What makes loads short, by the supplier's way of counting.
pub(super) fn short(name: &str, order: &Quantity, loads: &[Decimal], supply: &Supply) -> Quantity {
    let name = format!("{name} short");
    let Some(rule) = &supply.short_load else {
        return Quantity::by("", name, Unit::CubicYard, number(0));
    };
    let under = Quantity::given("short under", rule.under.value, rule.under.place);
    let looked_at: Vec<Decimal> = match rule.counted {
        ShortCount::ByTruck => loads.to_vec(),
        ShortCount::ByOrder => vec![order.value()],
        ShortCount::LastTruck => loads.last().copied().into_iter().collect(),
    };
    let short: Vec<Decimal> = looked_at
        .into_iter()
        .filter(|load| *load < under.value() && !load.is_zero())
        .collect();
    if rule.flat {
        return Quantity::by(
            "one charge for each load below the limit",
            name,
            Unit::Load,
            number(Decimal::from(short.len())),
        );
    }
    let load = |yards: Decimal| {
        of(&Quantity::new(
            "load",
            Amount::new(yards, Unit::CubicYard),
            Working::Plan {
                how: "trucks filled in turn".to_owned(),
                of: vec![order.clone()],
                rule: "",
            },
        ))
    };
    let missing = short
        .into_iter()
        .map(|yards| of(&under) - load(yards))
        .reduce(|a, b| a + b);
    Quantity::by(
        "yards missing on each load below the limit",
        name,
        Unit::CubicYard,
        missing.unwrap_or_else(|| number(0)),
    )
}

/// Minutes each truck stands past its free ones, whole minutes a truck.
pub(super) fn standing(
    name: &str,
    order: &Quantity,
    loads: &[Decimal],
    takeoff: &Takeoff,
    supply: &Supply,
    list: &mut List<'_>,
) -> Quantity {
    let method = takeoff.access.by.value.name();
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
    if per_yard.value() <= free.value() {
        return Quantity::by(
            "unloading stays within the free minutes",
            name,
            Unit::Minute,
            number(0),
        );
    }
    let truck = |yards: &Decimal| {
        let load = Quantity::new(
            "load",
            Amount::new(*yards, Unit::CubicYard),
            Working::Plan {
                how: "trucks filled in turn".to_owned(),
                of: vec![order.clone()],
                rule: "",
            },
        );
        (of(&load) * (of(&per_yard) - &free)).whole()
    };
    let minutes: Term = loads
        .iter()
        .map(truck)
        .reduce(|a, b| a + b)
        .unwrap_or_else(|| number(0));
    list.sets.settle(Quantity::by(
        "each truck: yards × (minutes to unload − free minutes), up to a whole minute",
        name,
        Unit::Minute,
        minutes,
    ))
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn trucks_are_filled_in_turn() {
        assert_eq!(loads(dec!(7.5), dec!(4)), [dec!(4), dec!(3.5)]);
        assert_eq!(loads(dec!(18), dec!(9)), [dec!(9), dec!(9)]);
        assert_eq!(loads(dec!(0), dec!(9)), Vec::<Decimal>::new());
    }
}
