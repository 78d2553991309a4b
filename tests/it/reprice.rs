//! Quotes at other prices: what is on record, what is signed, and what adds up.

use std::path::Path;

use flatwork::values::Money;
use serde_json::Value;

use crate::records::{Firm, firm};

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
        assert_eq!(one["old total"], one["new total"], "{one}");
        assert_eq!(one["old cost"], one["new cost"]);
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
        let more = money(&one["new cost"]) - money(&one["old cost"]);
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
        assert_eq!(sum, money(&one["new total"]) - money(&one["old total"]));
    }
    assert_eq!(money(&answer["open quotes cost more by"]), open);
    assert_eq!(money(&answer["signed work costs more by"]), signed);
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
    let price: rust_decimal::Decimal = one["room"][0]["to the floor"]
        .as_str()
        .unwrap()
        .parse()
        .unwrap();
    let cent = rust_decimal::Decimal::new(1, 2);
    for (price, stands) in [(price, true), (price + cent, false)] {
        let line = format!("reprice --on 2026-05-07 --what-if ready-mix={price}");
        let answer = asked(&firm, &line);
        let verdict = &quote(&answer, "2026-0041")["verdict"];
        let margin = &quote(&answer, "2026-0041")["margin held"];
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
