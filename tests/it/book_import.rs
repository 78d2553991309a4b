//! A supplier's list taken into a book: what is written, what stays, and when nothing is.

use std::fs;

use crate::records::{Firm, firm};

const MAP: &str = "columns: {article: No., price: Net, unit: UOM}\nunits: {CY: cu yd, C: 100 ft}\nitems: {RM: ready-mix, FB: form board, SL: short load}\n";
const LIST: &str = "No.,Net,UOM\nRM,$164.00,CY\nFB,78.00,C\nSL,50.00,CY\nXX,1.00,EA\n";
const LINE: &str = "book import list.csv --book book.yaml --map map.yaml --from 2026-05-15";

fn with_list(name: &str) -> Firm {
    let firm = firm(name);
    fs::write(firm.path("map.yaml"), MAP).unwrap();
    fs::write(firm.path("list.csv"), LIST).unwrap();
    firm
}

fn book(firm: &Firm) -> String {
    fs::read_to_string(firm.path("book.yaml")).unwrap()
}

/// The book as it ought to be afterwards: two prices more, and nothing else.
fn due(before: &str) -> String {
    let due = before
        .replacen(
            "2026-01-01: 160.00,",
            "2026-01-01: 160.00, 2026-05-15: 164.00,",
            1,
        )
        .replacen(
            "2026-01-01: 0.75}",
            "2026-01-01: 0.75, 2026-05-15: 0.78}",
            1,
        );
    assert_eq!(due.len(), before.len() + 20 + 18);
    due
}

#[test]
fn only_the_new_prices_are_written_and_once() {
    let firm = with_list("import-written");
    let before = book(&firm);
    let shown = firm.done(&format!("{LINE} --dry-run"));
    assert!(shown.ends_with("nothing was written\n"), "{shown}");
    assert_eq!(book(&firm), before);
    let said = firm.done(LINE);
    assert_eq!(format!("{said}nothing was written\n"), shown);
    assert_eq!(book(&firm), due(&before));
    let again = firm.done(LINE);
    assert!(
        again.contains("0 prices are new; 3 hold already"),
        "{again}"
    );
    assert_eq!(book(&firm), due(&before));
    // What was taken in is what the book says of that day.
    let old = firm.path("old.yaml");
    fs::write(&old, &before).unwrap();
    let differ = firm.done("book diff old.yaml book.yaml --on 2026-05-15");
    assert!(
        differ.contains("164.00") && differ.contains("0.78"),
        "{differ}"
    );
    assert!(!differ.contains("short load"), "{differ}");
}

#[test]
fn line_ends_comments_and_the_mark_at_the_front_stay() {
    let firm = with_list("import-bytes");
    let before = book(&firm)
        .replace("}}\n", "}}  # a: {comment}\n")
        .replace('\n', "\r\n");
    let before = format!("\u{feff}{}", before.trim_end());
    fs::write(firm.path("book.yaml"), &before).unwrap();
    // The list and the mapping come from another machine too.
    fs::write(
        firm.path("list.csv"),
        format!("\u{feff}{}", LIST.replace('\n', "\r\n")),
    )
    .unwrap();
    firm.done(LINE);
    assert_eq!(book(&firm), due(&before));
}

#[test]
fn one_bad_row_and_nothing_is_written() {
    let firm = with_list("import-refused");
    let before = book(&firm);
    for (from, to, code) in [
        ("78.00", "call", "bad-list-price"),
        ("78.00,C", "78.00,FD", "unknown-list-unit"),
        ("78.00,C", "78.00,CY", "list-unit-differs"),
        ("SL,50.00", "SL,0.00", "bad-list-price"),
        ("SL,", "SK,", "not-listed"),
        ("$164.00", "1,164.00", "too-many-cells"),
    ] {
        assert!(LIST.contains(from));
        fs::write(firm.path("list.csv"), LIST.replacen(from, to, 1)).unwrap();
        let said = firm.refused(LINE, code);
        assert!(said.contains("list.csv:") || code == "not-listed", "{said}");
        assert!(
            said.contains("1 problem found; nothing was written"),
            "{said}"
        );
        assert_eq!(book(&firm), before, "{code}");
    }
}

#[test]
fn problems_of_all_three_files_are_told_together() {
    let firm = with_list("import-all");
    let map = MAP
        .replace("ready-mix", "ready-mixx")
        .replace("short load", "labour");
    fs::write(firm.path("map.yaml"), map).unwrap();
    fs::write(firm.path("list.csv"), LIST.replace("78.00", "78,00")).unwrap();
    let said = firm.refused(LINE, "unknown-price-item");
    assert!(said.contains("did you mean `ready-mix`?"), "{said}");
    assert!(said.contains("did you mean `labor`?"), "{said}");
    assert!(said.contains("list.csv:3:"), "{said}");
    // A mapping and a book that cannot be read are told with one another.
    fs::write(firm.path("map.yaml"), MAP.replace("units", "unitz")).unwrap();
    let broken = book(&firm).replace("class: fee", "class: feee");
    fs::write(firm.path("book.yaml"), broken).unwrap();
    let said = firm.refused(LINE, "unknown-class");
    assert!(said.contains("did you mean `units`?"), "{said}");
}

#[test]
fn a_price_that_jumps_is_pointed_out_and_still_taken() {
    let firm = with_list("import-jump");
    fs::write(firm.path("list.csv"), LIST.replace("78.00", "780.00")).unwrap();
    let said = firm.done(LINE);
    assert!(said.contains("+940.0%  a ft; look again"), "{said}");
    assert!(said.contains("more often a slip than a price"), "{said}");
    assert!(book(&firm).contains("2026-05-15: 7.80}"));
}
