//! The crew's time: trips as they are planned, hours as they are set, days that the customer reads.

use flatwork::inside::costing::Offer;
use flatwork::inside::trade::Quantity;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::support::{BUSINESS, RIVER_ROAD, desk, reachable, value, with};

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
    // Three people and 3/4 hour each trip.
    assert_eq!(
        value(&offer(SEALED, "trips: 5", &[]), "travel hours"),
        dec!(13.5)
    );
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

/// 18.3 hours to base, form and lay steel, 17.5 to pour, 7.7 to strip, by three people of 7 1/4 hours.
#[test]
fn what_fits_on_one_day_shares_it_and_a_night_lies_where_concrete_or_an_inspector_asks_for_it() {
    #[track_caller]
    fn case(business: &str, more: &str, wanted: &[(&str, Decimal, Decimal)]) {
        let offer = desk(&text(PLAIN, more), business, RIVER_ROAD).offer();
        let stretches = offer.quoted().needs.crew.stretches.iter();
        let found: Vec<_> = stretches
            .map(|one| {
                let much = |of: &Option<Quantity>| of.as_ref().unwrap().value();
                (one.name.as_str(), much(&one.trips), much(&one.days))
            })
            .collect();
        assert_eq!(found, wanted, "{more}");
    }

    let half = dec!(0.5);
    let apart = [
        ("form", dec!(1), dec!(1)),
        ("place", dec!(1), dec!(1)),
        ("strip", dec!(1), half),
    ];
    case(BUSINESS, "", &apart);
    // With five people the forms are done when the pour still fits into the day.
    let five = with(BUSINESS, &[("people: 3", "people: 5")]);
    let together = [
        ("form and place", dec!(1), dec!(1)),
        ("strip", dec!(1), half),
    ];
    case(&five, "", &together);
    // An inspector comes before concrete covers the forms, and asks for a night.
    let inspected = [
        ("form", dec!(1), half),
        ("place", dec!(1), half),
        ("strip", dec!(1), half),
    ];
    case(&five, "permit: customer", &inspected);
    case(&five, "permit: none", &together);
    let night = |word: &str| {
        with(
            &five,
            &[(
                "people: 5",
                &format!("people: 5\n  night before a pour: {word}"),
            )],
        )
    };
    case(&night("always"), "", &inspected);
    case(&night("never"), "permit: customer", &together);
}

#[test]
fn a_pour_is_one_day_however_long_and_is_not_begun_where_it_does_not_fit() {
    let long = "set: {finish broom hours: {to: 60, because: a curve}}";
    let offer = offer(PLAIN, long, &[]);
    assert_eq!(value(&offer, "trips to place"), dec!(1));
    assert_eq!(value(&offer, "days to place"), dec!(3));
    let names: Vec<String> = offer
        .quoted()
        .needs
        .crew
        .stretches
        .iter()
        .map(|one| one.name.clone())
        .collect();
    assert_eq!(names, ["form", "place", "strip"]);
}

#[test]
fn lids_on_order_are_set_on_a_visit_of_their_own_or_when_the_crew_strips() {
    let slab =
        "boxes: [valve box 12 x 18: {at: 6 ft from west and 6 ft from south, lid: on order}]";
    let last = |business: &str| {
        let offer = desk(&text(slab, ""), business, RIVER_ROAD).offer();
        let crew = &offer.quoted().needs.crew;
        (
            crew.stretches.last().unwrap().name.clone(),
            crew.returns.is_some(),
        )
    };
    assert_eq!(last(BUSINESS), ("set lids".to_owned(), true));
    assert_eq!(
        last(&crew("set lids: when we strip")),
        ("strip and set lids".to_owned(), false)
    );
}

#[test]
fn a_finish_is_washed_on_the_visit_that_strips_and_a_sealer_waits_for_its_day() {
    let names = |more: &str| -> Vec<String> {
        let offer = offer("finish: stamped slate", more, &[]);
        let stretches = offer.quoted().needs.crew.stretches.iter();
        stretches.map(|one| one.name.clone()).collect()
    };
    assert_eq!(
        names("")[1..],
        ["place", "strip and finish", "seal on day 28"]
    );
    // Trips that are planned are for the work alone.
    assert_eq!(
        names("trips: 4")[1..],
        ["place", "strip", "finish", "seal on day 28"]
    );
}

