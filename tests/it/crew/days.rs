//! Days by stage: what shares one, where a night lies, what the customer reads of them.

use flatwork::inside::trade::Quantity;
use flatwork::inside::trade::calendar::Calendar;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{PLAIN, SEALED, crew, offer, text};
use crate::support::{BUSINESS, Desk, RIVER_ROAD, desk, value, with};

/// By hand, at the rates of the book. Base 480 × 4 ÷ 324 × 1.1 = 6.52, forms 88 ft 6.16, bars 7.08: 19.76
/// hours to form. 6.5 yd placed 3.25, broom 4.8 × 2.4 = 11.52: 14.77 to pour. Strip 4.8 × 1.6 = 7.68.
/// A day on site has 7 1/4 hours of each; what is charged has 3/4 hour of travel with it, in days of 8.
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
    // (19.76 + 2.25) ÷ 24 = 0.92; (14.77 + 2.25) ÷ 24 = 0.71; (7.68 + 2.25) ÷ 24 = 0.41.
    let apart = [
        ("form", dec!(1), dec!(1)),
        ("place", dec!(1), dec!(1)),
        ("strip", dec!(1), half),
    ];
    case(BUSINESS, "", &apart);
    // With five people the forms are done when the pour still fits into the day: 34.53 of 36.25 hours.
    let five = with(BUSINESS, &[("people: 3", "people: 5")]);
    // Three of the five strip: (7.68 + 2.25) ÷ 24 = 0.41 of their day, and half of it is 0.3 of the crew's.
    let few = dec!(0.3);
    let together = [
        ("form and place", dec!(1), dec!(1)),
        ("strip", dec!(1), few),
    ];
    case(&five, "", &together);
    // An inspector comes before concrete covers the forms, and asks for a night.
    // (19.76 + 3.75) ÷ 40 = 0.59; (14.77 + 3.75) ÷ 40 = 0.46.
    let inspected = [
        ("form", dec!(1), dec!(1)),
        ("place", dec!(1), half),
        ("strip", dec!(1), few),
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
    // 60 hours, 6.5 cu yd at half an hour, and three people on the way: 65.5 hours of a day of 24,
    // charged as they are.
    let charged = value(&offer, "days to place") * dec!(24);
    assert_eq!(charged.round_dp(9), dec!(65.5));
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
        ["place", "strip and finish", "seal after 28 days"]
    );
    // Trips that are planned are for the work alone.
    assert_eq!(
        names("trips: 4")[1..],
        ["place", "strip", "finish", "seal after 28 days"]
    );
}

#[test]
fn pours_of_several_days_have_blocks_of_their_own_and_all_forms_before_the_first() {
    let job = two_pours(17);
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
    // 80 and 40 sq ft at 1.6 hours per 100.
    let each = ["strip pour 1", "strip pour 2"].map(|name| hours(name).round_dp(9));
    assert_eq!((each, strip), ([dec!(1.28), dec!(0.64)], dec!(1.92)));
}

/// Two walks, poured on June 15 and on the day `other` of June.
fn two_pours(other: u32) -> String {
    format!(
        "customer: Ira Sample\nquoted: 2026-05-04\npour:\n  - {{day: 2026-06-15, slabs: [one]}}\n  - {{day: 2026-06-{other}, slabs: [two]}}\nslabs: {{one: {{kind: walk, size: 20 ft x 4 ft}}, two: {{kind: walk, size: 10 ft x 4 ft}}}}\n"
    )
}

fn names(job: &str, business: &str) -> Vec<String> {
    let offer = desk(job, business, RIVER_ROAD).offer();
    let stretches = offer.quoted().needs.crew.stretches.iter();
    stretches.map(|one| one.name.clone()).collect()
}

#[test]
fn forms_come_off_on_the_day_of_a_later_pour_only_within_a_week() {
    let together = [
        "form and place pour 1",
        "strip pour 1 and place pour 2",
        "strip pour 2",
    ];
    assert_eq!(names(&two_pours(22), BUSINESS), together);
    let apart = [
        "form and place pour 1",
        "strip pour 1",
        "place pour 2",
        "strip pour 2",
    ];
    assert_eq!(names(&two_pours(23), BUSINESS), apart);
}

