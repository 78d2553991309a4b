//! Changes add up; a fixed price is one cause.

use rust_decimal_macros::dec;

use super::*;
use crate::reading::{FileId, Place};

const HERE: Place = Place {
    file: FileId(0),
    start: 0,
    end: 0,
};

fn line(cause: Cause, side: Tier, cents: i64) -> LineItem {
    LineItem {
        title: format!("{cause:?}"),
        cause,
        side,
        class: (side == Tier::Direct).then_some(Class::Material),
        amount: Quantity::given("x", Money::cents(cents).into(), HERE),
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
        least: None,
        group: None,
    }
}

fn need(name: &str, cents: i64) -> LineItem {
    line(Cause::Need(name.into()), Tier::Direct, cents)
}

#[test]
fn a_cause_missing_on_one_side_changes_by_all_of_it() {
    let old = [need("stone", 500), need("stone", 100), need("forms", 70)];
    let new = [need("stone", 650), need("short", 30), need("forms", 70)];
    let changes = compare(old.iter().collect(), new.iter().collect());
    let told: Vec<(&Cause, i64)> = changes
        .iter()
        .map(|change| (&change.cause, change.by().as_cents()))
        .collect();
    let stone = Cause::Need("stone".into());
    let short = Cause::Need("short".into());
    assert_eq!(told, [(&stone, 50), (&short, 30)]);
}

#[test]
fn a_fixed_price_is_one_cause_with_what_it_took_the_place_of() {
    let old = [
        need("stone", 1000),
        line(Cause::Profit, Tier::Price, 250),
        line(Cause::Rounding, Tier::Price, 5),
    ];
    let new = [need("stone", 1000), line(Cause::Fixed, Tier::Price, 100)];
    let changes = compare(old.iter().collect(), new.iter().collect());
    assert_eq!(changes.len(), 1);
    assert_eq!(changes[0].cause, Cause::Fixed);
    assert_eq!(changes[0].by(), Money::cents(-155));
    assert_eq!(dec!(-1.55), changes[0].by().dollars());
}
