//! Placing: the crew's hours over the way it has to go, and the trucks that wait for them.

use flatwork::inside::costing::Offer;
use flatwork::inside::input::phrases::Further;
use flatwork::inside::tables::ways;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::bought;
use crate::support::{BOOK, BUSINESS, desk, reachable, value, with};

const JOB: &str = "customer: Ira Sample\nslabs: {patio: 27 ft x 27 ft}\nset: {exterior order: {to: 9.75, because: as in the issue}}\n";

/// A yard takes an hour by wheelbarrow, and a truck holds all of it.
fn offer(more: &str, book: &[(&str, &str)]) -> Offer {
    let mut changes = vec![
        (
            "place by wheelbarrow: 1.3 hours",
            "place by wheelbarrow: 1 hour",
        ),
        ("truck: 9 cu yd", "truck: 12 cu yd"),
    ];
    changes.extend(book);
    desk(&format!("{JOB}{more}\n"), BUSINESS, &with(BOOK, &changes)).offer()
}

fn standing(offer: &Offer) -> Decimal {
    bought(offer, "exterior order standing").unwrap_or_default()
}

#[test]
fn a_truck_stands_as_long_as_the_crew_places_or_as_it_takes_to_unload() {
    // 9.75 person hours by three people are 195 minutes; 10 a yard are free.
    let slow = offer("access: wheelbarrow", &[]);
    assert_eq!(value(&slow, "place by wheelbarrow hours"), dec!(9.75));
    assert_eq!(
        value(&slow, "exterior order minutes to unload a yard"),
        dec!(20)
    );
    assert_eq!(standing(&slow), dec!(98));
    let rule = |offer: &Offer| {
        let all = reachable(offer);
        let minutes = "exterior order minutes to unload a yard";
        all.iter().find(|one| one.name() == minutes).unwrap().rule()
    };
    assert!(rule(&slow).starts_with("the crew:"));
    // A truck that takes 21 minutes a yard to unload is what they wait for.
    let plant = offer(
        "access: wheelbarrow",
        &[("unload by wheelbarrow: 11", "unload by wheelbarrow: 21")],
    );
    assert_eq!(standing(&plant), dec!(108));
    assert!(rule(&plant).starts_with("the way of placing:"));
    // Crew hours are hours of everybody.
    let crew = [(
        "place by wheelbarrow: 1 hour ",
        "place by wheelbarrow: 1/3 crew hours ",
    )];
    let by_crew = offer("access: wheelbarrow", &crew);
    assert_eq!(
        value(&by_crew, "place by wheelbarrow hours").round_dp(9),
        dec!(9.75)
    );
    assert_eq!(standing(&by_crew), dec!(98));
}

#[test]
fn hours_that_are_set_or_made_harder_hold_the_truck_too() {
    let set = JOB.replace(
        "set: {",
        "set: {place by wheelbarrow hours: {to: 19.5, because: stairs}, ",
    );
    let book = with(BOOK, &[("truck: 9 cu yd", "truck: 12 cu yd")]);
    let set = desk(&format!("{set}access: wheelbarrow\n"), BUSINESS, &book).offer();
    assert_eq!(
        value(&set, "exterior order minutes to unload a yard"),
        dec!(40)
    );
    let hard = offer("access: wheelbarrow\ndifficulty: 150%", &[]);
    assert_eq!(
        value(&hard, "exterior order minutes to unload a yard"),
        dec!(30)
    );
}

#[test]
fn a_long_way_takes_longer() {
    let over = |far: &str, book: &[(&str, &str)]| {
        let access = format!("access: {{by: wheelbarrow, distance: {far}}}");
        value(&offer(&access, book), "place by wheelbarrow hours").round_dp(9)
    };
    assert_eq!(over("20 ft", &[]), dec!(9.75));
    assert_eq!(over("50 ft", &[]), dec!(9.75));
    // 10% for each of five stretches of 50 ft.
    assert_eq!(over("300 ft", &[]), dec!(14.625));
    let own = [(
        "\nrates:",
        "\nway: {wheelbarrow: 40% per 50 ft past 0 ft}\nrates:",
    )];
    assert_eq!(over("50 ft", &own), dec!(13.65));
    let none = [(
        "\nrates:",
        "\nway: {wheelbarrow: 0% per 50 ft past 50 ft}\nrates:",
    )];
    assert_eq!(over("300 ft", &none), dec!(9.75));
    let by_area = [(
        "place by wheelbarrow: 1 hour per cu yd",
        "place by wheelbarrow: 1 hour per 100 sq ft",
    )];
    assert_eq!(over("300 ft", &by_area), dec!(10.935));
}

#[test]
fn two_pours_over_two_ways_have_their_own_hours() {
    let pours = "pour:\n  - {day: 2026-06-15, slabs: [patio], access: {by: wheelbarrow, distance: 300 ft}}\n  - {day: 2026-06-17, slabs: [walk], access: {by: wheelbarrow, distance: 20 ft}}\nset:\n  exterior order, pour 1: {to: 6, because: a}\n  exterior order, pour 2: {to: 3, because: b}\n";
    let job = format!(
        "customer: Ira Sample\nslabs: {{patio: 20 ft x 20 ft, walk: 20 ft x 4 ft}}\n{pours}"
    );
    let book = with(
        BOOK,
        &[(
            "place by wheelbarrow: 1.3 hours",
            "place by wheelbarrow: 1 hour",
        )],
    );
    let offer = desk(&job, BUSINESS, &book).offer();
    let placing = |name: &str| value(&offer, name).round_dp(9);
    // 6 yards half as long again, and 3 as usual.
    assert_eq!(value(&offer, "place by wheelbarrow hours"), dec!(12));
    assert_eq!(placing("exterior order, pour 1 placing"), dec!(9));
    assert_eq!(placing("exterior order, pour 2 placing"), dec!(3));
    assert_eq!(
        placing("exterior order, pour 1 minutes to unload a yard"),
        dec!(30)
    );
    assert_eq!(
        placing("exterior order, pour 2 minutes to unload a yard"),
        dec!(20)
    );
}

/// The guide tells what is built in.
#[test]
fn the_guide_says_what_the_table_of_ways_says() {
    let guide = include_str!("../../../README.md");
    let rows = [
        ("chute", ways::CHUTE),
        ("wheelbarrow", ways::WHEELBARROW),
        ("buggy", ways::BUGGY),
        ("pump", ways::PUMP),
    ];
    for (method, built_in) in rows {
        let row = guide
            .lines()
            .find(|line| line.starts_with(&format!("| `{method}` | rise |")));
        let said: Further = row
            .unwrap()
            .split('|')
            .nth(3)
            .unwrap()
            .trim()
            .parse()
            .unwrap();
        assert_eq!(
            (said.more, said.each, said.past),
            (built_in.more, built_in.each, built_in.past),
            "{method}"
        );
    }
}
