//! The lines of the cost in their columns, with a subtotal for each group, down to the total.

use crate::costing::{Cause, LineItem, Tier};
use crate::documents::table::Align::{self, Left, Point, Right};
use crate::documents::table::table;
use crate::documents::views::office::{
    SUMS, Sheet, cost_groups, group_of, line_told_apart, numbered, unit,
};
use crate::input::book::Basis;
use crate::input::phrases::Profit;
use crate::trade::Quantity;
use crate::values::{Amount, Money, Unit};

/// Number, title, quantity, unit, price, amount, and what is said beside them.
const LINES: [Align; 7] = [Right, Left, Point, Left, Point, Right, Left];

/// A row without a number of its own: a subtotal or a heading.
fn total(title: &str, amount: Option<Money>) -> Vec<String> {
    let amount = amount.map(Money::plain).unwrap_or_default();
    let mut row = vec![String::new(); 4];
    row.insert(1, title.to_owned());
    row.push(amount);
    row
}

/// Every line with its number, group by group, then what is added to direct cost.
pub(super) fn lines(sheet: &Sheet<'_>) -> Vec<String> {
    let quoted = sheet.offer.quoted();
    let totals = quoted.totals();
    let all = numbered(&quoted.lines);
    let titles = || quoted.lines.iter().map(|line| line.title.as_str());
    let mut rows = Vec::new();
    for group in cost_groups(&quoted.lines) {
        let of_group = || {
            let lines = all.iter();
            lines.filter(|(_, line)| group_of(line).as_ref() == Some(&group))
        };
        rows.push(total(&group.name().to_uppercase(), None));
        rows.extend(of_group().map(|(number, line)| {
            let mut cells = priced(*number, line);
            cells[1] = line_told_apart(line, titles()).unwrap_or(line.title.clone());
            cells
        }));
        let sum = of_group().map(|(_, line)| line.money()).sum();
        rows.push(total(&format!("{} together", group.name()), Some(sum)));
        rows.push(Vec::new());
    }
    for (side, name) in SUMS {
        if side != Tier::Direct {
            let of_side = all.iter().filter(|(_, line)| line.side == side);
            rows.extend(of_side.map(|(number, line)| added(*number, line, sheet)));
        }
        rows.push(total(name, Some(totals.down_to(side))));
    }
    table(&LINES, &rows)
}

fn priced(number: usize, line: &LineItem) -> Vec<String> {
    let quantity = line.quantity.as_ref().map(Quantity::amount);
    let price = line.price.as_ref();
    let each = price.map(|dated| Amount::new(dated.price.dollars(), Unit::Dollar).to_string());
    let beside = price.map(|dated| match &dated.basis {
        Basis::Listed => format!("price of {}", dated.from),
        Basis::Held { until, .. } => format!("held until {until}"),
    });
    vec![
        format!("#{number}"),
        line.title.clone(),
        quantity.map(Amount::number).unwrap_or_default(),
        quantity.map(unit).unwrap_or_default(),
        each.unwrap_or_default(),
        line.money().plain(),
        beside.unwrap_or_else(|| line.amount.shown()),
    ]
}

/// A line that is figured from others, with its working.
fn added(number: usize, line: &LineItem, sheet: &Sheet<'_>) -> Vec<String> {
    let mut cells = priced(number, line);
    if line.cause == Cause::Profit {
        cells[1] = match sheet.business.price.profit.value {
            Profit::Markup(percent) => format!("{}, markup {percent} on cost", line.title),
            Profit::Margin(percent) => format!("{}, margin {percent} of price", line.title),
        };
    }
    cells
}