#[test]
fn covers_lie_as_many_whole_days_as_are_said_and_come_off_with_the_forms() {
    let job = with(
        &text(PLAIN, ""),
        &[(
            "2026-05-04\npour: 2026-06-15",
            "2026-11-30\npour: 2027-01-11",
        )],
    );
    let at = desk(&job, BUSINESS, RIVER_ROAD);
    let offer = at.offer();
    let crew = &offer.quoted().needs.crew;
    let last = crew.stretches.last().unwrap();
    assert_eq!(last.name, "strip and lift covers");
    // January 12 to 14 lie whole under blankets; January 15 is a Friday.
    let calendar = Calendar::of(&at.takeoff, crew, at.quoted, &at.business);
    let (_, dated) = calendar.stretches.last().unwrap();
    assert_eq!(dated.unwrap().from.long(), "January 15, 2027");
    let said = when(&at).join(" ");
    let once = "to take off the covers and the forms.";
    assert!(said.contains(once), "{said}");
    assert_eq!(said.matches("covers").count(), 1, "{said}");
    // A pour after the day on which they may come off finds the crew there; one before it or on it lets
    // all lie. The pours are on mild days: at January's 36 °F they set in 6 × 2 × 1.7 = 20.4 hours, and
    // the last pass waits for 40% of them, 8.16 hours, which is a day of its own.
    let pours = |second: u32| {
        let mild = "2026-11-30\ntemperature: 70";
        let job = two_pours(17).replace("2026-05-04", mild);
        let job = job.replace("2026-06-15", "2027-01-11");
        names(
            &job.replace("2026-06-17", &format!("2027-01-{second}")),
            BUSINESS,
        )
    };
    assert_eq!(
        pours(18)[1],
        "strip pour 1, lift covers pour 1 and place pour 2"
    );
    for second in [14, 15] {
        assert_eq!(
            pours(second)[1..],
            [
                "place pour 2",
                "strip pours 1 and 2 and lift covers pours 1 and 2"
            ]
        );
    }
}

#[test]
fn a_pour_that_is_longer_on_the_clock_than_a_working_day_is_charged_to_its_end() {
    let charged = |degrees: &str| {
        let more = format!("temperature: {degrees}");
        let offer = desk(&text(PLAIN, &more), BUSINESS, RIVER_ROAD).offer();
        let crew = &offer.quoted().needs.crew;
        let day = crew.pours[0].day.value();
        let waiting = crew.waiting.as_ref().map(Quantity::value);
        (day, waiting, value(&offer, "days to place") * dec!(24))
    };
    // It sets in 6 hours: everybody has work all the time.
    let (day, waiting, _) = charged("70");
    assert!(day < dec!(7.25));
    assert_eq!(waiting, None);
    // In 24 hours, and the last pass waits for 40% of them: three people for as long, and their way.
    let (day, waiting, hours) = charged("30");
    assert!(dec!(9.6) < day, "{day}");
    assert_eq!(
        waiting.unwrap().round_dp(9),
        (day * dec!(3) - dec!(14.77)).round_dp(9)
    );
    assert_eq!(hours.round_dp(9), (day * dec!(3) + dec!(2.25)).round_dp(9));
}

#[test]
fn in_one_sum_a_day_of_the_calendar_is_a_trip() {
    let in_one = crew("count days: by the job");
    let at = desk(&text(SEALED, ""), &in_one, RIVER_ROAD);
    let offer = at.offer();
    let crew = &offer.quoted().needs.crew;
    let days = Calendar::of(&at.takeoff, crew, at.quoted, &at.business).days();
    assert_eq!(days, 3);
    // And one visit to seal it.
    assert_eq!(value(&offer, "trips"), dec!(4));
}

#[test]
fn visits_for_one_thing_are_counted_together_and_pours_named_by_their_days() {
    let sealed = two_pours(30).replace("4 ft}", "4 ft, seal: satin}");
    let at = desk(&sealed, BUSINESS, RIVER_ROAD);
    let lines = when(&at);
    assert_eq!(lines[0], "June 4 to July 1, 2026: pour June 15 and 30.");
    let said = lines.join(" ");
    assert!(said.contains("28 days after"), "{said}");
}

#[test]
fn who_has_to_sign_before_the_price_ends_reads_the_day() {
    let soon = with(
        &text(PLAIN, ""),
        &[("pour: 2026-06-15", "pour: 2026-05-18")],
    );
    let at = desk(&soon, BUSINESS, RIVER_ROAD);
    // The forms are made on Friday, May 15; the price is good for 30 days.
    assert_eq!(when(&at)[1], "Sign by May 14, 2026 to keep these days.");
    let late = with(
        &text(PLAIN, ""),
        &[("pour: 2026-06-15", "pour: 2026-07-15")],
    );
    let later = when(&desk(&late, BUSINESS, RIVER_ROAD)).join(" ");
    assert!(!later.contains("Sign by"), "{later}");
}

