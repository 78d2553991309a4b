//! `book check`: each fault of a book is told with its place and what to do, or as a second look.

use std::fs;

use crate::records::{Firm, firm};
use crate::support::{FAR_BANK, RIVER_ROAD};

const LINE: &str = "book check book.yaml --on 2026-05-04";

/// A firm whose book has each of these changes.
#[track_caller]
fn with(name: &str, book: &str, changes: &[(&str, &str)]) -> Firm {
    let firm = firm(name);
    fs::write(firm.path("book.yaml"), crate::support::with(book, changes)).unwrap();
    firm
}

fn small() -> String {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/golden/common/book.yaml");
    fs::read_to_string(path).unwrap()
}

/// What `book check` says of the small book with one change, as an error.
#[track_caller]
fn refused(from: &str, to: &str, code: &str, line: usize, says: &[&str]) {
    // Tests run at the same time, each code in one of them.
    let said = with(&format!("check-{code}"), &small(), &[(from, to)]).refused(LINE, code);
    assert!(said.contains(&format!("book.yaml:{line}:")), "{said}");
    assert!(said.contains("1 problem found"), "{said}");
    for part in says {
        assert!(said.contains(part), "no `{part}` in\n{said}");
    }
}

#[test]
fn a_price_below_zero_is_an_error_with_its_place() {
    let help = "a number below zero has no meaning here; write `0.75`";
    refused("0.75}", "-0.75}", "bad-amount", 9, &["`-0.75`", help]);
    let held = "holds: [{item: ready-mix, price: -3.00, until: 2026-06-30}]\nmixes:";
    refused(
        "mixes:",
        held,
        "bad-amount",
        11,
        &["`-3.00`", "write `3.00`"],
    );
    let wage = "{2026-01-01: {wage: -40.00, burden: 20%}}";
    refused(
        "{2026-01-01: 50.00}}\nmixes",
        &format!("{wage}}}\nmixes"),
        "bad-amount",
        10,
        &["`-40.00`"],
    );
}

#[test]
fn a_day_with_two_prices_is_an_error_however_it_is_spelt() {
    for day in ["2026-01-01", "\"2026-01-01\"", "' 2026-01-01'"] {
        let twice = format!("0.75, {day}: 0.80}}");
        refused(
            "0.75}",
            &twice,
            "duplicate-key",
            9,
            &["`2026-01-01` is written twice", "keep one of the two"],
        );
    }
    let ends =
        "holds: [{item: ready-mix, price: 3.00, from: 2026-06-01, until: 2026-05-01}]\nmixes:";
    refused(
        "mixes:",
        ends,
        "dates-reversed",
        11,
        &["check `from` and `until`"],
    );
}

#[test]
fn an_item_without_a_price_is_an_error_whatever_else_is_wrong() {
    let help = "write the day it begins and the price";
    refused("{2026-01-01: 0.75}", "{}", "no-prices", 9, &[help]);
    refused(
        ", prices: {2026-01-01: 0.75}",
        "",
        "missing-key",
        9,
        &["`prices: {2026-03-01: 34.50}`"],
    );
    let two = [("{2026-01-01: 0.75}", "{}"), ("12.00}", "twelve}")];
    let said = with("check-two", &small(), &two).refused(LINE, "no-prices");
    assert!(
        said.contains("error[bad-amount]") && said.contains("2 problems found"),
        "{said}"
    );
}

/// The owner's own number in the right unit; what is hired by the day goes by pours.
#[test]
fn a_rule_in_another_unit_shows_what_the_owner_meant() {
    #[track_caller]
    fn case(rule: &str, says: &str) {
        let items = "items:\n  stone: {unit: ton, class: material, prices: {2026-01-01: 30.00}}\n  truck: {unit: load, class: equipment, prices: {2026-01-01: 90.00}}";
        let also = format!("also:\n  trucks: {{buy: truck, {rule}}}\nmixes:");
        let changes = [("items:", items), ("mixes:", also.as_str())];
        let said = with("check-own-unit", &small(), &changes).refused(LINE, "wrong-unit");
        assert!(said.contains(says), "no `{says}` in\n{said}");
    }
    case("for: stone, each: 24000 lb", "write, for example, `12 ton`");
    case("for: stone, each: 5 ft", "write, for example, `12 ton`");
    case("for: stone, each: 1 ton, over: 5000 lb", "`2.5 ton`");
    case(
        "for: joints, each: 1 day",
        "write `once a: pour` in place of `for`",
    );
    case("for: joints, each: 600 in", "`50 ft`");
}

