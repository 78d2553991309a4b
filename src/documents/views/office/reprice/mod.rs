//! Every open quote at other prices: the worst first, what to do, and why.

mod answer;

pub use answer::{Answer, Clause, Outcome, Quote, Row, Standing, Together, causes, exposure};

use super::columns::{Stand, set};
use super::rise;
use crate::values::{Day, Money};

/// The whole answer in plain text; `each` tells the causes quote by quote, too.
pub fn text(answer: &Answer, today: Day, each: bool) -> String {
    let rows = answer.rows(today);
    let quotes = if rows.len() == 1 { "quote" } else { "quotes" };
    let mut out = vec![
        format!(
            "{} {quotes} at the prices of the pour day, asked on {today}",
            rows.len()
        ),
        "For the office, not for the customer.".to_owned(),
        String::new(),
    ];
    out.extend(table(&rows));
    out.push(String::new());
    for (open, words) in [
        (true, "open quotes cost you"),
        (false, "signed work costs you"),
    ] {
        let by = exposure(&rows, open);
        out.push(if by < Money::ZERO {
            format!("{words} {} less", -by)
        } else {
            format!("{words} {by} more")
        });
    }
    let all = answer.together();
    if !all.is_empty() {
        out.extend([
            String::new(),
            "WHY, over all quotes, at the same policy and with tax".to_owned(),
        ]);
        let mut cells: Vec<Vec<String>> = all
            .iter()
            .map(|one| {
                let quotes = if one.quotes == 1 { "quote" } else { "quotes" };
                vec![
                    one.group.to_owned(),
                    one.title.clone(),
                    one.class.to_owned(),
                    format!("{} {quotes}", one.quotes),
                    one.by.plain(),
                ]
            })
            .collect();
        let sum: Money = all.iter().map(|one| one.by).sum();
        cells.push(vec![
            "together".to_owned(),
            String::new(),
            String::new(),
            String::new(),
            sum.plain(),
        ]);
        out.extend(set(
            &[
                Stand::Left,
                Stand::Left,
                Stand::Left,
                Stand::Right,
                Stand::Right,
            ],
            &cells,
        ));
    }
    for row in &rows {
        out.extend(beside(row, each));
    }
    for (number, because) in answer.left_out() {
        out.push(format!("{number} is left out: {because}"));
    }
    out.join("\n") + "\n"
}

fn table(rows: &[Row<'_>]) -> Vec<String> {
    let heads = [
        "",
        "customer",
        "age",
        "days left",
        "old cost",
        "new cost",
        "more",
        "old price",
        "new price",
        "margin held",
        "verdict",
    ];
    let mut cells = vec![heads.map(str::to_owned).to_vec()];
    cells.extend(rows.iter().map(|row| {
        let found = row.found;
        vec![
            row.quote.number.clone(),
            row.quote.customer.clone(),
            row.age.to_string(),
            row.days_left.to_string(),
            found.old.cost.plain(),
            found.new.cost.plain(),
            found.harm().plain(),
            found.old.price.plain(),
            found.new.price.plain(),
            row.margin(),
            row.verdict.to_string(),
        ]
    }));
    let mut stands = [Stand::Right; 11];
    (stands[0], stands[1], stands[10]) = (Stand::Left, Stand::Left, Stand::Left);
    set(&stands, &cells)
}

/// What belongs to one quote: notes, headroom, and its causes if they are asked for.
fn beside(row: &Row<'_>, each: bool) -> Vec<String> {
    let mut said: Vec<String> = row
        .quote
        .notes
        .iter()
        .map(|note| format!("  {note}"))
        .collect();
    for one in &row.found.rooms {
        said.push(format!(
            "  {} may rise {} before the margin falls below {}, and {} before there is no profit",
            one.item,
            far(one.to_floor),
            row.floor,
            far(one.to_zero)
        ));
    }
    if each {
        let cells: Vec<Vec<String>> = causes(row.found)
            .map(|(group, change)| {
                vec![
                    format!("  {group}"),
                    change.title.clone(),
                    change.by().plain(),
                ]
            })
            .collect();
        said.extend(set(&[Stand::Left, Stand::Left, Stand::Right], &cells));
    }
    if said.is_empty() {
        return said;
    }
    let mut out = vec![String::new(), row.quote.number.clone()];
    out.extend(said);
    out
}

/// `by 12.4%, to $195.75`: the last price that still stands.
fn far(room: crate::costing::Room) -> String {
    match room {
        crate::costing::Room::UpTo { price, .. } => {
            format!("by {}, to ${price}", rise::room(Some(room)))
        }
        crate::costing::Room::Far => "by over 900%".to_owned(),
        crate::costing::Room::None => "not at all".to_owned(),
    }
}