/// What the customer reads of the days, sentence by sentence.
fn when(desk: &Desk) -> Vec<String> {
    let lines = desk.view().when_we_come;
    let lines = lines
        .iter()
        .map(|line| format!("{}{}{}", line.before, line.strong, line.after));
    lines.collect()
}

fn days(business: &str, slab: &str, more: &str) -> String {
    let lines = when(&desk(&text(slab, more), business, RIVER_ROAD));
    // The start is the first, and what weather may move the last; in June there is no frost.
    let [_, days @ .., weather] = &lines[..] else {
        panic!("{lines:?}");
    };
    assert_eq!(weather, "Rain may move a day, not the price.");
    days.join(" ")
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
        "1 working day on 3 days at your house."
    );
    assert_eq!(
        set("crew days: {to: 4.5, because: hard}"),
        "4½ working days at your house."
    );
    let in_one = days(&crew("count days: by the job"), PLAIN, "");
    assert_eq!(in_one, "2½ working days on 3 days at your house.");
    // Between what stays on all sides there is no form to take off.
    let panel = days(BUSINESS, "seal: none, edges: {all: existing concrete}", "");
    assert!(panel.ends_with("then half a day to clean up."), "{panel}");
    let sealed = format!("{plain} Then one visit to seal it, 28 days after the pour.");
    assert_eq!(days(BUSINESS, SEALED, ""), sealed);
    let quarter = with(
        BUSINESS,
        &[("round days up to: 1/2", "round days up to: 1/4")],
    );
    // 0.92 and 0.71 days, each up to a quarter. To strip, three people are charged (7.68 + 2.25) ÷ 24 = 0.41,
    // half a day or 12 hours, two (7.68 + 1.5) ÷ 16 = 0.57, ¾ of a day or 12 hours too, and one two days or
    // 16: of as few hours the fewest people.
    let by_quarters = "2½ working days on 3 days: 1 to form, ¾ of a day to pour, then ¾ of a day to take off the forms.";
    assert_eq!(days(&quarter, PLAIN, ""), by_quarters);
}

#[test]
fn the_start_is_on_working_days_before_the_pour_that_is_set() {
    let start_of = |business: &str, quoted: &str, pour: &str| {
        let old = "quoted: 2026-05-04\npour: 2026-06-15\n";
        let new = format!("quoted: {quoted}\n{pour}");
        let job = with(&text(PLAIN, ""), &[(old, &new)]);
        let line = desk(&job, business, RIVER_ROAD).view().when_we_come[0].clone();
        format!("{}{}{}", line.before, line.strong, line.after)
    };
    let start = |business: &str, pour: &str| start_of(business, "2026-05-04", pour);
    // June 15 is a Monday: the forms are made on the Friday before, and 11 days before that is Monday, June 1.
    assert_eq!(
        start(BUSINESS, "pour: 2026-06-15\n"),
        "June 1 to 16, 2026: start by June 12, pour June 15."
    );
    let off = crew("days off: 2026-06-01, 2026-06-10 to 2026-06-12");
    assert_eq!(
        start(&off, "pour: 2026-06-15\n"),
        "May 29 to June 16, 2026: start by June 9, pour June 15."
    );
    // The pour is 35 days after the quote, on Monday, June 8: the forms on Friday, June 5, or up to 11 days later.
    assert_eq!(
        start(BUSINESS, ""),
        "Start between June 5 and June 16, 2026."
    );
    // Quoted on the Friday before the pour; for a pour in the year after, before which January 1 is a holiday.
    assert_eq!(
        start_of(BUSINESS, "2026-06-12", "pour: 2026-06-15\n"),
        "June 12 to 16, 2026: start on June 12, pour June 15."
    );
    // Covers lie for three whole days of January, and come off with the forms.
    assert_eq!(
        start_of(BUSINESS, "2026-12-18", "pour: 2027-01-04\n"),
        "December 21, 2026 to January 8, 2027: start by December 31, 2026, pour January 4."
    );
    let small = with(BUSINESS, &[("people: 3", "people: 9")]);
    assert_eq!(
        start(&small, "pour: 2026-06-15\n"),
        "Start on June 15, 2026, the day of the pour."
    );
}
