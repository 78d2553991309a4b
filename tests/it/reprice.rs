//! Quotes at other prices: what is on record, what is signed, and what adds up.

use std::path::Path;

use flatwork::inside::values::Money;
use serde_json::Value;

use crate::records::{Firm, firm};
use crate::support::with;

fn asked(firm: &Firm, line: &str) -> Value {
    serde_json::from_str(&firm.done(&format!("{line} --format json"))).unwrap()
}

fn money(value: &Value) -> Money {
    value
        .as_str()
        .unwrap()
        .parse::<Money>()
        .or_else(|_| {
            // A fall begins with a minus, which no amount that is typed in has.
            let text = value.as_str().unwrap().trim_start_matches('-');
            text.parse::<Money>().map(|money| Money::ZERO - money)
        })
        .unwrap()
}

/// Three quotes on record in spring; the second is signed.
fn three(name: &str) -> Firm {
    let firm = firm(name);
    for job in ["one", "two", "three"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    firm.done("accept 2026-0042 --by 'Dana Example' --on 2026-05-06");
    firm
}

fn quote<'a>(answer: &'a Value, number: &str) -> &'a Value {
    let quotes = answer["quotes"].as_array().unwrap();
    quotes.iter().find(|one| one["number"] == number).unwrap()
}

#[test]
fn the_same_book_changes_nothing() {
    let firm = three("reprice-same");
    let answer = asked(&firm, "reprice --on 2026-05-07");
    let quotes = answer["quotes"].as_array().unwrap();
    assert_eq!(quotes.len(), 3);
    for one in quotes {
        assert_eq!(one["old_total"], one["new_total"], "{one}");
        assert_eq!(one["old_cost"], one["new_cost"]);
        assert_eq!(one["causes"].as_array().unwrap().len(), 0);
    }
    assert_eq!(
        firm.done("reprice --on 2026-05-07"),
        firm.done("reprice --on 2026-05-07")
    );
}

