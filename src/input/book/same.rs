//! Whether two books sell alike: the same items and rules, whatever the prices.

use crate::reading::{Entry, Node, Value};

/// Whether what a job buys is the same by both books.
///
/// Everything is compared but prices, holds and the name of the book. A difference that would
/// change nothing, such as another order of the items, counts as one.
pub fn sells_alike(old: &Node, new: &Node) -> bool {
    let of_book = |key: &str| matches!(key, "book" | "holds" | "good until");
    let of_item = |key: &str| key == "prices";
    alike(old, new, of_book, |key, old, new| match key {
        "items" => alike(
            old,
            new,
            |_| false,
            |_, old, new| alike(old, new, of_item, |_, old, new| same(old, new)),
        ),
        _ => same(old, new),
    })
}

/// Key by key, but for those that are passed over.
fn alike(
    old: &Node,
    new: &Node,
    over: impl Fn(&str) -> bool,
    each: impl Fn(&str, &Node, &Node) -> bool,
) -> bool {
    let (Value::Map(old), Value::Map(new)) = (&old.value, &new.value) else {
        return same(old, new);
    };
    let counts = |entry: &&Entry| !over(&entry.key);
    let (mut old, mut new) = (old.iter().filter(counts), new.iter().filter(counts));
    loop {
        match (old.next(), new.next()) {
            (None, None) => return true,
            (Some(old), Some(new))
                if old.key == new.key && each(&old.key, &old.node, &new.node) => {}
            _ => return false,
        }
    }
}

/// The same value, wherever it stands.
fn same(old: &Node, new: &Node) -> bool {
    match (&old.value, &new.value) {
        (Value::List(old), Value::List(new)) => {
            old.len() == new.len() && old.iter().zip(new).all(|(old, new)| same(old, new))
        }
        (Value::Map(_), Value::Map(_)) => alike(old, new, |_| false, |_, old, new| same(old, new)),
        (old, new) => old == new,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::{Problems, Sources, yaml};

    const BOOK: &str = "book: River
items:
  stone: {unit: ton, class: material, prices: {2026-03-01: 34.50}}
  mix: {unit: cu yd, class: material, prices: {2026-03-01: 172.50}}
supply: {truck: 9 cu yd}
holds:
  - {item: mix, price: 170.00, until: 2026-06-30}
";

    #[track_caller]
    fn case(from: &str, to: &str, expected: bool) {
        assert!(BOOK.contains(from), "{from}");
        let node = |text: String| {
            let (mut sources, mut problems) = (Sources::default(), Problems::default());
            let id = sources.add("book.yaml", text);
            yaml::read(id, &sources, &mut problems).unwrap()
        };
        let (old, new) = (node(BOOK.to_owned()), node(BOOK.replace(from, to)));
        assert_eq!(sells_alike(&old, &new), expected, "{from} -> {to}");
        assert_eq!(sells_alike(&new, &old), expected, "{to} -> {from}");
    }

    #[test]
    fn prices_and_holds_change_nothing_that_is_bought() {
        case("River", "River, new", true);
        case("172.50", "189.00, 2026-06-01: 195.00", true);
        case(
            "holds:\n  - {item: mix, price: 170.00, until: 2026-06-30}\n",
            "",
            true,
        );
        case("book: River", "book: River\ngood until: 2026-07-01", true);
    }

    #[test]
    fn rules_items_and_units_do() {
        case("truck: 9 cu yd", "truck: 8 cu yd", false);
        case("unit: ton", "unit: cu yd", false);
        case("  stone:", "  holds:", false);
        case("supply: {truck: 9 cu yd}\n", "", false);
        case(
            "  mix: {unit: cu yd, class: material, prices: {2026-03-01: 172.50}}\n",
            "",
            false,
        );
    }
}
