//! Finishes, colors and sealers as priced work: what they add.

mod added;
mod borders;
mod words;

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use self::words::words;
use crate::support::{BUSINESS, Desk, desk, value, with};

const BOOK: &str = include_str!("../../golden/takeoff/stamped-and-sealed/input/book.yaml");

/// One slab of 432 sq ft with 74 ft of form, and what is said of its surface.
fn job(says: &str) -> String {
    format!(
        "customer: Ira Sample\nquoted: 2026-05-04\npour: 2026-06-15\nslabs:\n  patio: {{kind: walk, base: none, size: 24 ft x 18 ft, joints: 9 ft, edges: {{west: house}}{says}}}\n"
    )
}

fn lot(says: &str) -> Desk {
    lot_with(says, BOOK)
}

fn lot_with(says: &str, book: &str) -> Desk {
    let business = with(BUSINESS, &[("allowance: 7%", "allowance: 0%")]);
    desk(&job(says), &business, book)
}

fn names(offer: &Offer) -> Vec<String> {
    let needs = &offer.quoted().needs.needs;
    needs
        .iter()
        .map(|need| need.quantity.name().to_owned())
        .collect()
}

#[test]
fn a_finish_takes_what_its_pail_says() {
    #[track_caller]
    fn case(dose: &str, needed: Decimal) {
        let book = with(
            BOOK,
            &[
                ("      - release powder: 3 lb per 100 sq ft\n", ""),
                ("      - edge stamp: 1 ft per ft\n", ""),
                ("stamps: 1 day per pour", &format!("stamps: \"{dose}\"")),
                ("is: \"Stamp set, hired\", unit: day", "unit: lb"),
            ],
        );
        let offer = lot_with(", finish: stamped slate", &book).offer();
        assert_eq!(value(&offer, "stamps for finishes"), needed, "{dose}");
    }
    case("3 lb per 100 sq ft", dec!(12.96));
    case("3 lb per 100 sq ft, 2 coats", dec!(25.92));
    case("150 sq ft per lb", dec!(2.88));
    case("150 sq ft per lb, 3 coats", dec!(8.64));
    // 24 + 24 + 18 ft of form: the west side is the house.
    case("0.5 lb per ft", dec!(33));
    case("7 lb per pour", dec!(7));
}

/// References: two coats at 400 sq ft to the gallon are one at 200; a maker's test rate is 300.
#[test]
fn a_sealer_goes_as_far_as_it_says() {
    #[track_caller]
    fn case(coverage: &str, gallons: Decimal) {
        let book = with(
            BOOK,
            &[
                ("250 sq ft per gal, 2 coats", coverage),
                (
                    "unit: gal, class: material, sold in: 5",
                    "unit: gal, class: material",
                ),
            ],
        );
        let offer = lot_with(", seal: wet look", &book).offer();
        assert_eq!(value(&offer, "sealer for sealing"), gallons, "{coverage}");
    }
    case("400 sq ft per gal, 2 coats", dec!(2.16));
    case("200 sq ft per gal", dec!(2.16));
    case("300 sq ft per gal", dec!(1.44));
}

#[test]
fn a_color_goes_into_every_ordered_yard() {
    // 432 × 4 ÷ 324 = 5.3333, and at least a quarter yard or a quarter inch more: 5.75 ordered.
    let offer = lot(", color: sandstone").offer();
    assert_eq!(value(&offer, "exterior sandstone order"), dec!(5.75));
    // 5.75 × 564 × 3% = 97.29, in whole pounds.
    assert_eq!(value(&offer, "color sandstone for the mix"), dec!(98));
    let by_yard = with(BOOK, &[("dose: 3% of cement", "dose: 8 lb per cu yd")]);
    let offer = lot_with(", color: sandstone", &by_yard).offer();
    assert_eq!(value(&offer, "color sandstone for the mix"), dec!(46));
}

#[test]
fn a_visit_after_the_pour_is_a_trip_and_no_working_day_before_it() {
    let plain = lot(", curing: none").offer();
    let sealed = lot(", seal: wet look, curing: none");
    let offer = sealed.offer();
    let crew = |offer: &Offer| offer.quoted().needs.crew.clone();
    assert!(crew(&plain).returns.is_none());
    assert_eq!(crew(&offer).returns.unwrap().value(), dec!(1));
    let (before, after) = (crew(&plain).trips.value(), crew(&offer).trips.value());
    assert_eq!(before + dec!(1), after);
    // Three people travel three quarters of an hour to form and pour, and one to strip: 4.32 hours and the
    // way are a day of one or half a day of two, 8 hours either way. One comes to seal.
    assert_eq!(before, dec!(2));
    assert_eq!(crew(&offer).travel.value(), dec!(2.25) + dec!(1.5));
    let said = sealed.view().when_we_come;
    let said: Vec<String> = said
        .iter()
        .map(|line| format!("{}{}{}", line.before, line.strong, line.after))
        .collect();
    let visit = "Then one visit to seal it, 28 days after the pour.";
    assert_eq!(said[2], visit, "{said:?}");
}

