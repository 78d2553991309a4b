//! One takeoff by two or more price books: every line side by side, and why they differ.

mod why;

use super::{SUMS, Sheet, headed, told_apart};
use crate::costing::{Books, Joined, LineItem, PriceSaid, Tier, Totals, books, join};
use crate::documents::table::{Align, table};
use crate::input::book::Class;
use crate::values::Money;

/// The order of the lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// Class by class, as in the cost.
    Class,
    /// The largest difference first.
    Size,
}

/// The whole comparison; the first sheet is what the others are held against.
pub fn text(sheets: &[Sheet<'_>], order: Order) -> String {
    let [first, others @ ..] = sheets else {
        return String::new();
    };
    let mut out = heading(first, sheets);
    out.push(String::new());
    out.extend(lines(sheets, order));
    for (i, other) in others.iter().enumerate() {
        out.push(String::new());
        out.extend(why::why(first, other, &letter(i + 1)));
    }
    out.join("\n") + "\n"
}

/// Why the job costs something else by another book.
pub fn difference(first: &Sheet<'_>, other: &Sheet<'_>) -> Books {
    books(
        first.offer.quoted().bought(),
        other.offer.quoted().bought(),
        other.pricing(),
        PriceSaid::of(other.takeoff),
    )
}

/// Every line of the job as quoted, joined over all books.
pub fn joined<'a>(sheets: &'a [Sheet<'_>]) -> Vec<Joined<'a>> {
    let lines: Vec<Vec<&LineItem>> = sheets
        .iter()
        .map(|sheet| sheet.offer.quoted().lines.iter().collect())
        .collect();
    join(&lines)
}

/// `A`, `B` and so on.
fn letter(book: usize) -> String {
    let mut rest = book;
    let mut name = String::new();
    loop {
        let digit = u8::try_from(rest % 26).expect("below 26");
        name.insert(0, char::from(b'A' + digit));
        if rest < 26 {
            return name;
        }
        rest = rest / 26 - 1;
    }
}

fn heading(first: &Sheet<'_>, sheets: &[Sheet<'_>]) -> Vec<String> {
    let job = first.job();
    let mut out = headed(format!("{job}: one takeoff, {} price books", sheets.len()));
    out.extend(sheets.iter().enumerate().map(|(i, sheet)| {
        let file = sheet.sources.name(sheet.book.place.file);
        format!("{}  {} ({file})", letter(i), sheet.book.name)
    }));
    let days: Vec<String> = first.days.iter().map(|day| day.day.to_string()).collect();
    out.push(format!(
        "Quoted {}; prices of {}",
        first.quoted,
        days.join(" and ")
    ));
    out
}

/// A row of the table: a title, an amount for each book, and each difference to the first.
fn row(title: &str, amounts: &[Money]) -> Vec<String> {
    let mut row = vec![title.to_owned()];
    row.extend(amounts.iter().map(|amount| amount.plain()));
    row.extend(amounts.iter().skip(1).map(|one| signed(*one - amounts[0])));
    row
}

/// `+52.50`, `-3.00`; nothing where nothing differs.
fn signed(money: Money) -> String {
    match money.as_cents() {
        0 => String::new(),
        1.. => format!("+{}", money.plain()),
        ..0 => money.plain(),
    }
}

fn lines(sheets: &[Sheet<'_>], order: Order) -> Vec<String> {
    let all = joined(sheets);
    let mut head = vec![String::new()];
    head.extend((0..sheets.len()).map(letter));
    head.extend((1..sheets.len()).map(|i| format!("{} - A", letter(i))));
    let mut rows = vec![head];
    let titles = || all.iter().map(|one| one.title);
    let named = |one: &Joined| {
        told_apart(one.title, &one.cause, titles()).unwrap_or_else(|| one.title.to_owned())
    };
    let of_side = |side: Tier| all.iter().filter(move |one| one.side == side);
    match order {
        Order::Class => {
            for class in Class::ALL {
                let direct = of_side(Tier::Direct).filter(|one| one.class == Some(class));
                let of_class: Vec<_> = direct.map(|one| row(&named(one), &one.amounts)).collect();
                if !of_class.is_empty() {
                    rows.push(vec![class.name().to_uppercase()]);
                    rows.extend(of_class);
                }
            }
        }
        Order::Size => {
            let largest = |one: &&Joined| {
                let differences = one.amounts.iter().map(|amount| *amount - one.amounts[0]);
                differences.map(|by| by.as_cents().abs()).max()
            };
            let mut direct: Vec<&Joined> = of_side(Tier::Direct).collect();
            direct.sort_by_key(|one| std::cmp::Reverse(largest(one)));
            rows.extend(direct.iter().map(|one| row(&named(one), &one.amounts)));
        }
    }
    let quoted = sheets.iter().map(|sheet| sheet.offer.quoted().totals());
    let totals: Vec<Totals> = quoted.collect();
    rows.push(Vec::new());
    for (side, name) in SUMS {
        if side != Tier::Direct {
            rows.extend(of_side(side).map(|one| row(one.title, &one.amounts)));
        }
        let sums: Vec<Money> = totals.iter().map(|totals| totals.down_to(side)).collect();
        rows.push(row(name, &sums));
    }
    let mut margins = vec!["margin".to_owned()];
    let each = sheets.iter().zip(&totals);
    margins.extend(each.map(|(sheet, totals)| sheet.margin(totals).or_none()));
    rows.push(margins);
    let mut aligns = vec![Align::Left];
    aligns.resize(2 * sheets.len(), Align::Right);
    table(&aligns, &rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn books_have_letters_as_far_as_anybody_counts() {
        let names = [0, 1, 25, 26, 27, 701, 702].map(letter);
        assert_eq!(names, ["A", "B", "Z", "AA", "AB", "ZZ", "AAA"]);
    }
}
