//! Trucks, charges, pumps and buggies.

use flatwork::inside::values::rounding::to_places;
use rust_decimal_macros::dec;

use super::{bought, item, need, offer};
use crate::support::{BOOK, BUSINESS, FAR_BANK, desk, value, with};

#[test]
fn a_zone_is_charged_by_the_unit_of_its_item() {
    let by_load = offer("zone: north shore", FAR_BANK);
    assert_eq!(value(&by_load, "exterior order"), dec!(10));
    assert_eq!(
        bought(&by_load, "exterior order zone north shore"),
        Some(dec!(1))
    );
    let by_yard = offer("zone: hill road", FAR_BANK);
    assert_eq!(
        bought(&by_yard, "exterior order zone hill road"),
        Some(dec!(10))
    );
    assert_eq!(
        bought(&offer("", FAR_BANK), "exterior order zone north shore"),
        None
    );
}

#[test]
fn a_saturday_costs_only_when_the_takeoff_chose_it() {
    let charge = |day: &str| bought(&offer(day, FAR_BANK), "exterior order Saturday");
    assert_eq!(charge("pour: 2026-06-13"), Some(dec!(1)));
    assert_eq!(charge("pour: 2026-06-12"), None);
    assert_eq!(charge("pour: 2026-06-14"), None);
    // A day counted from the day of the quote happens to be a Saturday.
    assert_eq!(charge("quoted: 2026-06-13"), None);
}

#[test]
fn a_saturday_is_charged_once_however_many_mixes() {
    let book = with(
        FAR_BANK,
        &[(
            "mixes:\n",
            "mixes:\n  inside: {item: ready-mix 4000 air, strength: 3000 psi}\n",
        )],
    );
    let two = offer(
        "  slab: {size: 20 ft x 10 ft, mix: inside}\npour: 2026-06-13",
        &book,
    );
    let names = ["exterior order Saturday", "inside order Saturday"];
    let charged = names.iter().filter_map(|name| bought(&two, name));
    assert_eq!(charged.sum::<rust_decimal::Decimal>(), dec!(1));
    // What is counted by the load comes with each.
    assert_eq!(bought(&two, "exterior order fuel"), Some(dec!(1)));
    assert_eq!(bought(&two, "inside order fuel"), Some(dec!(1)));
}

#[test]
fn winter_is_that_of_the_pour_said_or_counted() {
    let charge = |day: &str| bought(&offer(day, FAR_BANK), "exterior order winter");
    assert_eq!(charge("pour: 2026-11-14"), None);
    assert_eq!(charge("pour: 2026-11-15"), Some(dec!(10)));
    assert_eq!(charge("quoted: 2026-11-16"), Some(dec!(10)));
    assert_eq!(charge("pour: 2026-04-01"), None);
}

#[test]
fn free_minutes_by_the_load_are_given_to_each_truck() {
    // 10 yards by the chute, where the crew takes 10 minutes a yard: 10 × 10 − 90.
    assert_eq!(
        bought(&offer("", FAR_BANK), "exterior order standing"),
        Some(dec!(10))
    );
    // By wheelbarrow it takes 26: 10 × 26 − 90.
    assert_eq!(
        bought(
            &offer("access: wheelbarrow", FAR_BANK),
            "exterior order standing"
        ),
        Some(dec!(170))
    );
    // With five yards more on two trucks of 7.5, neither is late by the chute.
    let set = "set: {exterior order: {to: 15, because: a pad more}}";
    assert_eq!(
        bought(&offer(set, FAR_BANK), "exterior order standing"),
        None
    );
    // In turn, the full truck is late and the other is not.
    let in_turn = with(FAR_BANK, &[("loads: evened", "loads: in turn")]);
    assert_eq!(
        bought(&offer(set, &in_turn), "exterior order standing"),
        Some(dec!(10))
    );
}