#[test]
fn coming_back_is_a_stage_of_its_own() {
    #[track_caller]
    fn case(says: &str, book: &str, stage: &str, trips: Decimal, days: Decimal) {
        let offer = desk(&job(says), BUSINESS, book).offer();
        assert_eq!(value(&offer, &format!("trips to {stage}")), trips, "{says}");
        assert_eq!(value(&offer, &format!("days to {stage}")), days, "{says}");
    }

    let twice = with(BOOK, &[("wet look: {", "wet look: {trips: 2, ")]);
    let third = dec!(1) / dec!(3);
    // It is washed on the visit that strips, and takes no time of its own: 432 × 1 ÷ 100 = 4.32 hours and
    // the way. One is charged (4.32 + 0.75) ÷ 8 = 0.63, a day; two are (4.32 + 1.5) ÷ 16 = 0.36, half a day,
    // as many hours; so one comes, a third of the crew's.
    let washed = ", finish: washed pebbles";
    case(washed, BOOK, "strip and finish", dec!(1), third);
    // 432 × 1.5 ÷ 100 = 6.48 hours and one on the way: 7.23 of a day of one, a third of the crew's.
    let seal = ", seal: wet look, curing: none";
    case(seal, BOOK, "seal after 28 days", dec!(1), third);
    // Twice on the way: 7.98 hours, a day again.
    case(seal, &twice, "seal after 28 days", dec!(2), third);
    let plain = desk(&job(""), BUSINESS, BOOK).offer();
    assert!(plain.quoted().needs.crew.returns.is_none());
}

#[test]
fn curing_compound_is_bought_for_the_slabs_it_is_sprayed_on() {
    let bought = |says: &str| names(&lot(says).offer());
    let has = |says: &str, name: &str| bought(says).iter().any(|known| known == name);
    assert!(has("", "curing compound") && !has("", "curing cover"));
    assert!(has(", curing: cover", "curing cover") && !has(", curing: cover", "curing compound"));
    for way in ["none", "wet"] {
        let says = format!(", curing: {way}");
        assert!(!has(&says, "curing cover") && !has(&says, "curing compound"));
    }
    // What the slab says wins over its finish.
    let own = ", finish: stamped slate, curing: compound, color: none, seal: none";
    assert!(has(own, "curing compound") && !has(own, "color sandstone for the mix"));
    assert!(has(own, "exterior order"), "`none` is no color");
    assert!(!has(own, "sealer for sealing") && has(own, "release powder for finishes"));
}

#[test]
fn an_entry_that_only_names_a_finish_costs_nothing() {
    let named = with(
        BOOK,
        &[(
            "finishes:\n",
            "finishes:\n  broom: {says: a light broom across}\n",
        )],
    );
    let (plain, named) = (lot(""), lot_with("", &named));
    let total = |desk: &Desk| desk.offer().quoted().totals();
    assert_eq!(total(&plain), total(&named));
    assert!(words(&named).contains("a light broom across, rounded edges"));
}

#[test]
fn parts_of_the_job_carry_their_own_finish() {
    let two = "customer: Ira Sample\nquoted: 2026-05-04\nslabs:\n  patio: {kind: walk, base: none, size: 10 ft x 10 ft, finish: stamped slate}\n  walk: {kind: walk, base: none, size: 10 ft x 10 ft, curing: none}\n";
    let offer = desk(two, BUSINESS, BOOK).offer();
    for need in &offer.quoted().needs.needs {
        let name = need.quantity.name();
        if ["for finishes", "for sealing", "for the mix"]
            .iter()
            .any(|end| name.ends_with(end))
        {
            let owners: Vec<_> = need.shares.iter().map(|(section, _)| *section).collect();
            let patio = flatwork::inside::trade::order::Section::Slab(0);
            assert!(
                !owners.is_empty() && owners.iter().all(|one| *one == patio),
                "{name}"
            );
        }
    }
}

#[test]
fn everything_a_surface_takes_can_be_set() {
    for name in [
        "patio release powder",
        "release powder for finishes",
        "stamps of stamped slate, pour 1",
        "color sandstone in exterior sandstone order",
        "color sandstone for the mix",
        "patio sealer",
        "sealer for sealing",
        "finish stamped slate hours",
        "seal wet look hours",
        "return trips",
    ] {
        let text = format!(
            "{}set: {{\"{name}\": {{to: 77, because: a test}}}}\n",
            job(", finish: stamped slate")
        );
        let offer = desk(&text, BUSINESS, BOOK).offer();
        assert_eq!(value(&offer, name), dec!(77), "{name}");
    }
}
