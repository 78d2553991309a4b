//! Edits of books by hand; `tests/it/properties/book_edits.rs` makes a thousand by chance.

use super::*;
use crate::input::book;
use crate::reading::{Problems, Sources, yaml};

const REST: &str = "book: Small\nsupply: {}\nuse: {}\nrates: {}\n";

fn read(text: &str) -> (Node, PriceBook) {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("book.yaml", text.to_owned());
    let node = yaml::read(id, &sources, &mut problems).unwrap();
    let found = book::read(&node, &mut Problems::default()).unwrap();
    (node, found)
}

fn set(text: &str, item: &str, day: &str, price: &str) -> Result<Option<Edit>, Problem> {
    let (node, book) = read(text);
    let (day, price) = (day.parse().unwrap(), price.parse().unwrap());
    set_price(text, &node, &book, item, day, price)
}

fn wanted(item: &str, day: &str, price: &str) -> Wanted {
    Wanted {
        item: item.to_owned(),
        day: day.parse().unwrap(),
        price: price.parse().unwrap(),
    }
}

fn book(items: &str) -> String {
    format!("{REST}items:\n{items}")
}

#[test]
fn a_price_is_written_as_its_neighbours_are() {
    #[track_caller]
    fn case(before: &str, day: &str, after: &str) {
        let text = book(before);
        let edit = set(&text, "stone", day, "36.5").unwrap().unwrap();
        assert_eq!(made(&text, &[edit]), book(after));
    }

    let braces = "  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}} # ours\n";
    case(
        braces,
        "2026-09-01",
        "  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50, 2026-09-01: 36.50}} # ours\n",
    );
    case(
        braces,
        "2026-03-01",
        "  stone: {unit: ton, class: material, prices: {2026-03-01: 36.50}} # ours\n",
    );
    case(
        braces,
        "2026-01-01",
        "  stone: {unit: ton, class: material, prices: {2026-01-01: 36.50, 2026-03-01: 34.50}} # ours\n",
    );
    let block = "  stone:\n    unit: ton\n    class: material\n    prices:\n      2026-03-01: 34.50   # spring\n      # autumn follows\n";
    case(
        block,
        "2026-09-01",
        "  stone:\n    unit: ton\n    class: material\n    prices:\n      2026-03-01: 34.50   # spring\n      2026-09-01: 36.50\n      # autumn follows\n",
    );
    case(
        block,
        "2026-01-01",
        "  stone:\n    unit: ton\n    class: material\n    prices:\n      2026-01-01: 36.50\n      2026-03-01: 34.50   # spring\n      # autumn follows\n",
    );
}

#[test]
fn an_hour_of_wage_and_burden_keeps_its_braces() {
    let text = book(
        "  hour: {unit: hour, class: labor, prices: {2026-03-01: {wage: 30.00, burden: 20%}}}\n",
    );
    let edit = set(&text, "hour", "2026-09-01", "40").unwrap().unwrap();
    assert!(made(&text, &[edit]).contains("burden: 20%}, 2026-09-01: 40.00}}"));
    let refused = set(&text, "hour", "2026-03-01", "40");
    assert_eq!(
        refused.map_err(|problem| problem.code),
        Err("wage-not-price")
    );
}

#[test]
fn a_price_that_stands_for_two_items_is_seen() {
    let text = book(
        "  stone: {unit: ton, class: material, prices: {2026-03-01: &same 34.50}}\n  sand: {unit: ton, class: material, prices: {2026-03-01: *same}}\n",
    );
    let edit = set(&text, "stone", "2026-03-01", "40").unwrap().unwrap();
    let (old, _) = read(&text);
    let after = made(&text, &[edit]);
    assert!(!holds(&old, &after, &[wanted("stone", "2026-03-01", "40")]));
}

#[test]
fn what_is_written_is_what_was_wanted_and_nothing_more() {
    let text = book("  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}\n");
    let edit = set(&text, "stone", "2026-05-01", "40").unwrap().unwrap();
    let (old, _) = read(&text);
    let after = made(&text, &[edit]);
    assert!(holds(&old, &after, &[wanted("stone", "2026-05-01", "40")]));
    for other in [
        wanted("stone", "2026-05-01", "41"),
        wanted("stone", "2026-05-02", "40"),
        wanted("sand", "2026-05-01", "40"),
    ] {
        assert!(!holds(&old, &after, &[other]));
    }
    assert!(!holds(&old, &after, &[]));
}

#[test]
fn several_changes_are_made_and_shown_in_order() {
    let text = book(
        "  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}\n  sand:\n    unit: ton\n    class: material\n    prices:\n      2026-03-01: 20.00 # yard\n",
    );
    let edits: Vec<Edit> = [
        ("stone", "2026-03-01", "35"),
        ("stone", "2026-05-01", "40"),
        ("sand", "2026-05-01", "22"),
        ("sand", "2026-06-01", "23"),
    ]
    .iter()
    .map(|(item, day, price)| set(&text, item, day, price).unwrap().unwrap())
    .collect();
    assert_eq!(
        lines(&text, &edits),
        "    6 -   stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}\n    6 +   stone: {unit: ton, class: material, prices: {2026-03-01: 35.00, 2026-05-01: 40.00}}\n   12 +       2026-05-01: 22.00\n   13 +       2026-06-01: 23.00\n"
    );
    assert!(
        made(&text, &edits)
            .ends_with("20.00 # yard\n      2026-05-01: 22.00\n      2026-06-01: 23.00\n")
    );
}
