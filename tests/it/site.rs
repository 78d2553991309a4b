//! Boxes and the answers about a site, from the takeoff to the customer's words.

use flatwork::inside::documents::views::quote::QuoteView;
use rust_decimal_macros::dec;

use crate::support::{BOOK, BUSINESS, Shop, desk, value, with};

/// The demo's book with boxes, and prices for what a site may ask for.
pub fn book() -> String {
    let items = "items:
  cast cover K7: {unit: piece, class: material, prices: {2026-03-01: 40.00}}
  deep box K8: {unit: piece, class: material, prices: {2026-03-01: 120.00}}
  cast lid K9: {unit: piece, class: material, prices: {2026-03-01: 85.00}}
  board lid K9: {unit: piece, class: material, prices: {2026-03-01: 6.00}}
  film K1: {unit: roll, class: material, sold in: 1, prices: {2026-03-01: 18.00}}
  bag K2: {unit: piece, class: fee, prices: {2026-03-01: 60.00}}
";
    let rates = "  step: 5 hours per piece
  set box: 3/4 hour per piece
  set lid: 1/4 hour per piece
  adjust box: 1 hour per piece
  come back: 1 hour per trip
";
    let rules = "
boxes:
  cleanout 8 in: {item: cast cover K7, called: cleanout, opening: 8 in round, rated: 20800 lb}
  valve box: {item: deep box K8, opening: 12 in x 18 in, depth: 12 in, design load: 22500 lb, says: Tier 22, lid: cast lid K9, temporary lid: board lid K9, ring: cast cover K7}
  vault: {item: deep box K8, opening: 2 ft x 1 ft, depth: 3 in, design load: 8000 lb, stands for: walk}
site:
  walls to cover: {item: film K1, each: 1 roll per 100 ft, hours: 2 hours per 100 ft}
  washout: {item: bag K2, hours: 1/2 hour per job}
";
    let book = BOOK.replacen("items:\n", items, 1);
    book.replacen("  step: 5 hours per piece\n", rates, 1) + rules
}

fn job(boxes: &str, rest: &str) -> String {
    format!(
        "customer: Ira Sample\nquoted: 2026-05-04\nslabs:\n  driveway:\n    size: 20 ft x 16 ft\n{boxes}{rest}"
    )
}

#[track_caller]
fn view(job: &str, business: &str) -> QuoteView {
    desk(job, business, &book()).view()
}

fn said(view: &QuoteView, word: &str) -> String {
    let row = view.scope.iter().find(|row| row.word == word);
    row.map(|row| row.text.replace('\u{a0}', " "))
        .unwrap_or_default()
}

const BOXES: &str = "    boxes:
      - cleanout 8 in: 4 ft from west and 3 ft from south
      - gas valve: {box: valve box, at: 10 ft from west and 8 ft from north, lid: on order, isolated: yes}
      - water meter: {box: valve box, at: 4 ft from east and 4 ft from north, lid: theirs}
      - old cover: {box: valve box, at: 4 ft from east and 4 ft from south, adjust: raise 2 in}
";

#[test]
fn every_box_brings_its_pieces_its_hours_and_its_trip() {
    #[track_caller]
    fn case(offer: &flatwork::inside::costing::Offer, name: &str, wanted: rust_decimal::Decimal) {
        assert_eq!(value(offer, name), wanted, "{name}");
    }
    let in_one = BUSINESS.replacen(
        "  people: 3\n",
        "  people: 3\n  count days: by the job\n",
        1,
    );
    let offer = Shop::new(&in_one, &book()).offer(&job(BOXES, ""));
    case(&offer, "cleanout 8 in boxes", dec!(1));
    // Two of them are bought, and the third stays where it is.
    case(&offer, "valve box boxes", dec!(2));
    case(&offer, "valve box lids set later", dec!(1));
    case(&offer, "valve box temporary lids", dec!(1));
    case(&offer, "valve box rings", dec!(1));
    case(&offer, "set box hours", dec!(2.25));
    case(&offer, "adjust box hours", dec!(1));
    case(&offer, "set lid hours", dec!(0.25));
    case(&offer, "come back hours", dec!(1));
    case(&offer, "driveway gas valve opening", dec!(1.5));
    case(&offer, "driveway gas valve strip", dec!(5));
    // 1.5 sq ft × 5 in ÷ 324.
    let displaced = dec!(7.5) / dec!(324);
    case(&offer, "driveway gas valve displaced", displaced);
    let needs = &offer.quoted().needs.needs;
    let named = |name: &str| needs.iter().any(|need| need.quantity.name() == name);
    assert!(!named("valve box lids"), "its owner brings that one");
}

