//! The lines of the cost in their columns, with a subtotal for each class, down to the total.

use crate::costing::{Cause, LineItem, Side};
use crate::documents::views::office::columns::{Stand, set};
use crate::documents::views::office::{Sheet, cause, numbered, unit};
use crate::input::book::{Basis, Class};
use crate::input::phrases::Profit;
use crate::trade::Quantity;
use crate::values::{Amount, Money, Unit};

const LINES: [Stand; 7] = [
    Stand::Right,
    Stand::Left,
    Stand::Point,
    Stand::Left,
    Stand::Point,
    Stand::Right,
    Stand::Left,
];

fn row(cells: [String; 7]) -> Vec<String> {
    Vec::from(cells)
}

/// A row without a number of its own: a subtotal or a heading.
fn total(title: &str, amount: Money) -> Vec<String> {
    let none = String::new;
    row([
        none(),
        title.to_owned(),
        none(),
        none(),
        none(),
        amount.plain(),
        none(),
    ])
}

/// Every line with its number, class by class, then what is added to direct cost.
pub(super) fn lines(sheet: &Sheet<'_>) -> Vec<String> {
    let quoted = sheet.offer.quoted();
    let totals = quoted.totals();
    let all = numbered(&quoted.lines);
    let mut rows = Vec::new();
    for class in Class::ALL {
        let of_class: Vec<_> = all
            .iter()
            .filter(|(_, line)| line.class == Some(class))
            .collect();
        if of_class.is_empty() {
            continue;
        }
        let heading = ["", &class.name().to_uppercase(), "", "", "", "", ""];
        rows.push(row(heading.map(str::to_owned)));
        rows.extend(of_class.iter().map(|(number, line)| {
            let mut cells = priced(*number, line);
            // Two lines of one item, such as one for each pour, say which is which.
            let alike = all.iter().filter(|(_, other)| other.title == line.title);
            if 1 < alike.count() {
                cells[1] = format!("{} ({})", line.title, cause(&line.cause));
            }
            cells
        }));
        let sum = of_class.iter().map(|(_, line)| line.money()).sum();
        rows.push(total(&format!("{} together", class.name()), sum));
        rows.push(Vec::new());
    }
    rows.push(total("Direct cost", totals.direct));
    rows.extend(added(&all, Side::Indirect, sheet));
    rows.push(total("COST", totals.cost));
    rows.extend(added(&all, Side::Price, sheet));
    rows.push(total("PRICE BEFORE TAX", totals.price));
    rows.extend(added(&all, Side::Tax, sheet));
    rows.push(total("TOTAL", totals.total));
    set(&LINES, &rows)
}

fn priced(number: usize, line: &LineItem) -> Vec<String> {
    let quantity = line.quantity.as_ref().map(Quantity::amount);
    let each = line
        .price
        .as_ref()
        .map(|dated| Amount::new(dated.price.dollars(), Unit::Dollar).to_string());
    let basis = line
        .price
        .as_ref()
        .map_or_else(String::new, |dated| match &dated.basis {
            Basis::Listed => format!("price of {}", dated.from),
            Basis::Held { until, .. } => format!("held until {until}"),
        });
    let beside = if line.price.is_some() {
        basis
    } else {
        line.amount.shown()
    };
    row([
        format!("#{number}"),
        line.title.clone(),
        quantity.map(Amount::number).unwrap_or_default(),
        quantity.map(unit).unwrap_or_default(),
        each.unwrap_or_default(),
        line.money().plain(),
        beside,
    ])
}

/// Lines that are figured from others, with their working.
fn added(all: &[(usize, &LineItem)], side: Side, sheet: &Sheet<'_>) -> Vec<Vec<String>> {
    let of_side = all.iter().filter(|(_, line)| line.side == side);
    of_side
        .map(|(number, line)| {
            let mut cells = priced(*number, line);
            if line.cause == Cause::Profit {
                cells[1] = match sheet.business.price.profit.value {
                    Profit::Markup(percent) => format!("{}, markup {percent} on cost", line.title),
                    Profit::Margin(percent) => format!("{}, margin {percent} of price", line.title),
                };
            }
            cells
        })
        .collect()
}
