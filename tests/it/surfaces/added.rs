//! What the takeoff adds and what goes on days after the pour: a visit of its own, and the customer reads the day.

use rust_decimal_macros::dec;

use super::{BOOK, job};
use crate::support::{BUSINESS, Desk, desk, value, with};

const ITEMS: &str = "items:
  clear sealer: {unit: sq ft, class: material, work: 1.5 hours per 100 sq ft, after: 28 days, prices: {2026-01-01: 0.40}}
  joint filler: {unit: ft, class: material, work: 1 hour per 40 ft, after: 60 days, prices: {2026-01-01: 1.10}}
";

fn added(says: &str, extra: &str, filled: &str) -> Desk {
    let items = with(ITEMS, &[("60 days", filled)]);
    let book = with(BOOK, &[("items:\n", &items)]);
    desk(&format!("{}{extra}", job(says)), BUSINESS, &book)
}

fn visits(desk: &Desk) -> String {
    let said = desk.view().when_we_come;
    let mut said = said
        .iter()
        .map(|line| format!("{}{}", line.strong, line.after));
    said.find(|line| line.contains("visit")).unwrap_or_default()
}

const CURED: &str = ", curing: none";
const SEALER: &str = "extra: [clear sealer: 432 sq ft]\n";
const BOTH: &str = "extra: [clear sealer: 432 sq ft, joint filler: 80 ft]\n";

#[test]
fn a_sealer_that_is_added_goes_on_when_its_item_says() {
    let desk = added(CURED, SEALER, "60 days");
    let offer = desk.offer();
    // 432 × 1.5 ÷ 100, and none of it on the days before.
    assert_eq!(value(&offer, "hours to seal after 28 days"), dec!(6.48));
    assert_eq!(value(&offer, "trips to seal after 28 days"), dec!(1));
    assert_eq!(
        visits(&desk),
        "one visit to seal it, 28 days after the pour."
    );
}

#[test]
fn what_waits_longer_has_its_own_visit_and_what_waits_as_long_shares_one() {
    let apart = added(CURED, BOTH, "60 days");
    assert_eq!(
        value(&apart.offer(), "hours to seal after 60 days"),
        dec!(2)
    );
    assert_eq!(value(&apart.offer(), "return trips"), dec!(2));
    let read = "one visit to seal it, 28 days after the pour and one visit for the joint filler, 60 days after the pour.";
    assert_eq!(visits(&apart), read);

    let together = added(CURED, BOTH, "28 days");
    assert_eq!(
        value(&together.offer(), "hours to seal after 28 days"),
        dec!(8.48)
    );
    assert_eq!(value(&together.offer(), "return trips"), dec!(1));
    let read = "one visit to seal it and for the joint filler, 28 days after the pour.";
    assert_eq!(visits(&together), read);
    // The sealer of a slab shares it too.
    let sealed = added(
        ", curing: none, seal: wet look",
        "extra: [joint filler: 80 ft]\n",
        "28 days",
    );
    assert_eq!(
        value(&sealed.offer(), "hours to seal after 28 days"),
        dec!(8.48)
    );
    assert_eq!(visits(&sealed), read);
}
