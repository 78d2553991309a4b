//! Can the crew finish each pour? What is told.

mod ways;

use flatwork::inside::advice::advice;
use flatwork::inside::costing::Pricing;
use flatwork::inside::trade::crew::PourDay;
use rust_decimal_macros::dec;

use crate::support::{BUSINESS, RIVER_ROAD, desk, value, with};

const BROOM: &str = "\
customer: Ira Sample
quoted: 2026-05-04
pour: 2026-06-16
exposure: frost
slabs:
  walk: {size: 25 ft x 30 ft, kind: slab, finish: broom}
";

/// A second slab like that of `BROOM`, after it.
const TWO: &str = "broom}\n  other: {size: 25 ft x 30 ft, kind: slab, finish: broom}\n";

const DRIVEWAY: &str = "\
customer: Ira Sample
quoted: 2026-05-04
pour: 2026-06-16
exposure: frost
slabs:
  driveway: {size: 24 ft x 124 ft}
";

const BARROWS: &str = "\
customer: Ira Sample
quoted: 2026-05-04
pour: 2026-06-16
exposure: frost
access: {by: wheelbarrow, distance: 50 ft}
slabs:
  patio: {size: 20 ft x 14 ft}
";

const CHUTE: &str = "\
customer: Ira Sample
quoted: 2026-05-04
pour: 2026-06-16
exposure: frost
access: {by: chute, distance: 60 ft}
slabs:
  patio: {size: 16 ft x 15 ft}
";

/// What is said of the pours of a job: code, message, and the lines of its help.
fn said(job: &str, business: &str, book: &str) -> Vec<(&'static str, String, Vec<String>)> {
    let desk = desk(job, business, book);
    let at = Pricing {
        book: &desk.book,
        business: &desk.business,
        days: &desk.days,
    };
    let found = advice(&desk.takeoff, at, &desk.offer(), desk.quoted).into_iter();
    let of_pours = ["pour-too-long", "truck-too-slow", "chute-too-short"];
    let found = found.filter(|one| of_pours.contains(&one.code));
    let lines = |help: Option<String>| help.unwrap().lines().map(str::to_owned).collect();
    found
        .map(|one| (one.code, one.message, lines(one.help)))
        .collect()
}

#[track_caller]
fn silent(job: &str, business: &str, book: &str) {
    assert_eq!(said(job, business, book), []);
}

/// The words of what is said, which is one thing of this code.
#[track_caller]
fn says(code: &str, job: &str, business: &str, book: &str) -> (String, Vec<String>) {
    let all = said(job, business, book);
    let [(found, message, lines)] = &all[..] else {
        panic!("{all:#?}");
    };
    assert_eq!(*found, code, "{message}");
    (message.clone(), lines.clone())
}

/// The firm where no more people find room, so that nobody proposes more.
fn only_three() -> String {
    format!("{BUSINESS}\npour day: {{people at once: 3}}\n")
}

fn pours(job: &str, business: &str, book: &str) -> Vec<PourDay> {
    let offer = desk(job, business, book).offer();
    offer.quoted().needs.crew.pours.clone()
}

#[test]
fn three_people_broom_750_square_feet_before_they_set_at_70_degrees() {
    // 750 sq ft at 2.4 hours per 100 are 18 hours, for three people 6 hours.
    silent(BROOM, BUSINESS, RIVER_ROAD);
    // What an item adds while it is placed is done then: 6 ft at 5 hours per 100 ft, for three people 0.1 h.
    let border = format!("{BROOM}extra: [smooth border: 6 ft]\n");
    let (message, _) = says("pour-too-long", &border, BUSINESS, RIVER_ROAD);
    assert!(message.contains("finishing takes 6.1 h"), "{message}");
    let option = format!("{BROOM}options: [Border: {{add: [smooth border: 6 ft]}}]\n");
    let (message, _) = says("pour-too-long", &option, BUSINESS, RIVER_ROAD);
    assert!(
        message.starts_with("with `Border`: this pour: it"),
        "{message}"
    );
    let more = with(BROOM, &[("25 ft x 30 ft", "25 ft x 30.5 ft")]);
    let (message, _) = says("pour-too-long", &more, BUSINESS, RIVER_ROAD);
    assert!(message.contains("finishing takes 6.1 h"), "{message}");
    assert!(message.contains("sets in about 6 h at 70 °F"), "{message}");
    // It sets in half of that at 90, and in 9 hours with a retarder.
    let warm = |degrees: &str| format!("{BROOM}temperature: {degrees}\n");
    let (message, _) = says("pour-too-long", &warm("90"), BUSINESS, RIVER_ROAD);
    assert!(message.contains("in about 3 h at 90 °F"), "{message}");
    silent(&warm("69"), BUSINESS, RIVER_ROAD);
    let slow = with(&more, &[("broom}", "broom, mix: exterior slow}")]);
    silent(&slow, BUSINESS, RIVER_ROAD);
    // What the owner has timed counts.
    let own = |key: &str| format!("{BUSINESS}\npour day: {{{key}}}\n");
    silent(&more, &own("setting: 6 1/4 hours"), RIVER_ROAD);
    says(
        "pour-too-long",
        BROOM,
        &own("setting: 5.9 hours"),
        RIVER_ROAD,
    );
    says("pour-too-long", BROOM, &own("temperature: 80"), RIVER_ROAD);
    says(
        "pour-too-long",
        BROOM,
        &own("people at once: 2"),
        RIVER_ROAD,
    );
    // 10 yards placed in 1 h 40 min, then 6 hours.
    let day = |job: &str| pours(job, BUSINESS, RIVER_ROAD)[0].day.value();
    assert_eq!(day(BROOM).round_dp(4), dec!(7.6667));
    silent(BROOM, &own("longest day: 7.7 hours"), RIVER_ROAD);
    says(
        "pour-too-long",
        BROOM,
        &own("longest day: 7.6 hours"),
        RIVER_ROAD,
    );
}