/// Coming back has trips of its own there, so none is added for the lids.
#[test]
fn a_trip_to_set_lids_is_counted_once_however_days_are_counted() {
    let by_job = BUSINESS.replacen(
        "  people: 3\n",
        "  people: 3\n  count days: by the job\n",
        1,
    );
    let by_job = Shop::new(&by_job, &book()).offer(&job(BOXES, ""));
    let by_stage = Shop::new(BUSINESS, &book()).offer(&job(BOXES, ""));
    let back = |offer: &flatwork::inside::costing::Offer| {
        let tasks = &offer.quoted().needs.crew.tasks;
        tasks.iter().filter(|task| task.name == "come back").count()
    };
    assert_eq!((back(&by_job), back(&by_stage)), (1, 0));
    assert_eq!(value(&by_stage, "trips to set lids"), dec!(1));
}

#[test]
fn only_a_box_of_two_square_feet_is_taken_off_the_concrete() {
    let shop = Shop::new(BUSINESS, &book());
    let whole = dec!(320) * dec!(5) / dec!(324);
    let small = "    boxes:\n      - valve box: 8 ft from west and 8 ft from south\n";
    let just = "    boxes:\n      - vault: 8 ft from west and 8 ft from south\n";
    let concrete = |boxes: &str| value(&shop.offer(&job(boxes, "")), "driveway concrete");
    assert_eq!(concrete(""), whole);
    assert_eq!(concrete(small), whole);
    assert_eq!(concrete(just), whole - dec!(10) / dec!(324));
    // The owner's own limit counts instead.
    let business = BUSINESS.replacen("order:\n", "order:\n  smallest opening: 1 sq ft\n", 1);
    assert_ne!(business, BUSINESS);
    let offer = Shop::new(&business, &book()).offer(&job(small, ""));
    assert_eq!(
        value(&offer, "driveway concrete"),
        whole - dec!(7.5) / dec!(324)
    );
}

#[test]
fn a_slab_that_a_choice_changes_keeps_its_boxes() {
    let options = "options:\n  - Smooth: {change: {driveway: {finish: trowel}}}\n";
    let offer = Shop::new(BUSINESS, &book()).offer(&job(BOXES, options));
    for priced in offer.by_choice.values() {
        let bought = priced.needs.needs.iter().map(|need| need.quantity.name());
        let of_boxes: Vec<&str> = bought.filter(|name| name.contains("box")).collect();
        assert!(
            of_boxes.contains(&"valve box lids set later"),
            "{of_boxes:?}"
        );
    }
    assert_eq!(offer.by_choice.len(), 2);
}

/// A cover that is there already is raised and keeps its lid, whatever is said of lids.
#[test]
fn a_raised_cover_waits_for_no_lid() {
    let boxes = with(
        BOXES,
        &[("adjust: raise 2 in", "adjust: raise 2 in, lid: on order")],
    );
    let (one, other) = (
        view(&job(BOXES, ""), BUSINESS),
        view(&job(&boxes, ""), BUSINESS),
    );
    assert_eq!(said(&one, "Set"), said(&other, "Set"));
    let hours = |boxes: &str| {
        let offer = Shop::new(BUSINESS, &book()).offer(&job(boxes, ""));
        offer.quoted().totals()
    };
    assert_eq!(hours(BOXES), hours(&boxes));
}

