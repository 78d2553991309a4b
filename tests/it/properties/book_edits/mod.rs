//! A price set in a thousand books written in every way: nothing else changes, or it is refused.

mod chance;

use flatwork::inside::input::book::diff::Difference;
use flatwork::inside::input::book::edit::{self, Edit, Wanted};
use flatwork::inside::input::book::import::{self, PriceChange};
use flatwork::inside::input::book::{self, PriceBook};
use flatwork::inside::reading::{Node, Problems, Sources, caret, yaml};
use flatwork::inside::values::{Unit, UnitPrice};

use super::jobs::Dice;
use chance::by_chance;

const BOOKS: u64 = 1_000;

struct Read {
    text: String,
    node: Node,
    book: PriceBook,
}

#[track_caller]
fn read(text: &str) -> Read {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("book.yaml", text.to_owned());
    let read = yaml::read(id, &sources, &mut problems)
        .and_then(|node| Ok((book::read(&node, &mut problems)?, node)));
    assert!(
        problems.is_empty(),
        "{}\n{text}",
        caret::show_all(&problems, "error", &sources)
    );
    let (book, node) = read.unwrap();
    Read {
        text: sources.text(id).to_owned(),
        node,
        book,
    }
}

/// What the book says of money, item by item, one line each.
fn said(book: &PriceBook) -> Vec<String> {
    let mut lines = vec![format!(
        "{} {:?}",
        book.name,
        book.good_until.as_ref().map(|at| at.value)
    )];
    for (key, item) in book.items.iter() {
        let is = item.called(key);
        lines.push(format!("{key} {is} {:?} {}", item.class, item.unit));
        for dated in &item.dated {
            let wage = dated.wage.as_ref();
            let wage = wage.map(|wage| (wage.base.value, wage.burden.value));
            lines.push(format!("{key} {} {} {wage:?}", dated.from, dated.price));
        }
    }
    for hold in &book.holds {
        lines.push(format!(
            "{} {} {:?} {}",
            hold.item.value, hold.price, hold.from, hold.until
        ));
    }
    lines
}

/// Whether the new book says what the old one does and these prices, and nothing else.
fn only(old: &PriceBook, new: &PriceBook, wanted: &[Wanted]) -> bool {
    let mut due = old.clone();
    for one in wanted {
        let dated = &mut due.items.get_mut(&one.item).unwrap().dated;
        let mut other = dated[0].clone();
        dated.retain(|dated| dated.from != one.day);
        other.wage = None;
        (other.from, other.price) = (one.day, one.price);
        dated.push(other);
        dated.sort_by_key(|dated| dated.from);
    }
    said(&due) == said(new)
}

/// What a change may be: another price where one stands, or a day and its price put in.
#[track_caller]
fn is_small(text: &str, edit: &Edit, wanted: &Wanted) {
    let gone = &text[edit.from..edit.to];
    let price = wanted.price.to_string();
    if gone.is_empty() {
        let new = edit
            .text
            .replacen(&format!("{}: {price}", wanted.day), "", 1);
        assert!(
            new.trim_matches([' ', ',', '\r', '\n', '\t']).is_empty(),
            "{edit:?}"
        );
    } else {
        let old = gone.trim_matches(['\'', '"']);
        assert!(old.parse::<UnitPrice>().is_ok(), "{edit:?} of `{gone}`");
        assert_eq!(edit.text, price);
    }
}

/// Looks over the text after these edits; both books are read from text by their own roads.
#[track_caller]
fn looked_over(was: &Read, edits: &[Edit], wanted: &[Wanted]) {
    let after = edit::made(&was.text, edits);
    let (first, last) = (&edits[0], &edits[edits.len() - 1]);
    assert!(after.starts_with(&was.text[..first.from]));
    assert!(after.ends_with(&was.text[last.to..]));
    let grown: usize = edits.iter().map(|edit| edit.text.len()).sum();
    let gone: usize = edits.iter().map(|edit| edit.to - edit.from).sum();
    assert_eq!(after.len() + gone, was.text.len() + grown);
    if was.text.contains("\r\n") {
        assert!(
            !after.replace("\r\n", "").contains(['\r', '\n']),
            "{after:?}"
        );
    }
    let is = read(&after);
    assert!(
        only(&was.book, &is.book, wanted),
        "{wanted:?}\n{}\n---\n{after}",
        was.text
    );
}

