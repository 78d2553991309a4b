//! One takeoff by two or more price books: every line side by side, and why they differ.

mod why;

use super::columns::{Stand, set};
use super::{Sheet, cause, margin};
use crate::costing::{Books, Joined, LineItem, Side, books, join};
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
    out.extend(table(sheets, order));
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
        other.takeoff.head.fixed_price.as_ref(),
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
    let mut out = vec![
        format!(
            "{}, for {}: one takeoff, {} price books",
            first.takeoff.name,
            first.takeoff.customer.name,
            sheets.len()
        ),
        "For the office, not for the customer.".to_owned(),
        String::new(),
    ];
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

fn table(sheets: &[Sheet<'_>], order: Order) -> Vec<String> {
    let all = joined(sheets);
    let mut head = vec![String::new()];
    head.extend((0..sheets.len()).map(letter));
    head.extend((1..sheets.len()).map(|i| format!("{} - A", letter(i))));
    let mut rows = vec![head];
    let named = |one: &Joined| {
        let alike = all.iter().filter(|other| other.title == one.title);
        if 1 < alike.count() {
            format!("{} ({})", one.title, cause(&one.cause))
        } else {
            one.title.to_owned()
        }
    };
    let mut direct: Vec<&Joined> = all.iter().filter(|one| one.side == Side::Direct).collect();
    match order {
        Order::Class => {
            for class in Class::ALL {
                let of_class: Vec<&&Joined> = direct
                    .iter()
                    .filter(|one| one.class == Some(class))
                    .collect();
                if of_class.is_empty() {
                    continue;
                }
                rows.push(vec![class.name().to_uppercase()]);
                rows.extend(of_class.iter().map(|one| row(&named(one), &one.amounts)));
            }
        }
        Order::Size => {
            let largest = |one: &&Joined| {
                let differences = one.amounts.iter().map(|amount| *amount - one.amounts[0]);
                differences.map(|by| by.as_cents().abs()).max()
            };
            direct.sort_by_key(|one| std::cmp::Reverse(largest(one)));
            rows.extend(direct.iter().map(|one| row(&named(one), &one.amounts)));
        }
    }
    let totals: Vec<_> = sheets
        .iter()
        .map(|sheet| sheet.offer.quoted().totals())
        .collect();
    let of = |pick: fn(&crate::costing::Totals) -> Money| -> Vec<Money> {
        totals.iter().map(pick).collect()
    };
    let added = |rows: &mut Vec<Vec<String>>, side: Side| {
        let of_side = all.iter().filter(|one| one.side == side);
        rows.extend(of_side.map(|one| row(one.title, &one.amounts)));
    };
    rows.push(Vec::new());
    rows.push(row("Direct cost", &of(|totals| totals.direct)));
    added(&mut rows, Side::Indirect);
    rows.push(row("COST", &of(|totals| totals.cost)));
    added(&mut rows, Side::Price);
    rows.push(row("PRICE BEFORE TAX", &of(|totals| totals.price)));
    added(&mut rows, Side::Tax);
    rows.push(row("TOTAL", &of(|totals| totals.total)));
    let mut margins = vec!["margin".to_owned()];
    margins.extend(sheets.iter().zip(&totals).map(|(sheet, totals)| {
        let floor = sheet.business.price.margin_floor.value.number();
        let margin = totals.margin().map(|number| margin(number, floor));
        margin.unwrap_or_else(|| "none".to_owned())
    }));
    rows.push(margins);
    let mut stands = vec![Stand::Left];
    stands.resize(2 * sheets.len(), Stand::Right);
    set(&stands, &rows)
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
