//! Every open quote at other prices: the worst first, what to do, and why.

use super::columns::{Stand, set};
use super::{margin, rise};
use crate::costing::Change;
use crate::costing::repricing::Repriced;
use crate::values::{Day, Money, Percent};

/// One quote that was asked.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// With the margin floor it was quoted under.
    Priced(Box<(Quote, Percent, Repriced)>),
    /// It could not be priced, or could not be read.
    Unpriced { number: String, because: String },
}

/// Whose quote it is and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quote {
    pub number: String,
    pub customer: String,
    pub standing: Standing,
    pub quoted: Day,
    pub good_until: Day,
    /// Holds that end too early, units that changed.
    pub notes: Vec<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    Open,
    Signed,
}

/// One line of the table.
#[derive(Clone, Debug)]
pub struct Row<'a> {
    pub quote: &'a Quote,
    pub floor: Percent,
    pub found: &'a Repriced,
    /// Until the quote ends; negative when it has.
    pub days_left: i64,
    pub verdict: &'static str,
}

impl Row<'_> {
    /// The margin if the promised price is held, in words.
    pub fn margin(&self) -> String {
        let held = self.found.held.margin();
        held.map(|number| margin(number, self.floor.number()))
            .unwrap_or_default()
    }
}

/// The quotes that could be priced, the most harm first, then by number.
pub fn rows(outcomes: &[Outcome], today: Day) -> Vec<Row<'_>> {
    let mut rows: Vec<Row<'_>> = outcomes
        .iter()
        .filter_map(|outcome| match outcome {
            Outcome::Priced(one) => {
                let (quote, floor, found) = &**one;
                Some(Row {
                    quote,
                    floor: *floor,
                    found,
                    days_left: quote.good_until.days_since(today),
                    verdict: verdict(quote, *floor, found, today),
                })
            }
            Outcome::Unpriced { .. } => None,
        })
        .collect();
    rows.sort_by(|a, b| {
        let harm = b.found.harm().cmp(&a.found.harm());
        harm.then_with(|| a.quote.number.cmp(&b.quote.number))
    });
    rows
}

fn verdict(quote: &Quote, floor: Percent, found: &Repriced, today: Day) -> &'static str {
    let harm = found.harm();
    let stands = found
        .held
        .margin()
        .is_some_and(|margin| floor.number() <= margin);
    match quote.standing {
        Standing::Signed if Money::ZERO < harm => "signed: yours to bear",
        Standing::Signed => "signed: nothing to bear",
        Standing::Open if quote.good_until < today => "expired: quote it again",
        Standing::Open if !stands => "below your floor: send a revision",
        Standing::Open => "hold the price",
    }
}

/// What quotes of one standing cost more together.
pub fn exposure(rows: &[Row<'_>], standing: Standing) -> Money {
    rows.iter()
        .filter(|row| row.quote.standing == standing)
        .map(|row| row.found.harm())
        .sum()
}

/// One cause over all quotes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Together {
    pub group: &'static str,
    pub class: &'static str,
    pub title: String,
    pub quotes: usize,
    pub by: Money,
}

/// The changes of one quote, each with the group it is told in.
pub fn causes(found: &Repriced) -> impl Iterator<Item = (&'static str, &Change)> {
    let of = |group: &'static str| move |change| (group, change);
    let why = &found.why;
    let prices = why.prices.iter().map(of("prices"));
    let rules = why.rules.iter().map(of("rules of buying"));
    prices
        .chain(rules)
        .chain(why.added.iter().map(of("what follows")))
}

/// The causes of all quotes, each once, in the order they are told.
pub fn together(rows: &[Row<'_>]) -> Vec<Together> {
    let mut found: Vec<Together> = Vec::new();
    for (group, change) in rows.iter().flat_map(|row| causes(row.found)) {
        let class = change.class.map_or("", crate::input::book::Class::name);
        let same = |one: &&mut Together| {
            one.group == group && one.class == class && one.title == change.title
        };
        if let Some(one) = found.iter_mut().find(same) {
            one.quotes += 1;
            one.by = one.by + change.by();
        } else {
            found.push(Together {
                group,
                class,
                title: change.title.clone(),
                quotes: 1,
                by: change.by(),
            });
        }
    }
    let place = |one: &Together| match one.group {
        "prices" => 0,
        "rules of buying" => 1,
        _ => 2,
    };
    found.sort_by(|a, b| {
        let largest = b.by.as_cents().abs().cmp(&a.by.as_cents().abs());
        place(a)
            .cmp(&place(b))
            .then(largest)
            .then_with(|| a.title.cmp(&b.title))
    });
    found
}

/// The whole answer in plain text; `each` tells the causes quote by quote, too.
pub fn text(outcomes: &[Outcome], today: Day, each: bool) -> String {
    let rows = rows(outcomes, today);
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
    for (standing, words) in [
        (Standing::Open, "open quotes cost you"),
        (Standing::Signed, "signed work costs you"),
    ] {
        let by = exposure(&rows, standing);
        out.push(if by < Money::ZERO {
            format!("{words} {} less", -by)
        } else {
            format!("{words} {by} more")
        });
    }
    let all = together(&rows);
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
    for outcome in outcomes {
        if let Outcome::Unpriced { number, because } = outcome {
            out.push(format!("{number} is left out: {because}"));
        }
    }
    out.join("\n") + "\n"
}

fn table(rows: &[Row<'_>]) -> Vec<String> {
    let heads = [
        "",
        "customer",
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
            row.days_left.to_string(),
            found.old.cost.plain(),
            found.new.cost.plain(),
            found.harm().plain(),
            found.old.price.plain(),
            found.new.price.plain(),
            row.margin(),
            row.verdict.to_owned(),
        ]
    }));
    let mut stands = [Stand::Right; 10];
    (stands[0], stands[1], stands[9]) = (Stand::Left, Stand::Left, Stand::Left);
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
