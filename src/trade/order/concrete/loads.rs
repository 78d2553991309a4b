//! Trucks: how they are filled, which are short, how long they stand.

use rust_decimal::Decimal;

use crate::input::book::{Called, Filling, ShortCharge, ShortCount, ShortLoad, Supply};
use crate::trade::tally::Tally;
use crate::trade::term::{number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit, rounding};

/// What is on each truck: what is firm, and what waits for a call on trucks of its own where it does.
pub(super) fn loads(order: Decimal, waits: Option<Decimal>, supply: &Supply) -> Vec<Decimal> {
    let alone = waits.filter(|waits| comes_alone(order, *waits, supply));
    let called = alone.unwrap_or_default().min(order);
    let mut loads = together(order - called, supply);
    loads.extend(together(called, supply));
    loads
}

/// Whether what waits for a call comes by itself: as the plant sends it, or because the last truck carries less.
pub(super) fn comes_alone(order: Decimal, waits: Decimal, supply: &Supply) -> bool {
    let last = || together(order, supply).last().copied();
    supply.called == Called::OwnTruck || last().is_some_and(|last| last < waits)
}

/// Full trucks in turn, and the rest on the last; or evened, no two more than a step of the plant apart.
fn together(order: Decimal, supply: &Supply) -> Vec<Decimal> {
    let (full, step) = (supply.truck.value.value, supply.sold_in.value.value);
    if supply.filling == Filling::InTurn || step.is_zero() {
        return filled(order, full);
    }
    let trucks = rounding::round_up_to(order / full, Decimal::ONE);
    let each = rounding::whole_below(order.checked_div(trucks).unwrap_or_default() / step) * step;
    let mut rest = order;
    let mut loads = Vec::new();
    while Decimal::ZERO < rest {
        let others = (trucks - Decimal::from(loads.len()) - Decimal::ONE).max(Decimal::ZERO);
        let even = rest - each * others;
        let load = even.min(each + step).min(full);
        loads.push(load);
        rest -= load;
    }
    // A truck that is no whole number of steps may have no room for one more.
    if trucks < Decimal::from(loads.len()) {
        return filled(order, full);
    }
    loads
}

fn filled(order: Decimal, truck: Decimal) -> Vec<Decimal> {
    let mut rest = order;
    let mut loads = Vec::new();
    while Decimal::ZERO < rest {
        let load = rest.min(truck);
        loads.push(load);
        rest -= load;
    }
    loads
}

/// One load, by its yards.
pub(super) fn load(yards: Decimal, order: &Quantity, supply: &Supply) -> Quantity {
    let how = match supply.filling {
        Filling::InTurn => "trucks filled in turn",
        Filling::Evened => "trucks filled evenly",
    };
    let yards = Amount::new(yards, Unit::CubicYard);
    Quantity::new("load", yards, Working::plan(how, vec![order.clone()], ""))
}

/// What makes loads short, by the supplier's way of counting.
pub(super) fn short(
    order: &Quantity,
    loads: &[Decimal],
    supply: &Supply,
    tally: &Tally<'_>,
) -> Quantity {
    let name = tally.name("short");
    let Some(rule) = &supply.short_load else {
        return Quantity::by("", name, Unit::CubicYard, number(0));
    };
    let under = Quantity::said("short under", &rule.under);
    let short = below(rule, order.value(), loads);
    if rule.charge == ShortCharge::Flat {
        return Quantity::by(
            "one charge for each load below the limit",
            name,
            Unit::Load,
            number(Decimal::from(short.len())),
        );
    }
    let missing = short
        .into_iter()
        .map(|yards| of(&under) - of(&load(yards, order, supply)))
        .reduce(|a, b| a + b);
    Quantity::by(
        "yards missing on each load below the limit",
        name,
        Unit::CubicYard,
        missing.unwrap_or_else(|| number(0)),
    )
}

/// Loads of this order that are short.
pub(super) fn short_loads(order: Decimal, waits: Option<Decimal>, supply: &Supply) -> Vec<Decimal> {
    let rule = supply.short_load.as_ref();
    rule.map_or_else(Vec::new, |rule| {
        below(rule, order, &loads(order, waits, supply))
    })
}

/// The loads that the rule looks at and finds short.
fn below(rule: &ShortLoad, order: Decimal, loads: &[Decimal]) -> Vec<Decimal> {
    let mut looked_at: Vec<Decimal> = match rule.counted {
        ShortCount::ByTruck => loads.to_vec(),
        ShortCount::ByOrder => vec![order],
        ShortCount::LastTruck => loads.last().copied().into_iter().collect(),
    };
    looked_at.retain(|load| *load < rule.under.value.value && !load.is_zero());
    looked_at
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn trucks_are_filled_in_turn() {
        assert_eq!(filled(dec!(7.5), dec!(4)), [dec!(4), dec!(3.5)]);
        assert_eq!(filled(dec!(18), dec!(9)), [dec!(9), dec!(9)]);
        assert_eq!(filled(dec!(0), dec!(9)), Vec::<Decimal>::new());
    }
}
