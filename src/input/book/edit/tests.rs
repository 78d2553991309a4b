//! Edits of whole books: by hand, and of a thousand made by chance.

use super::*;
use crate::input::book;
use crate::reading::{Problems, Sources, yaml};

const REST: &str = "format: 1\nbook: By chance\n";

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

fn book(items: &str) -> String {
    format!("{REST}items:\n{items}")
}

#[test]
fn a_price_is_written_as_its_neighbours_are() {
    #[track_caller]
    fn case(before: &str, day: &str, after: &str) {
        let text = book(before);
        let edit = set(&text, "stone", day, "36.5").unwrap().unwrap();
        assert_eq!(edit.made(&text), book(after));
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
    assert!(
        edit.made(&text)
            .contains("burden: 20%}, 2026-09-01: 40.00}}")
    );
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
    let (new, _) = read(&edit.made(&text));
    assert!(!only_this(
        &old,
        &new,
        "stone",
        "2026-03-01".parse().unwrap()
    ));
}

/// A small generator, the same on every machine.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most
    }

    fn pick<'a>(&mut self, from: &[&'a str]) -> &'a str {
        let most = u64::try_from(from.len()).unwrap();
        from[usize::try_from(self.below(most)).unwrap()]
    }
}

#[expect(clippy::format_push_string, reason = "a test's text is short")]
/// Items in braces, half in braces or in blocks, with comments, blank lines and any line break.
fn by_chance(chance: &mut Chance) -> String {
    let mut text = REST.to_owned() + "items:   # what is sold\n";
    for i in 0..=chance.below(5) {
        let months: Vec<u64> = (1..=12).filter(|_| chance.below(4) == 0).collect();
        let months = if months.is_empty() { vec![3] } else { months };
        let comment = chance.pick(&["", "  # é, said the yard", " # a: {b}", "   "]);
        let dated: Vec<String> = months
            .iter()
            .map(|month| {
                let price = chance.pick(&["34.50", "'7'", "$1,234.565", "0.72", "\"12.00\""]);
                // A comma would end a price in braces.
                let price = if price.contains(',') {
                    "1234.565"
                } else {
                    price
                };
                format!("2026-{month:02}-01: {price}")
            })
            .collect();
        let blank = chance.pick(&["", "\n", "  # between\n", "\n\n# left\n"]);
        text.push_str(blank);
        let braces = dated.join(chance.pick(&[", ", ","]));
        match chance.below(3) {
            0 => text.push_str(&format!(
                "  item {i}: {{unit: ton, class: material, prices: {{{braces}}}}}{comment}\n"
            )),
            1 => text.push_str(&format!(
                "  item {i}:\n    prices: {{{braces}}}{comment}\n    unit: ton\n    class: material\n"
            )),
            _ => {
                text.push_str(&format!("  item {i}:\n    unit: ton\n    prices:{comment}\n"));
                for one in dated {
                    text.push_str(&format!("      {one}{comment}\n{blank}"));
                }
                text.push_str("    class: material\n");
            }
        }
    }
    if chance.below(2) == 0 {
        text = text.trim_end().to_owned();
    }
    text.replace('\n', chance.pick(&["\n", "\r\n"]))
}

#[test]
fn in_a_thousand_books_only_the_price_differs() {
    let mut chance = Chance(13);
    let (mut replaced, mut inserted) = (0, 0);
    for seed in 0..1_000 {
        let text = by_chance(&mut chance);
        let (old, was) = read(&text);
        let keys: Vec<&str> = was.items.keys().map(String::as_str).collect();
        let item = chance.pick(&keys);
        let day = format!("2026-{:02}-01", 1 + chance.below(12));
        let day: Day = day.parse().unwrap();
        let price: UnitPrice = format!("{}.25", 100 + chance.below(900)).parse().unwrap();
        let edit = set_price(&text, &old, &was, item, day, price)
            .unwrap()
            .expect("no book has this price");
        let after = edit.made(&text);
        // What stood before and after the edit stands there byte for byte.
        assert!(after.starts_with(&text[..edit.from]), "{seed}\n{text}");
        assert!(after.ends_with(&text[edit.to..]), "{seed}\n{text}");
        assert!(edit.to == edit.from || !text[edit.from..edit.to].contains(['\n', '#', ':']));
        let (new, is) = read(&after);
        assert!(only_this(&old, &new, item, day), "{seed}\n{text}\n{after}");
        let dated = &is.items[item].dated;
        let set = dated.iter().find(|dated| dated.from == day).unwrap();
        assert_eq!(set.price, price, "{seed}\n{after}");
        if edit.to == edit.from {
            inserted += 1;
        } else {
            replaced += 1;
        }
    }
    assert!(100 < replaced && 100 < inserted, "{replaced} {inserted}");
}