#[test]
fn in_the_cold_the_last_pass_waits() {
    // Half of 24 hours at 30 degrees, after 14 minutes of placing.
    let small = with(BROOM, &[("25 ft x 30 ft", "10 ft x 10 ft")]);
    let cold = format!("{small}temperature: 30\n");
    let own = |stiff: &str| format!("{BUSINESS}\npour day: {{stiff after: {stiff}}}\n");
    silent(&cold, &own("40%"), RIVER_ROAD);
    says("pour-too-long", &cold, &own("50%"), RIVER_ROAD);
    let quick = with(RIVER_ROAD, &[("setting: 150%", "setting: 70%")]);
    let cold = with(&cold, &[("broom}", "broom, mix: exterior slow}")]);
    silent(&cold, &own("50%"), &quick);
}

#[test]
fn the_days_of_its_month_tell_how_warm_it_is_expected() {
    let firm = with(
        BUSINESS,
        &[("normals:", "normals:\n    june: 58 to 80 F\n    #")],
    );
    let june = with(&firm, &[("cure:", "pour day: {temperature: 60}\ncure:")]);
    let january = with(&june, &[("june: 58", "july: 58")]);
    let setting = |job: &str, business: &str| {
        let day = &pours(job, business, RIVER_ROAD)[0];
        (day.temperature.value(), day.setting.value())
    };
    let own = format!("{BROOM}temperature: 90\n");
    for (job, business, degrees, hours) in [
        (own.as_str(), &june, dec!(90), dec!(3)),
        (BROOM, &june, dec!(80), dec!(4.5)),
        (BROOM, &january, dec!(60), dec!(9)),
        (BROOM, &BUSINESS.to_owned(), dec!(70), dec!(6)),
    ] {
        assert_eq!(setting(job, business), (degrees, hours));
    }
}

#[test]
fn a_truck_is_empty_within_its_limit() {
    // 3.75 cu yd at 26 minutes of three people with barrows.
    let (message, lines) = says("truck-too-slow", BARROWS, BUSINESS, RIVER_ROAD);
    assert!(
        message.contains("stands at the slab for 97.5 min"),
        "{message}"
    );
    // Three ways are told, the cheapest; smaller trucks are the fourth here.
    assert_eq!(lines.len(), 4, "{lines:#?}");
    let (_, lines) = says("truck-too-slow", BARROWS, &only_three(), RIVER_ROAD);
    assert!(
        lines
            .iter()
            .any(|line| line.starts_with("`truck: 2 cu yd`: ")),
        "{lines:#?}"
    );
    let limit = |much: &str| {
        with(
            RIVER_ROAD,
            &[("supply: ", &format!("supply: # \n  {much}\n  # "))],
        )
    };
    silent(BARROWS, BUSINESS, &limit("discharge within: 98 min"));
    let road = "discharge within: 98 min\n  on the road: 1 min";
    says("truck-too-slow", BARROWS, BUSINESS, &limit(road));
    let two = format!("{BARROWS}truck: 2 cu yd\n");
    silent(&two, BUSINESS, RIVER_ROAD);
    let day = &pours(&two, BUSINESS, RIVER_ROAD)[0];
    assert_eq!(day.trucks, 2);
    let loads = value(
        &desk(&two, BUSINESS, RIVER_ROAD).offer(),
        "exterior order loads",
    );
    assert_eq!(loads, dec!(2), "each is delivered");
    // Nobody fills more into a truck than it carries.
    let full = format!("{BARROWS}truck: 12 cu yd\n");
    assert_eq!(pours(&full, BUSINESS, RIVER_ROAD)[0].trucks, 1);
}