/// Whatever unit an item has by which its purpose cannot be counted, the book says so itself;
/// what was bought would else be labelled with the item's unit and paid by it.
#[test]
fn an_item_by_another_unit_than_its_purpose_is_an_error() {
    refused(
        "form board: {unit: ft",
        "form board: {unit: ton",
        "wrong-unit",
        23,
        &["cannot count `forms`", "give the item the unit `ft`"],
    );
    let (mut found, mut fitting) = (0, 0);
    for (name, book) in [("check-river", RIVER_ROAD), ("check-far", FAR_BANK)] {
        let named: Vec<&str> = book
            .lines()
            .filter_map(|line| line.strip_prefix("  ")?.strip_suffix(':'))
            .filter(|key| !key.starts_with(' '))
            .collect();
        for item in named {
            let head = format!("\n  {item}:\n");
            let at = book.find(&head).unwrap();
            let rest = &book[at..];
            let Some(unit) = rest.find("    unit: ").filter(|unit| *unit < 200) else {
                continue;
            };
            let end = unit + rest[unit..].find('\n').unwrap();
            let psi = format!(
                "{}{}    unit: psi{}",
                &book[..at],
                &rest[..unit],
                &rest[end..]
            );
            let firm = with(name, &psi, &[]);
            let output = firm.run(LINE);
            let wrong = String::from_utf8(output.stderr).unwrap();
            let said = String::from_utf8(output.stdout).unwrap();
            if wrong.contains("error[wrong-unit]") {
                found += 1;
            } else {
                // Only what no rule buys may be sold by anything.
                assert!(
                    said.contains(&format!("{item}: no rule of the book buys it")),
                    "{name} {item}\n{said}{wrong}"
                );
                fitting += 1;
            }
        }
    }
    assert!(80 < found && 5 < fitting, "{found} {fitting}");
}

#[test]
fn what_is_worth_a_second_look_is_told_in_a_sentence() {
    #[track_caller]
    fn case(from: &str, to: &str, says: &str) {
        let said = with("check-looks", &small(), &[(from, to)]).done(LINE);
        assert_eq!(
            said.lines().skip(2).collect::<Vec<_>>(),
            [says],
            "{from} -> {to}"
        );
    }

    case(
        "2026-01-01: 0.75",
        "2026-05-05: 0.75",
        "form board: no price has begun by this day",
    );
    case(
        "2026-01-01: 0.75",
        "2026-01-01: 0.00",
        "form board: the price is nothing",
    );
    case(
        "2026-01-01: 0.75",
        "2025-05-03: 0.75",
        "form board: the price is from 2025-05-03, more than a year old; ask for a new one",
    );
    let spare = "  spare: {unit: ft, class: material, prices: {2026-01-01: 1.00}}\nmixes:";
    case(
        "mixes:",
        spare,
        "spare: no rule of the book buys it; only a takeoff that names it does",
    );
    case(
        "\nitems:",
        "\ngood until: 2026-05-03\nitems:",
        "the whole book was good until 2026-05-03",
    );
    let past = "holds: [{item: ready-mix, price: 3.00, until: 2026-05-03}]\nmixes:";
    case("mixes:", past, "ready-mix: the hold ended on 2026-05-03");
    let two = "holds:\n  - {item: ready-mix, price: 3.00, until: 2026-06-30}\n  - {item: ready-mix, price: 4.00, from: 2026-06-30, until: 2026-07-31}\nmixes:";
    case(
        "mixes:",
        two,
        "ready-mix: two holds cover 2026-06-30; the later one in the book counts",
    );
    // The last day of each is still good, and a year is not yet old.
    for (from, to) in [
        ("2026-01-01: 0.75", "2025-05-04: 0.75"),
        ("2026-01-01: 0.75", "2026-05-04: 0.75"),
        ("\nitems:", "\ngood until: 2026-05-04\nitems:"),
        ("mixes:", &past.replace("05-03", "05-04")),
        (
            "mixes:",
            &two.replace("from: 2026-06-30", "from: 2026-07-01"),
        ),
    ] {
        case(from, to, "Nothing to look at.");
    }
}