#[test]
fn pours_of_several_days_have_blocks_of_their_own_and_all_forms_before_the_first() {
    let job = "customer: Ira Sample\nquoted: 2026-05-04\npour:\n  - {day: 2026-06-15, slabs: [one]}\n  - {day: 2026-06-17, slabs: [two]}\nslabs: {one: {kind: walk, size: 20 ft x 4 ft}, two: {kind: walk, size: 10 ft x 4 ft, at: 60 ft east}}\n";
    let job = job.replace(", at: 60 ft east", "");
    let offer = desk(&job, BUSINESS, RIVER_ROAD).offer();
    let crew = &offer.quoted().needs.crew;
    let names: Vec<&str> = crew.stretches.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "form and place pour 1",
            "strip pour 1 and place pour 2",
            "strip pour 2"
        ]
    );
    let hours = |name: &str| value(&offer, &format!("hours to {name}"));
    let strip = value(&offer, "cure, strip and clean hours");
    assert_eq!(
        (hours("strip pour 1") + hours("strip pour 2")).round_dp(9),
        strip.round_dp(9)
    );
    assert_eq!(
        hours("strip pour 1").round_dp(9),
        (hours("strip pour 2") * dec!(2)).round_dp(9)
    );
}

#[test]
fn hours_worked_that_are_set_fill_the_stages_by_their_parts() {
    let set = "set: {hours worked: {to: 60, because: measured}}";
    let offer = offer(PLAIN, set, &[]);
    let stretches = offer.quoted().needs.crew.stretches.iter();
    let all: Decimal = stretches.map(|one| one.worked.value()).sum();
    assert_eq!(all.round_dp(9), dec!(60));
}

#[test]
fn planned_trips_are_spread_over_the_stages_by_their_hours() {
    let offer = offer(SEALED, "trips: 4", &[]);
    let stages =
        ["form", "place", "strip"].map(|stage| value(&offer, &format!("trips to {stage}")));
    assert_eq!(stages.iter().sum::<Decimal>().round_dp(9), dec!(4));
    assert_eq!(value(&offer, "trips").round_dp(9), dec!(5));
}

fn days(business: &str, slab: &str, more: &str) -> String {
    let desk = desk(&text(slab, more), business, RIVER_ROAD);
    let lines = desk.view().when_we_come;
    let lines = lines
        .iter()
        .map(|line| format!("{}{}{}", line.before, line.strong, line.after));
    lines.collect::<Vec<_>>()[1..]
        .join(" ")
        .replace(" Rain or frost may move a day, not the price.", "")
}

#[test]
fn the_customer_reads_the_days_that_are_charged() {
    let charged = value(&offer(PLAIN, "", &[]), "crew days");
    assert_eq!(charged, dec!(2.5));
    let plain =
        "2½ working days on 3 days: 1 to form, 1 to pour, then half a day to take off the forms.";
    assert_eq!(days(BUSINESS, PLAIN, ""), plain);
    // Whatever the number of trips.
    let fixed = "set: {trips: {to: 3, because: rain}}\nprice: 9000.00";
    assert_eq!(days(BUSINESS, PLAIN, fixed), plain);
    // What the owner sets is told in one number.
    let set = |what: &str| days(BUSINESS, PLAIN, &format!("set: {{{what}}}"));
    assert_eq!(
        set("labor: {to: 24, because: a day}"),
        "1 working day at your house."
    );
    assert_eq!(
        set("crew days: {to: 4.5, because: hard}"),
        "5 working days at your house."
    );
    let in_one = days(&crew("count days: by the job"), PLAIN, "");
    assert_eq!(in_one, "2 working days at your house.");
    let sealed = format!("{plain} Then one visit to seal it, 28 days after the pour.");
    assert_eq!(days(BUSINESS, SEALED, ""), sealed);
    let quarter = with(
        BUSINESS,
        &[("round days up to: 1/2", "round days up to: 1/4")],
    );
    let quarter = days(&quarter, PLAIN, "");
    assert!(
        quarter.starts_with("2½ working days on 3 days"),
        "{quarter}"
    );
}

#[test]
fn the_start_is_on_working_days_before_the_pour_that_is_set() {
    let start = |business: &str, pour: &str| {
        let job = with(&text(PLAIN, ""), &[("pour: 2026-06-15\n", pour)]);
        let line = desk(&job, business, RIVER_ROAD).view().when_we_come[0].clone();
        format!("{}{}{}", line.before, line.strong, line.after)
    };
    // June 15 is a Monday: the forms are made on the Friday before. June 1 is the Monday after a Sunday.
    assert_eq!(
        start(BUSINESS, "pour: 2026-06-15\n"),
        "Start between June 1 and June 12, 2026; the pour is on June 15."
    );
    let off = crew("days off: 2026-06-01, 2026-06-10 to 2026-06-12");
    assert_eq!(
        start(&off, "pour: 2026-06-15\n"),
        "Start between May 29 and June 9, 2026; the pour is on June 15."
    );
    // 35 days after the quote, and 11 days wide: June 8 to June 19, a holiday.
    assert_eq!(
        start(BUSINESS, ""),
        "Start between June 5 and June 16, 2026."
    );
    let small = with(BUSINESS, &[("people: 3", "people: 9")]);
    assert_eq!(
        start(&small, "pour: 2026-06-15\n"),
        "Start on June 15, 2026, the day of the pour."
    );
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
    let covers = [("rates:", "rates:\n  cover slabs: 1 hour per 100 sq ft")];
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