#[test]
fn held_yards_on_their_own_truck_are_counted_by_the_truck() {
    let own = (
        "truck: 10 cu yd",
        "truck: 10 cu yd\n  called yards: on their own truck",
    );
    let by_truck = (
        "counted: by order, charge: flat",
        "counted: by truck, charge: flat",
    );
    let figures = |held: &str, changes: &[(&str, &str)]| {
        let offer = offer(&format!("hold back: {held}"), &with(FAR_BANK, changes));
        let loads = offer.quoted().needs.orders[0].loads.clone();
        let of = |what: &str| bought(&offer, &format!("exterior order {what}"));
        (loads, of("loads"), of("short"))
    };
    // The one truck of 10 waits for 2 1/2, or they come by themselves, below 5 and short.
    let one = (vec![dec!(10)], Some(dec!(1)), None);
    assert_eq!(figures("2 1/2 cu yd", &[by_truck]), one);
    let two = (vec![dec!(7.5), dec!(2.5)], Some(dec!(2)), Some(dec!(1)));
    assert_eq!(figures("2 1/2 cu yd", &[by_truck, own]), two);
    // All of it is called for: nothing is firm, and one truck comes.
    assert_eq!(figures("25 cu yd", &[by_truck, own]), one);
    assert_eq!(figures("25 cu yd", &[by_truck]), one);
    // A truck of 6: 5 + 5, and no last truck carries 5 1/2.
    let six = ("truck: 10 cu yd", "truck: 6 cu yd");
    let split = (vec![dec!(4.5), dec!(5.5)], Some(dec!(2)), Some(dec!(1)));
    assert_eq!(figures("5 1/2 cu yd", &[by_truck, six]), split);
}

#[test]
fn a_load_on_call_changes_the_fee_alone() {
    let plain = offer("", FAR_BANK);
    let held = offer("hold back: 2 1/2 cu yd", FAR_BANK);
    assert_eq!(value(&held, "exterior order on call"), dec!(2.5));
    assert_eq!(value(&held, "exterior order firm"), dec!(7.5));
    assert_eq!(bought(&held, "exterior order call"), Some(dec!(1)));
    assert_eq!(
        bought(&held, "exterior order"),
        bought(&plain, "exterior order")
    );
    let direct =
        |offer: &flatwork::inside::costing::Offer| offer.quoted().totals().direct.dollars();
    assert_eq!(direct(&held) - direct(&plain), dec!(40));
    // No more waits than is ordered.
    let all = offer("hold back: 25 cu yd", FAR_BANK);
    assert_eq!(value(&all, "exterior order on call"), dec!(10));
    // And the owner has the last word.
    let set = offer(
        "hold back: 2 cu yd\nset: {exterior order on call: {to: 1, because: a small pad}}",
        FAR_BANK,
    );
    assert_eq!(value(&set, "exterior order firm"), dec!(9));
}

#[test]
fn what_comes_back_is_counted_beyond_the_free_yards() {
    let item = "  fuel:\n    is: Fuel";
    let returned =
        "  returned concrete:\n    unit: cu yd\n    class: fee\n    prices: {2026-02-15: 45.00}\n";
    let with_over = |over: &str| {
        let rule = format!("  returned: {{item: returned concrete, over: {over}}}\n  fees: [fuel]");
        let item_too = format!("{returned}{item}");
        with(FAR_BANK, &[(item, &item_too), ("  fees: [fuel]", &rule)])
    };
    // 10 ordered, 9 drawn.
    assert_eq!(
        bought(
            &offer("", &with_over("1/4 cu yd")),
            "exterior order returned"
        ),
        Some(dec!(0.75))
    );
    assert_eq!(
        bought(&offer("", &with_over("1 cu yd")), "exterior order returned"),
        None
    );
    // Half a yard of prime stays in the line: 10.5 ordered.
    assert_eq!(
        bought(
            &offer("access: pump", &with_over("1/4 cu yd")),
            "exterior order returned"
        ),
        Some(dec!(0.75))
    );
}