#[test]
fn placing_waits_for_trucks_that_come_no_sooner() {
    let own = |minutes: &str| format!("{BUSINESS}\npour day: {{between trucks: {minutes}}}\n");
    let placing = |business: &str| pours(DRIVEWAY, business, RIVER_ROAD)[0].placing.value();
    // 49.25 cu yd at 10 minutes, on five full trucks and one of 4.25.
    assert_eq!(placing(BUSINESS).round_dp(4), dec!(8.2083));
    assert_eq!(placing(&own("90 min")).round_dp(4), dec!(8.2083));
    // The last stands 42.5 minutes, after five times two hours.
    assert_eq!(placing(&own("2 hours")).round_dp(4), dec!(10.7083));
}

#[test]
fn a_chute_reaches_18_feet_unless_the_owner_says_more() {
    let (message, _) = says("chute-too-short", CHUTE, BUSINESS, RIVER_ROAD);
    assert!(
        message.contains("a chute reaches about `18 ft`"),
        "{message}"
    );
    let at = |feet: &str| with(CHUTE, &[("60 ft", feet)]);
    silent(&at("18 ft"), BUSINESS, RIVER_ROAD);
    let own = format!("{BUSINESS}\npour day: {{chute: 60 ft}}\n");
    silent(CHUTE, &own, RIVER_ROAD);
}

#[test]
fn a_patio_by_two_people_hears_nothing() {
    let patio = with(
        CHUTE,
        &[("60 ft", "15 ft"), ("16 ft x 15 ft", "12 ft x 15 ft")],
    );
    silent(&format!("{patio}people: 2\n"), BUSINESS, RIVER_ROAD);
}

#[test]
fn in_the_cold_nothing_is_proposed_that_sets_more_slowly() {
    let cold = format!("{BROOM}temperature: 28\n");
    let (message, lines) = says("pour-too-long", &cold, BUSINESS, RIVER_ROAD);
    assert!(message.contains("since the last pass waits"), "{message}");
    let told = |lines: &[String], words: &str| lines.iter().any(|line| line.contains(words));
    assert!(!told(&lines, "exterior slow"), "{lines:#?}");
    assert!(!told(&lines, "bulkheads"), "{lines:#?}");
    assert!(told(&lines, "it is cold: a warmer day"), "{lines:#?}");
    // 1,350 sq ft are finished in 10.8 hours. At 59 °F it sets in 6 × 1.55 = 9.3 hours and at 61 in 6 × 1.45 = 8.7,
    // half as long again with a retarder: it would do at either, and is proposed where it is warm enough.
    let large = with(BROOM, &[("25 ft x 30 ft", "25 ft x 54 ft")]);
    let firm = format!("{BUSINESS}\npour day: {{people at once: 3, longest day: 20 hours}}\n");
    for (degrees, is_told) in [(59, false), (61, true)] {
        let job = format!("{large}temperature: {degrees}\n");
        let (_, lines) = says("pour-too-long", &job, &firm, RIVER_ROAD);
        assert_eq!(told(&lines, "exterior slow"), is_told, "{lines:#?}");
    }
    // One that sets sooner is.
    let quick = with(RIVER_ROAD, &[("setting: 150%", "setting: 70%")]);
    let (_, lines) = says("pour-too-long", &cold, BUSINESS, &quick);
    assert!(told(&lines, "`mix: exterior slow`"), "{lines:#?}");
}

#[test]
fn nine_hundred_square_feet_stamped_by_three_people_are_told() {
    let job = with(
        BARROWS,
        &[(
            "patio: {size: 20 ft x 14 ft}",
            "terrace: {size: 30 ft x 30 ft}",
        )],
    );
    let (message, lines) = says("pour-too-long", &job, BUSINESS, RIVER_ROAD);
    assert!(
        message.contains("person hours once the concrete comes take 3 people 27"),
        "{message}"
    );
    assert!(message.contains("a truck stands"), "{message}");
    assert!(2 < lines.len() && lines.len() < 7, "{lines:#?}");
    let all = lines
        .iter()
        .skip(1)
        .all(|line| line.contains("pours with bulkheads"));
    assert!(all, "{lines:#?}");
}

#[test]
fn slabs_of_a_pour_are_parted_whole_where_that_does_it() {
    let two = with(BROOM, &[("broom}\n", TWO)]);
    let (_, lines) = says("pour-too-long", &two, BUSINESS, RIVER_ROAD);
    let whole = lines
        .iter()
        .any(|line| line.starts_with("in 2 pours of whole slabs: "));
    assert!(whole, "{lines:#?}");
}

#[test]
fn a_round_slab_is_parted_as_a_rectangle_of_its_area() {
    let round = with(BROOM, &[("25 ft x 30 ft", "circle 40 ft")]);
    let (_, lines) = says("pour-too-long", &round, BUSINESS, RIVER_ROAD);
    let about = |line: &&String| line.contains("(reckoned on rectangles as large): about $");
    assert_eq!(lines.iter().filter(about).count(), 1, "{lines:#?}");
}
