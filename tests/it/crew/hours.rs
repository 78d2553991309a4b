//! Hours as rates make them, as they are set, and as they are added by hand.

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{PLAIN, offer};
use crate::support::{reachable, value};

#[test]
fn hours_worked_that_are_set_fill_the_stages_by_their_parts() {
    let set = "set: {hours worked: {to: 60, because: measured}}";
    let offer = offer(PLAIN, set, &[]);
    let stretches = offer.quoted().needs.crew.stretches.iter();
    let all: Decimal = stretches.map(|one| one.worked.value()).sum();
    assert_eq!(all.round_dp(9), dec!(60));
}

#[test]
fn set_hours_are_in_the_unit_of_their_rate_and_said_back() {
    let crew = [(
        "finish broom: 2.4 hours per 100 sq ft",
        "finish broom: 1 crew hour per 100 sq ft",
    )];
    let hours = |to: &str, book: &[(&str, &str)]| {
        let set = format!("set: {{finish broom hours: {{to: {to}, because: a curve}}}}");
        value(&offer(PLAIN, &set, book), "finish broom hours")
    };
    assert_eq!(hours("8", &[]), dec!(8));
    assert_eq!(hours("8", &crew), dec!(24));
    for (to, is) in [
        ("8 crew hours", dec!(24)),
        ("8 hours", dec!(8)),
        ("8 labor hours", dec!(8)),
        ("90 min", dec!(1.5)),
    ] {
        assert_eq!(hours(to, &[]), is, "{to}");
        assert_eq!(hours(to, &crew), is, "{to}, by crew hours");
    }
    let set = offer(
        PLAIN,
        "set: {finish broom hours: {to: 8, because: a curve}}",
        &crew,
    );
    let all = reachable(&set);
    let set = all
        .iter()
        .find(|one| one.name() == "finish broom hours")
        .unwrap();
    assert!(
        set.shown()
            .starts_with("set by you as 8 crew hours of 3 people, because a curve; computed ")
    );
    // Of labor it is said whose hours they are.
    let labor = offer(PLAIN, "set: {labor: {to: 20, because: agreed}}", &[]);
    let labor = labor.quoted().needs.crew.charged.shown();
    assert!(labor.starts_with("set by you as person hours, because agreed; computed "));
    // Any quantity in hours is set so, one in minutes too.
    let all = offer(
        PLAIN,
        "access: wheelbarrow\nset: {hours worked: {to: 10 crew hours, because: a}, exterior order standing: {to: 1/2 hour, because: b}}",
        &[],
    );
    assert_eq!(value(&all, "hours worked"), dec!(30));
    assert_eq!(value(&all, "exterior order standing"), dec!(30));
}

#[test]
fn a_rate_may_be_in_minutes_and_unloading_in_hours() {
    let book = [
        (
            "finish broom: 2.4 hours per 100 sq ft",
            "finish broom: 3 min per sq ft",
        ),
        (
            "unload by chute: 5 min per cu yd",
            "unload by chute: 0.5 hours per cu yd",
        ),
    ];
    let offer = offer(PLAIN, "", &book);
    assert_eq!(value(&offer, "finish broom hours"), dec!(24));
    assert_eq!(
        value(&offer, "exterior order minutes to unload a yard"),
        dec!(30)
    );
}

#[test]
fn joints_by_hand_and_by_saw_take_hours_where_the_book_has_a_rate() {
    let rates = [(
        "rates:",
        "rates:\n  joints by hand: 2 hours per 100 ft\n  joints by saw: 1 hour per 100 ft",
    )];
    // 24 ft x 20 ft with panels of at most 12 ft: 20 ft and 24 ft of joints.
    let by_hand = offer("seal: none, joints: 12 ft", "", &rates);
    assert_eq!(value(&by_hand, "joints by hand hours"), dec!(0.88));
    let sawn = offer("seal: none, joints: 12 ft, sawn: yes", "", &rates);
    assert_eq!(value(&sawn, "joints by saw hours"), dec!(0.44));
    assert_eq!(
        value(&sawn, "patio sawn joint face").round_dp(9),
        dec!(3.666666667)
    );
    let by_face = [("rates:", "rates:\n  joints by saw: 3 hours per 10 sq ft")];
    let deep = offer(
        "seal: none, joints: 12 ft, sawn: 1 1/2 in deep",
        "",
        &by_face,
    );
    assert_eq!(value(&deep, "joints by saw hours"), dec!(1.65));
    let tasks = |offer: &Offer| {
        let tasks = offer.quoted().needs.crew.tasks.iter();
        tasks.filter(|task| task.name.starts_with("joints")).count()
    };
    assert_eq!((tasks(&by_hand), tasks(&sawn)), (1, 1));
    assert_eq!(tasks(&offer("joints: 12 ft, sawn: yes", "", &[])), 0);
}

#[test]
fn concrete_is_covered_or_kept_wet_by_the_area_or_by_the_visit() {
    let rate = |text: &str| format!("rates:\n  {text}");
    let wet = |text: &str| offer("seal: none, curing: wet", "", &[("rates:", &rate(text))]);
    assert_eq!(
        value(&wet("keep wet: 1 hour per 100 sq ft"), "keep wet hours"),
        dec!(4.8)
    );
    let visited = wet("keep wet: 1/2 hour per trip");
    assert_eq!(value(&visited, "keep wet hours"), dec!(3.5));
    assert_eq!(value(&visited, "return trips"), dec!(7));
    let none = offer("seal: none, curing: wet", "", &[]);
    assert!(none.quoted().needs.crew.returns.is_none());
    let covers = [(
        "cover slabs: 0.4 hours per 100 sq ft",
        "cover slabs: 1 hour per 100 sq ft",
    )];
    let covered = offer("seal: none, curing: cover", "", &covers);
    assert_eq!(value(&covered, "cover slabs hours"), dec!(4.8));
}

#[test]
fn hours_added_by_hand_are_said_in_any_way() {
    let added = |much: &str| {
        let offer = offer(PLAIN, &format!("extra: [crew labor: {much}]"), &[]);
        value(&offer, "added labor hours")
    };
    let said = ["6 hours", "2 crew hours", "6 labor hours", "360 min"].map(added);
    assert_eq!(said, [dec!(6); 4]);
}
