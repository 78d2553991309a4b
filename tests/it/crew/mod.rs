//! The crew's time: trips as they are planned, and what is counted beside them.

mod days;
mod hours;

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::support::{BUSINESS, RIVER_ROAD, desk, value, with};

const JOB: &str = "customer: Ira Sample\nquoted: 2026-05-04\npour: 2026-06-15\nslabs: {patio: {size: 24 ft x 20 ft, SLAB}}\n";

fn text(slab: &str, more: &str) -> String {
    format!("{}{more}\n", JOB.replace("SLAB", slab))
}

fn offer(slab: &str, more: &str, book: &[(&str, &str)]) -> Offer {
    desk(&text(slab, more), BUSINESS, &with(RIVER_ROAD, book)).offer()
}

/// The business with another line or two about its crew.
fn crew(says: &str) -> String {
    with(
        BUSINESS,
        &[("  people: 3\n", &format!("  people: 3\n  {says}\n"))],
    )
}

/// The same job where days are counted in one sum.
fn in_one_sum(slab: &str, more: &str, book: &[(&str, &str)]) -> Offer {
    let business = crew("count days: by the job");
    desk(&text(slab, more), &business, &with(RIVER_ROAD, book)).offer()
}

const ALSO: &str = "# rules of our own: what is bought with what";
const SEALED: &str = "seal: satin";
const PLAIN: &str = "seal: none";

#[test]
fn planned_trips_are_for_the_work_and_visits_come_beside_them() {
    let trips = |slab: &str, more: &str| value(&offer(slab, more, &[]), "trips");
    assert_eq!(trips(PLAIN, "trips: 2"), dec!(2));
    assert_eq!(trips(SEALED, "trips: 2"), dec!(3));
    assert_eq!(trips(SEALED, "trips: 5 trips"), dec!(6));
    // A number that is set is all of them.
    assert_eq!(trips(SEALED, "set: {trips: {to: 2, because: a}}"), dec!(2));
    // Three people and 3/4 hour on each trip to work, and one on the visit that seals.
    assert_eq!(
        value(&offer(SEALED, "trips: 5", &[]), "travel hours"),
        dec!(12)
    );
    let said = crew("people on a visit: 2");
    let two = desk(&text(SEALED, "trips: 5"), &said, RIVER_ROAD).offer();
    assert_eq!(value(&two, "travel hours"), dec!(12.75));
    // As many as the crew is; more are refused.
    let all = crew("people on a visit: 3");
    let all = desk(&text(SEALED, "trips: 5"), &all, RIVER_ROAD).offer();
    assert_eq!(value(&all, "travel hours"), dec!(13.5));
}

#[test]
fn hours_of_visits_after_the_pour_fill_no_day_before() {
    let trips = |hours: u32, more: &str| {
        let rule =
            format!("{ALSO}\n  grind edges: {{once a: job, hours: {hours} hours, stage: return}}");
        let offer = in_one_sum(PLAIN, more, &[(ALSO, &rule)]);
        let now = |name: &str| value(&offer, name);
        let is_charged = now("hours worked") + now("travel hours") == now("hours");
        assert!(is_charged, "{hours} hours are charged with the job's");
        now("trips")
    };
    let before = value(&in_one_sum(PLAIN, "", &[]), "trips");
    let one_visit = [1, 12, 18].map(|hours| trips(hours, ""));
    assert_eq!(one_visit, [before + Decimal::ONE; 3]);
    // What one visit has no room for takes a second.
    assert_eq!(trips(22, ""), before + dec!(2));
    assert_eq!(trips(12, "trips: 4"), dec!(5));
}

#[test]
fn an_option_may_take_more_trips() {
    let options = "trips: 2\noptions: [Border: {trips: 4, add: [topsoil: 1 cu yd]}]";
    let offer = offer(PLAIN, options, &[]);
    let trips: Vec<Decimal> = offer
        .by_choice
        .values()
        .map(|priced| priced.needs.crew.trips.value())
        .collect();
    assert_eq!(trips, [dec!(2), dec!(4)]);
}

#[test]
fn planned_trips_are_spread_over_the_stages_by_their_hours() {
    let offer = offer(SEALED, "trips: 4", &[]);
    let stages =
        ["form", "place", "strip"].map(|stage| value(&offer, &format!("trips to {stage}")));
    assert_eq!(stages.iter().sum::<Decimal>().round_dp(9), dec!(4));
    assert_eq!(value(&offer, "trips").round_dp(9), dec!(5));
}