#[test]
fn a_rise_in_the_book_reaches_each_record_and_adds_up() {
    let firm = three("reprice-rise");
    firm.done("book set ready-mix 200 --from 2026-05-01 --book book.yaml");
    firm.done("book set labor 52 --from 2026-05-01 --book book.yaml");
    let answer = asked(&firm, "reprice --on 2026-05-07");
    let quotes = answer["quotes"].as_array().unwrap();
    assert_eq!(quotes.len(), 3);
    let (mut open, mut signed) = (Money::ZERO, Money::ZERO);
    let mut before = None;
    for one in quotes {
        let more = money(&one["new_cost"]) - money(&one["old_cost"]);
        assert!(Money::ZERO < more, "{one}");
        assert!(
            before.is_none_or(|before| more <= before),
            "the worst is first"
        );
        before = Some(more);
        if one["state"] == "signed" {
            signed = signed + more;
        } else {
            open = open + more;
        }
        let causes = one["causes"].as_array().unwrap().iter();
        let sum: Money = causes.map(|cause| money(&cause["by"])).sum();
        assert_eq!(sum, money(&one["new_total"]) - money(&one["old_total"]));
    }
    assert_eq!(money(&answer["open_quotes_cost_more_by"]), open);
    assert_eq!(money(&answer["signed_work_costs_more_by"]), signed);
    assert_eq!(
        quote(&answer, "2026-0042")["verdict"],
        "signed: yours to bear"
    );
    let later = asked(&firm, "reprice --on 2026-12-01");
    let numbers: Vec<&str> = later["quotes"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(|one| one["number"].as_str())
        .collect();
    assert!(!numbers.contains(&"2026-0042"), "it was poured long ago");
    assert_eq!(
        quote(&later, "2026-0041")["verdict"],
        "expired: quote it again"
    );
}

#[test]
fn what_is_over_is_not_asked() {
    let firm = three("reprice-over");
    firm.done("decline 2026-0041 --because 'too dear' --on 2026-05-07");
    firm.done("withdraw 2026-0043 --because 'no time' --on 2026-05-07");
    let answer = asked(&firm, "reprice --on 2026-05-08");
    assert_eq!(answer["quotes"].as_array().unwrap().len(), 1);
}

#[test]
fn the_room_stands_at_its_last_cent_and_not_at_the_next() {
    let firm = three("reprice-room");
    let answer = asked(&firm, "reprice --on 2026-05-07 --room ready-mix");
    let one = quote(&answer, "2026-0041");
    let price: rust_decimal::Decimal = one["room"][0]["to_the_floor"]
        .as_str()
        .unwrap()
        .parse()
        .unwrap();
    let cent = rust_decimal::Decimal::new(1, 2);
    for (price, stands) in [(price, true), (price + cent, false)] {
        let line = format!("reprice --on 2026-05-07 --what-if ready-mix={price}");
        let answer = asked(&firm, &line);
        let verdict = &quote(&answer, "2026-0041")["verdict"];
        let margin = &quote(&answer, "2026-0041")["margin_held"];
        assert_eq!(
            verdict == "hold the price",
            stands,
            "{price} {verdict} {margin}"
        );
    }
}

#[test]
fn a_hold_is_honoured_and_its_end_is_named() {
    let firm = three("reprice-hold");
    let path = firm.path("book.yaml");
    let book = std::fs::read_to_string(&path).unwrap();
    let held = "holds: [{item: ready-mix, price: 160.00, until: 2026-05-20}]\nmixes:";
    std::fs::write(&path, book.replacen("mixes:", held, 1)).unwrap();
    let line = "reprice one.yaml --on 2026-05-04 --what-if ready-mix=+8%";
    let answer = asked(&firm, line);
    let one = &answer["quotes"][0];
    let notes = one["notes"].to_string();
    assert!(
        notes.contains("the hold on ready-mix ends 2026-05-20"),
        "{one}"
    );
}

#[test]
fn a_wrong_name_suggests_the_near_one() {
    let firm = firm("reprice-wrong");
    for line in [
        "reprice one.yaml --what-if ready-mixx=+8%",
        "book set ready-mixx 170 --from 2026-05-01 --book book.yaml",
    ] {
        let said = firm.refused(line, "unknown-price-item");
        assert!(said.contains("did you mean `ready-mix`?"), "{said}");
    }
}

#[test]
fn set_writes_the_price_and_a_dry_run_does_not() {
    let firm = firm("reprice-set");
    let path = firm.path("book.yaml");
    let read = |path: &Path| std::fs::read_to_string(path).unwrap();
    let before = read(&path);
    let line = "book set labor 52 --from 2026-05-01 --book book.yaml";
    let shown = firm.done(&format!("{line} --dry-run"));
    assert_eq!(read(&path), before);
    assert!(shown.contains("2026-05-01: 52.00"), "{shown}");
    // A mark at the front of the file stays.
    std::fs::write(&path, format!("\u{feff}{before}")).unwrap();
    firm.done(line);
    let wanted = before.replace(
        "2026-01-01: 50.00}}\nmixes",
        "2026-01-01: 50.00, 2026-05-01: 52.00}}\nmixes",
    );
    assert_eq!(read(&path), format!("\u{feff}{wanted}"));
    assert!(firm.done(line).contains("has this price"));
}

/// Two slabs on two days; the first pour comes before the rise, the second after it.
const TWO_DAYS: &str = "customer: Lee Invented, Quillhaven
slabs:
  front: {kind: slab, size: 20 ft x 10 ft}
  back: {kind: slab, size: 12 ft x 9 ft}
pour:
  - {day: 2026-06-10, slabs: [front]}
  - {day: 2026-06-20, slabs: [back]}
";

/// A book with one more item that nobody buys sells otherwise, so every job is laid out by it:
/// the short way by the frozen lines has to say the very same.
#[test]
fn the_short_way_says_what_the_long_way_says() {
    let firm = three("reprice-ways");
    std::fs::write(firm.path("four.yaml"), TWO_DAYS).unwrap();
    firm.done("quote four.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --with 'Mesh in it' --on 2026-05-06");
    firm.done("book set ready-mix 200 --from 2026-06-15 --book book.yaml");
    firm.done("book set labor 52 --from 2026-05-01 --book book.yaml");
    let line = "reprice --on 2026-05-07 --room ready-mix";
    let short = firm.done(&format!("{line} --format json"));
    let path = firm.path("book.yaml");
    let book = std::fs::read_to_string(&path).unwrap();
    let item = "  unused: {unit: piece, class: material, prices: {2026-01-01: 1.00}}\nmixes:";
    std::fs::write(&path, book.replacen("mixes:", item, 1)).unwrap();
    assert_eq!(firm.done(&format!("{line} --format json")), short);
    // Only the second pour's concrete went up.
    let answer: Value = serde_json::from_str(&short).unwrap();
    let causes = quote(&answer, "2026-0044")["causes"].as_array().unwrap();
    let concrete: Vec<&Value> = causes
        .iter()
        .filter(|cause| cause["group"] == "prices" && cause["class"] == "material")
        .collect();
    assert_eq!(concrete.len(), 1, "{causes:#?}");
    // Takeoffs go the long way as well as the short one.
    let takeoffs = "reprice four.yaml one.yaml --on 2026-05-04 --what-if ready-mix=+8%";
    let short = firm.done(&format!("{takeoffs} --why"));
    std::fs::write(
        firm.path("other.yaml"),
        std::fs::read_to_string(&path).unwrap() + "# else\n",
    )
    .unwrap();
    assert_eq!(
        firm.done(&format!("{takeoffs} --why --book other.yaml")),
        short
    );
}

#[test]
fn the_order_of_the_files_does_not_matter() {
    let firm = firm("reprice-order");
    let asked = |files: &str| {
        let line = "--on 2026-05-04 --what-if ready-mix=+8% --why";
        firm.done(&format!("reprice {files} {line}"))
    };
    let all = asked("one.yaml two.yaml three.yaml");
    assert_eq!(all, asked("three.yaml one.yaml two.yaml"));
    assert_eq!(all, asked("."));
}

/// The names tell it: what is not opened may even be torn.
#[test]
fn a_job_with_its_final_invoice_is_not_opened() {
    let firm = three("reprice-billed");
    firm.done("invoice 2026-0042 --final --on 2026-05-08");
    let torn = firm.path("records/2026-0042.01.quote.json");
    let whole = std::fs::read_to_string(&torn).unwrap();
    std::fs::write(&torn, "{").unwrap();
    let answer = asked(&firm, "reprice --on 2026-05-09");
    assert_eq!(answer["quotes"].as_array().unwrap().len(), 2);
    assert_eq!(answer["left_out"].as_array().unwrap().len(), 0);
    std::fs::write(&torn, whole).unwrap();
    firm.done("void 2026-0042 1 --because 'wrong day' --on 2026-05-09");
    let answer = asked(&firm, "reprice --on 2026-05-09");
    assert_eq!(quote(&answer, "2026-0042")["state"], "signed");
}

#[test]
fn a_clause_passes_on_what_lies_beyond_it() {
    let firm = firm("reprice-clause");
    let path = firm.path("business.yaml");
    let business = std::fs::read_to_string(&path).unwrap();
    let clause = "escalation: {index: the list of the state, reference: 178.00, over: 5%}\n";
    std::fs::write(&path, business + clause).unwrap();
    firm.done("quote two.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --by 'Dana Example' --on 2026-05-06");
    firm.done("book set ready-mix 220 --from 2026-05-10 --book book.yaml");
    let verdict = |line: &str| {
        let answer = asked(&firm, &format!("reprice --on 2026-05-11 {line}"));
        quote(&answer, "2026-0041")["verdict"]
            .as_str()
            .unwrap()
            .to_owned()
    };
    assert_eq!(verdict(""), "signed: yours to bear but for its clause");
    let told = firm.done("escalate 2026-0041 --index 200 --on 2026-05-11");
    let amount = told
        .lines()
        .find_map(|line| line.strip_prefix("comes to    "))
        .unwrap();
    let amount = amount.trim_end_matches(" before tax");
    let wanted = format!("signed: {amount} is passed on by its clause");
    assert_eq!(verdict("--index 200"), wanted);
    assert_eq!(verdict("--index 178"), "signed: yours to bear");
}

/// A truck that carries less needs another trip, and a job that gets cheap meets the minimum.
#[test]
fn a_load_more_and_the_minimum_job_are_named() {
    let firm = firm("reprice-crossed");
    let read = |name: &str| std::fs::read_to_string(firm.path(name)).unwrap();
    let item = "  delivery: {unit: load, class: fee, prices: {2026-01-01: 30.00}}\nmixes:";
    let book = with(
        &read("book.yaml"),
        &[("mixes:", item), ("delivery: none", "delivery: delivery")],
    );
    let path = firm.path("book.yaml");
    std::fs::write(&path, &book).unwrap();
    let minimum = (
        "margin floor: 15%",
        "margin floor: 15%, minimum job: 600.00",
    );
    let business = with(&read("business.yaml"), &[minimum]);
    std::fs::write(firm.path("business.yaml"), business).unwrap();
    for job in ["one", "two", "three"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    let notes = |number: &str, line: &str| {
        let answer = asked(&firm, &format!("reprice --on 2026-05-07 {line}"));
        quote(&answer, number)["notes"].to_string()
    };
    assert_eq!(notes("2026-0041", ""), "[]");
    std::fs::write(&path, with(&book, &[("truck: 9 cu yd", "truck: 3 cu yd")])).unwrap();
    let said = notes("2026-0041", "");
    assert!(said.contains("1 load before, 2 loads now"), "{said}");
    std::fs::write(&path, book).unwrap();
    let said = notes("2026-0043", "--what-if ready-mix=1.00 --what-if labor=1.00");
    assert!(said.contains("falls below your minimum job now"), "{said}");
}

/// One quote with the same item in two lines is one quote.
#[test]
fn a_cause_counts_the_quotes_it_is_in() {
    let firm = firm("reprice-count");
    std::fs::write(firm.path("four.yaml"), TWO_DAYS).unwrap();
    firm.done("quote four.yaml --issue --on 2026-05-04");
    let said = firm.done("reprice --on 2026-05-07 --what-if ready-mix=200");
    let line = said
        .lines()
        .find(|line| line.starts_with("prices"))
        .unwrap();
    assert!(line.contains(" 1 quote "), "{line}");
}