#[test]
fn a_pump_is_paid_as_it_is_hired() {
    let pumped = offer("access: {by: pump, distance: 120 ft}", FAR_BANK);
    // With half a yard of prime 10.13, so 10.5. It could pump that in 35 minutes, and is there as long as
    // three people place, at 0.55 hours a yard and 1% more for the way; and an hour to set up.
    assert_eq!(value(&pumped, "exterior order"), dec!(10.5));
    let time = value(&pumped, "pump time, pour 1");
    assert_eq!(to_places(time, 5), dec!(2.94425));
    assert_eq!(bought(&pumped, "pump hours, pour 1"), Some(dec!(3)));
    assert_eq!(bought(&pumped, "pump hose, pour 1"), Some(dec!(20)));
    for once in ["base charge", "travel", "prime", "washout"] {
        assert_eq!(
            bought(&pumped, &format!("pump {once}, pour 1")),
            Some(dec!(1)),
            "{once}"
        );
    }
    // Four hours of setting up lift it above the least, in quarters of an hour.
    let slow = with(FAR_BANK, &[("set up: 1 hour", "set up: 4 hours")]);
    let slow = offer("access: {by: pump, distance: 100 ft}", &slow);
    assert_eq!(bought(&slow, "pump hours, pour 1"), Some(dec!(6)));
    // A small pump pumps more slowly than the crew places.
    let small = with(FAR_BANK, &[("18 cu yd per hour", "2 cu yd per hour")]);
    let small = offer("access: {by: pump, distance: 120 ft}", &small);
    assert_eq!(value(&small, "pump time, pour 1"), dec!(6.25));
    assert_eq!(bought(&slow, "pump hose, pour 1"), None);
    // Overruled, the hours follow.
    let set = "access: pump\nset: {\"pump time, pour 1\": {to: 5.1, because: a long way}}";
    assert_eq!(
        bought(&offer(set, FAR_BANK), "pump hours, pour 1"),
        Some(dec!(5.25))
    );
    // The near book pays its pump by the trip.
    let near = offer("access: pump", BOOK);
    assert_eq!(bought(&near, "pump, pour 1"), Some(dec!(1)));
}

#[test]
fn every_pour_goes_its_own_way() {
    let two = offer(
        "  walk: {size: 40 ft x 4 ft, beside: \"patio, west edge, 0 ft from north end\", edges: {east: isolated}}\naccess: chute\npour:\n  - {day: 2026-06-15, slabs: [patio], access: {by: pump, distance: 60 ft}}\n  - {day: 2026-06-17, slabs: [walk], access: buggy}",
        FAR_BANK,
    );
    assert_eq!(bought(&two, "pump base charge, pour 1"), Some(dec!(1)));
    assert_eq!(bought(&two, "pump base charge, pour 2"), None);
    assert_eq!(value(&two, "place by pump work"), dec!(10.5));
    // 1.9753 net; 2.1 with its allowance, no prime.
    assert_eq!(value(&two, "place by buggy work"), dec!(2.5));
    let buggy = need(&two, "buggy, pour 2").unwrap();
    assert_eq!((item(buggy), buggy.placement), ("power buggy", Some(1)));
    assert_eq!(buggy.quantity.value(), dec!(0.5));
    assert!(
        !two.quoted()
            .needs
            .crew
            .tasks
            .iter()
            .any(|task| task.name == "place by chute")
    );
}

#[test]
fn a_buggy_stays_for_the_hours_of_placing() {
    // 30 yards in three slabs: 30 × 0.9 ÷ 3 people is 9 hours, more than a day of 8.
    let job = "set: {exterior order: {to: 30, because: the whole yard}}\naccess: buggy";
    assert_eq!(
        bought(&offer(job, FAR_BANK), "buggy, pour 1"),
        Some(dec!(1.5))
    );
    // A book without a buggy charges none.
    assert_eq!(bought(&offer("access: buggy", BOOK), "buggy, pour 1"), None);
}

#[test]
fn an_allowance_is_that_of_the_slab_the_pour_the_job_the_kind_or_the_business() {
    #[track_caller]
    fn case(slab: &str, more: &str, business: &str, expected: &str) {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 27 ft x 27 ft, edges: {{north: house}}{slab}}}\n{more}\n"
        );
        let offer = desk(&job, business, FAR_BANK).offer();
        let allowance = value(&offer, "exterior order allowance");
        assert_eq!(to_places(allowance, 4).normalize().to_string(), expected);
    }
    let kind = with(
        BUSINESS,
        &[("patio: {thickness", "patio: {allowance: 9%, thickness")],
    );
    let pour = |allowance: &str| format!("pour: [{{day: 2026-06-15, slabs: [patio]{allowance}}}]");
    let (own, of_pour, of_job) = (
        ", allowance: 20%",
        pour(", allowance: 15%"),
        "allowance: 12%",
    );
    let both = format!("{of_pour}\n{of_job}");
    // 9 cu yd net.
    case(own, &both, &kind, "1.8");
    case("", &both, &kind, "1.35");
    case("", of_job, &kind, "1.08");
    case("", "", &kind, "0.81");
    case("", &pour(""), BUSINESS, "0.63");
}