/// What is written from an item's name to the next one's.
fn block<'a>(was: &'a Read, item: &str) -> &'a str {
    let start = was.book.items[item].place.start;
    let items = was.book.items.values().map(|item| item.place.start);
    let end = items.filter(|other| start < *other).min();
    let end = end.map_or(was.text.len(), |end| end as usize);
    &was.text[start as usize..end]
}

/// An item, a day and a price by chance; now and then a price that is there.
fn wanted(dice: &mut Dice, book: &PriceBook) -> Wanted {
    let keys: Vec<&str> = book.items.keys().map(String::as_str).collect();
    let item = dice.pick(&keys).to_owned();
    let dated = &book.items[&item].dated;
    let month = format!("2026-{:02}-01", dice.between(1, 12));
    let day = if dice.one_in(4) {
        dated[0].from
    } else {
        month.parse().unwrap()
    };
    let same = dated.iter().find(|dated| dated.from == day);
    let price = match same {
        Some(dated) if dice.one_in(4) => dated.price,
        _ => format!("{}.25", dice.between(100, 999)).parse().unwrap(),
    };
    Wanted { item, day, price }
}

#[test]
fn a_price_is_set_alone_or_not_at_all() {
    let (mut replaced, mut inserted, mut there, mut refused) = (0, 0, 0, 0);
    for seed in 0..BOOKS {
        let mut dice = Dice::new(seed);
        let was = read(&by_chance(&mut dice));
        let wanted = wanted(&mut dice, &was.book);
        let Wanted { item, day, price } = &wanted;
        let dated = &was.book.items[item].dated;
        let made = edit::set_price(&was.text, &was.node, &was.book, item, *day, *price);
        let Ok(Some(edit)) = made else {
            let known = dated.iter().find(|dated| dated.from == *day);
            match made {
                Ok(_) => {
                    assert_eq!(known.unwrap().price, *price, "{seed}");
                    there += 1;
                }
                Err(problem) => {
                    let wage = known.is_some_and(|dated| dated.wage.is_some());
                    assert!(
                        wage && problem.code == "wage-not-price",
                        "{seed} {problem:?}"
                    );
                    refused += 1;
                }
            }
            continue;
        };
        let edits = [edit];
        let one = std::slice::from_ref(&wanted);
        if edit::holds(&was.node, &edit::made(&was.text, &edits), one) {
            is_small(&was.text, &edits[0], &wanted);
            looked_over(&was, &edits, one);
            *if edits[0].to == edits[0].from {
                &mut inserted
            } else {
                &mut replaced
            } += 1;
        } else {
            // Only what stands in two places by one anchor cannot be set for one of them.
            let block = block(&was, item);
            assert!(
                was.text.contains('*') && block.contains(['*', '&']),
                "{seed} {wanted:?}\n{block}"
            );
            refused += 1;
        }
    }
    assert!(
        200 < replaced && 500 < inserted && 30 < there && 30 < refused,
        "{replaced} {inserted} {there} {refused}"
    );
}

#[test]
fn several_prices_are_set_together_or_not_at_all() {
    let (mut set, mut refused) = (0, 0);
    for seed in BOOKS..BOOKS + 500 {
        let mut dice = Dice::new(seed);
        let was = read(&by_chance(&mut dice));
        let mut all: Vec<Wanted> = (0..4).map(|_| wanted(&mut dice, &was.book)).collect();
        all.sort_by(|a, b| (&a.item, a.day).cmp(&(&b.item, b.day)));
        all.dedup_by(|a, b| a.item == b.item && a.day == b.day);
        all.retain(|one| {
            let dated = &was.book.items[&one.item].dated;
            !dated
                .iter()
                .any(|dated| dated.from == one.day && dated.price == one.price)
        });
        let changes: Vec<PriceChange> = all
            .iter()
            .map(|wanted| PriceChange {
                wanted: wanted.clone(),
                what: Difference::Added(wanted.price, Unit::Ton),
            })
            .collect();
        let mut problems = Problems::default();
        match import::edits(&was.text, &was.node, &was.book, &changes, &mut problems) {
            Ok(edits) if edits.is_empty() => assert!(all.is_empty()),
            Ok(edits) => {
                looked_over(&was, &edits, &all);
                set += 1;
            }
            Err(_) => {
                assert!(!problems.is_empty(), "{seed}");
                assert!(
                    was.text.contains(['*', '%']),
                    "{seed} {all:?}\n{}",
                    was.text
                );
                refused += 1;
            }
        }
    }
    assert!(250 < set && 30 < refused, "{set} {refused}");
}
