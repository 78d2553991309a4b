//! Files that say only what they must: every other key takes the default its table names.

use flatwork::inside::input::{book, business};
use flatwork::inside::reading::{Problems, Sources, yaml};

fn node(text: &str) -> flatwork::inside::reading::Node {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let file = sources.add("file.yaml", text.to_owned());
    let node = yaml::read(file, &sources, &mut problems);
    assert!(problems.is_empty(), "{problems:?}");
    node.unwrap()
}

#[test]
fn a_business_needs_little() {
    let text = "firm: {name: Larkspur Flatwork}\nbooks: [book.yaml]\nprice: {profit: markup 20%}\npayments: [When you sign: rest]\nkinds: {}\n";
    let mut problems = Problems::default();
    let business = business::read(&node(text), &mut problems);
    assert!(problems.is_empty(), "{problems:?}");
    let business = business.unwrap();
    assert_eq!(business.order.allowance.value.to_string(), "7%");
    assert_eq!(business.quote.good_for.0, 30);
    assert_eq!(business.cure.warm.value.number(), "80");
}

#[test]
fn a_book_needs_little() {
    let text = "book: Little\nitems:\n  a: {unit: cu yd, class: material, prices: {2026-01-01: 1.00}}\n  b: {unit: piece, class: material, prices: {2026-01-01: 1.00}}\nmixes: {m: {item: a, strength: 3000 psi}}\nbars: {no. 4: {item: b}}\nmesh: {w: {item: b}}\nfiber: {f: {item: a}}\ndisposal: {soil: {item: a}}\nsupply: {short load: {under: 4 cu yd}}\nuse: {}\nrates: {}\n";
    let mut problems = Problems::default();
    let book = book::read(&node(text), &mut problems);
    assert!(problems.is_empty(), "{problems:?}");
    let rules = book.unwrap().rules;
    assert_eq!(rules.bars["no. 4"].stock.value.to_string(), "20 ft");
    assert_eq!(rules.mixes["m"].aggregate.value.to_string(), "3/4 in");
    assert_eq!(rules.supply.unwrap().truck.value.to_string(), "10 cu yd");
}