#[test]
fn the_customer_reads_loads_and_lids_and_no_item_of_the_book() {
    let view = view(&job(BOXES, ""), BUSINESS);
    assert_eq!(
        said(&view, "Set"),
        "cleanout, maker's rating 20,800 lb; gas valve, maker's design load 22,500 lb; water meter, maker's design load 22,500 lb; old cover raised 2 in; a temporary lid stands on the gas valve until the one on order comes; we come back to set it"
    );
    let theirs = "For the water meter: the lid, which its owner brings";
    assert!(view.not_included.iter().any(|line| line == theirs));
    let shown = serde_json::to_string(&view).unwrap();
    for secret in ["K7", "K8", "K9", "Tier"] {
        assert!(!shown.contains(secret), "{secret}");
    }
}

#[test]
fn an_answer_brings_a_price_an_exclusion_or_a_release() {
    let site = "site: {walls to cover: 124 ft, washout: hauled, truck over: driveway and septic tank, lawn crossed: 40 ft, other heights: 1 in, cars near: yes}\n";
    let offer = Shop::new(BUSINESS, &book()).offer(&job("", site));
    // 1.24 rolls are two; 124 ft at two hours the hundred.
    assert_eq!(value(&offer, "site walls to cover"), dec!(2));
    assert_eq!(value(&offer, "site walls to cover hours"), dec!(2.48));
    assert_eq!(value(&offer, "site washout"), dec!(1));
    assert_eq!(value(&offer, "site washout hours"), dec!(0.5));
    let view = view(&job("", site), BUSINESS);
    assert_eq!(
        said(&view, "Site"),
        "wash water of the truck hauled away; walls and windows covered, 124 ft"
    );
    for line in [
        "Mending the lawn where we cross it",
        "Bringing what lies beside to the new height; it is 1\u{a0}in off",
    ] {
        assert!(view.not_included.iter().any(|one| one == line), "{line}");
    }
    let cars = "Cars stand well away while we work";
    assert!(view.assumptions.iter().any(|one| one == cars));
    let words: Vec<&str> = view.releases.iter().map(|one| one.word.as_str()).collect();
    assert_eq!(words, ["Driveway", "Septic tank"]);
}

#[test]
fn what_nobody_answered_is_counted_on_in_two_lines_at_most() {
    let open = |rest: &str, business: &str| view(&job("", rest), business).assumptions;
    let usual = open("", BUSINESS);
    let one = "No hanging wires or sprinkler lines in our way";
    assert_eq!(usual.iter().filter(|line| *line == one).count(), 1);
    // Answered, one of them is no longer open.
    let answered = open("site: {sprinklers: no}\n", BUSINESS);
    assert!(
        answered
            .iter()
            .any(|line| line == "No hanging wires in our way")
    );
    assert_eq!(usual.len(), answered.len());
    let none = open("", &format!("{BUSINESS}site: {{ask: []}}\n"));
    assert_eq!(none.len() + 1, usual.len());
    let all = "truck over, overhead wires, sprinklers, lawn crossed, other heights, cars near, washout, walls to cover, backfill, lines marked";
    let all = open("", &format!("{BUSINESS}site: {{ask: [{all}]}}\n"));
    assert_eq!(all.len(), none.len() + 2, "{all:?}");
}

#[test]
fn the_usual_answer_holds_until_the_takeoff_gives_another() {
    let business = format!("{BUSINESS}site: {{washout: hauled}}\n");
    let hauled = "wash water of the truck hauled away";
    assert_eq!(said(&view(&job("", ""), &business), "Site"), hauled);
    let own = view(&job("", "site: {washout: on site}\n"), &business);
    assert_eq!(said(&own, "Site"), "");
}

#[test]
fn what_is_left_alone_is_told() {
    let view = view(
        &job("", "left alone: [\"light post base, overlaid 1 in\"]\n"),
        BUSINESS,
    );
    let told = "Left as it is: light post base, overlaid 1 in";
    assert!(view.not_included.iter().any(|line| line == told));
}
