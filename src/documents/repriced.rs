//! From re-priced quotes to the office's page: finished strings, and a bar for each quote.
//!
//! Sums are those of the text answer (`views::office::reprice`); only `lines` knows its rows.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::error::DocumentError;
use super::figures::margin::{MarginBar, Scale, bar, key};
use super::pages::{Paged, pages};
use super::template::Template;
use super::views::office::margin;
use super::views::office::reprice::{Outcome, Row, Standing, Together, exposure, rows, together};
use super::views::quote::FileFacts;
use super::views::reprice_page::{Beside, CauseRow, Exposure, QuoteRow, RepricePage};
use crate::costing::repricing::Other;
use crate::press::drawing::{Drawing, Rgb};
use crate::press::layout::style::Look;
use crate::press::page::Document;
use crate::values::{Day, Money, Percent};

/// Causes that get a row of their own; the others share one.
const ALONE: usize = 12;
/// Quotes that are named where something is said of many.
const NAMED: usize = 5;

/// What was asked, in the owner's names.
#[derive(Clone, Debug)]
pub struct Asked {
    pub today: Day,
    /// The names of the books, each once.
    pub books: Vec<String>,
    /// Whether the owner named the book.
    pub another: bool,
    /// Items as the book calls them, and their other prices.
    pub supposed: Vec<(String, Other)>,
}

/// One quote, by all that the page says of it.
struct Line<'a> {
    number: &'a str,
    customer: &'a str,
    standing: Standing,
    days_left: i64,
    old_cost: Money,
    new_cost: Money,
    promised: Money,
    new_price: Money,
    /// In percent, when it was quoted and if the price is held.
    then: Option<Decimal>,
    now: Option<Decimal>,
    floor: Percent,
    verdict: &'static str,
    notes: &'a [String],
}

fn lines<'a>(rows: &[Row<'a>]) -> Vec<Line<'a>> {
    let line = |row: &Row<'a>| Line {
        number: &row.quote.number,
        customer: &row.quote.customer,
        standing: row.quote.standing,
        days_left: row.days_left,
        old_cost: row.found.old.cost,
        new_cost: row.found.new.cost,
        promised: row.found.old.price,
        new_price: row.found.new.price,
        then: row.found.old.margin(),
        now: row.found.held.margin(),
        floor: row.floor,
        verdict: row.verdict,
        notes: &row.quote.notes,
    };
    rows.iter().map(line).collect()
}

/// The pages of the answer, for the office.
pub fn repriced_document(
    outcomes: &[Outcome],
    asked: &Asked,
    accent: Rgb,
) -> Result<Document, DocumentError> {
    let (view, figures) = page(outcomes, asked, accent);
    let of = Paged {
        template: Template::Reprice,
        view: &view,
        file: &view.file,
        // It tells of several firms where several folders are asked.
        author: "flatwork",
        figures: &figures,
    };
    pages(&of, &Look::default(), None)
}

fn page(
    outcomes: &[Outcome],
    asked: &Asked,
    accent: Rgb,
) -> (RepricePage, BTreeMap<String, Drawing>) {
    let rows = rows(outcomes, asked.today);
    let lines = lines(&rows);
    let day = asked.today.long();
    let causes = together(&rows);
    let view = RepricePage {
        file: FileFacts {
            title: format!("Quotes at other prices, for the office: {day}"),
            subject: "What open quotes and signed work cost now, for the office and not for the customer".to_owned(),
            language: "en-US".to_owned(),
            created: asked.today.noon(),
        },
        warning: "For the office\u{a0} –\u{a0} not for the customer".to_owned(),
        beside: format!("Quotes at other prices, {day}"),
        title: if asked.another || !asked.supposed.is_empty() {
            "What our quotes would cost"
        } else {
            "What our quotes cost now"
        }
        .to_owned(),
        facts: facts(asked),
        exposures: vec![
            of_standing(&rows, &lines, Standing::Open),
            of_standing(&rows, &lines, Standing::Signed),
        ],
        quotes: lines.iter().enumerate().map(quote).collect(),
        no_quotes: if lines.is_empty() {
            "There is no quote to price: none is open, and no signed work waits for its pour."
                .to_owned()
        } else {
            String::new()
        },
        causes_note: if causes.is_empty() {
            "Nothing changed: every quote costs what it cost when it was quoted."
        } else {
            "How much all totals would change if each were quoted anew by your own rules: profit and tax are in it, unlike in the costs above."
        }
        .to_owned(),
        causes: told(causes),
        notes: beside(lines.iter().flat_map(Line::said)),
        left_out: beside(outcomes.iter().filter_map(left_out)),
    };
    (view, figures(&lines, accent))
}

/// The day, the books and the supposition in plain words.
fn facts(asked: &Asked) -> String {
    let books = asked.books.join(" and ");
    let which = match (asked.another, asked.books.len()) {
        (true, _) => format!("in another book, {books}"),
        (false, 0 | 1) => format!("in your usual book as it is now, {books}"),
        (false, _) => format!("in the usual books as they are now, {books}"),
    };
    let mut said = format!(
        "Asked {}. Every job at the prices of its pour day, {which}.",
        asked.today.long()
    );
    if !asked.supposed.is_empty() {
        let each = asked.supposed.iter().map(|(item, other)| match other {
            Other::Price(price) => format!("{item}: ${price}"),
            Other::By(percent) if percent.number() < Decimal::ZERO => {
                format!("{item}: down {}", Percent::new(-percent.number()))
            }
            Other::By(percent) => format!("{item}: up {percent}"),
        });
        let each: Vec<String> = each.collect();
        said += &format!(
            " Supposed: {}; a price that is held for you stays.",
            each.join("; ")
        );
    }
    said
}

/// What quotes of one standing cost more, and how many of them bleed.
fn of_standing(rows: &[Row<'_>], lines: &[Line<'_>], standing: Standing) -> Exposure {
    let by = exposure(rows, standing);
    let (whose, what) = match standing {
        Standing::Open => ("Open quotes cost", "open quote"),
        Standing::Signed => ("Signed work, not yet poured, costs", "signed job"),
    };
    let (more, amount) = if by < Money::ZERO {
        ("less", -by)
    } else {
        ("more", by)
    };
    let of = || lines.iter().filter(|line| line.standing == standing);
    let (all, below) = (of().count(), of().filter(|line| line.bleeds()).count());
    let s = if all == 1 { "" } else { "s" };
    Exposure {
        label: format!("{whose} you {more} by"),
        amount: amount.to_string(),
        note: match (all, below) {
            (0, _) => format!("no {what}s"),
            (_, 0) => format!("{all} {what}{s}, none below your floor"),
            _ => format!("{all} {what}{s}, {below} below your floor"),
        },
    }
}

impl<'a> Line<'a> {
    fn said(&self) -> impl Iterator<Item = (&'a str, &'a str)> + use<'a> {
        let number = self.number;
        self.notes.iter().map(move |words| (number, words.as_str()))
    }

    fn bleeds(&self) -> bool {
        self.now.is_none_or(|now| now < self.floor.number())
    }

    fn bar(&self) -> Option<MarginBar> {
        Some(MarginBar {
            then: self.then?,
            now: self.now?,
            floor: self.floor.number(),
        })
    }

    fn percent(&self, number: Option<Decimal>) -> String {
        number.map_or_else(
            || "none".to_owned(),
            |number| margin(number, self.floor.number()),
        )
    }
}

fn quote((at, line): (usize, &Line<'_>)) -> QuoteRow {
    QuoteRow {
        number: line.number.to_owned(),
        customer: line.customer.to_owned(),
        days_left: match line.standing {
            Standing::Open => line.days_left.to_string(),
            Standing::Signed => "–".to_owned(),
        },
        old_cost: line.old_cost.plain(),
        new_cost: line.new_cost.plain(),
        promised: line.promised.plain(),
        new_price: line.new_price.plain(),
        margin: line.percent(line.now),
        verdict: broken_at_colon(line.verdict),
        bleeds: line.bleeds(),
        bar: line.bar().map_or_else(String::new, |_| name(at)),
    }
}

/// Too long for one line, it breaks where the advice begins.
fn broken_at_colon(verdict: &str) -> String {
    verdict.split_once(": ").map_or_else(
        || verdict.to_owned(),
        |(because, advice)| format!("{because}: {}", advice.replace(' ', "\u{a0}")),
    )
}

fn name(at: usize) -> String {
    format!("bar-{at}")
}

fn figures(lines: &[Line<'_>], accent: Rgb) -> BTreeMap<String, Drawing> {
    let bars: Vec<MarginBar> = lines.iter().filter_map(Line::bar).collect();
    let scale = Scale::of(&bars);
    let mut figures = BTreeMap::from([("key".to_owned(), key(&bars, accent))]);
    for (at, line) in lines.iter().enumerate() {
        if let Some(shown) = line.bar() {
            figures.insert(name(at), bar(shown, scale, accent, aloud(line)));
        }
    }
    figures
}

/// What somebody hears who cannot see the bar.
fn aloud(line: &Line<'_>) -> String {
    let loses = line.now.is_some_and(|now| now < Decimal::ZERO);
    let stands = match (loses, line.bleeds()) {
        (true, _) => "a loss, below",
        (false, true) => "below",
        (false, false) => "not below",
    };
    format!(
        "Margin of {}: {} when quoted, {} now if the price is held, {stands} your floor of {}.",
        line.number,
        line.percent(line.then),
        line.percent(line.now),
        line.floor
    )
}

/// The largest causes in the order they are told, one row for all others, and the sum.
fn told(causes: Vec<Together>) -> Vec<CauseRow> {
    let sum: Money = causes.iter().map(|cause| cause.by).sum();
    let (shown, others) = parted(causes);
    let mut rows: Vec<CauseRow> = Vec::new();
    let mut before = "";
    for cause in &shown {
        let first = before != cause.group;
        rows.push(CauseRow {
            kind: if first && !before.is_empty() {
                "group"
            } else {
                "plain"
            }
            .to_owned(),
            group: if first {
                heading(cause.group)
            } else {
                String::new()
            },
            cause: cause.title.clone(),
            class: cause.class.to_owned(),
            quotes: match cause.quotes {
                1 => "1 quote".to_owned(),
                many => format!("{many} quotes"),
            },
            sum: cause.by.plain(),
        });
        before = cause.group;
    }
    let last = |kind: &str, group: String, sum: Money| CauseRow {
        kind: kind.to_owned(),
        group,
        cause: String::new(),
        class: String::new(),
        quotes: String::new(),
        sum: sum.plain(),
    };
    if !others.is_empty() {
        let rest = others.iter().map(|cause| cause.by).sum();
        let name = format!("{} other causes", others.len());
        rows.push(last("group", name, rest));
    }
    if !rows.is_empty() {
        rows.push(last("total", "Together".to_owned(), sum));
    }
    rows
}

/// One cause alone is no rest: it stands by itself.
fn parted(causes: Vec<Together>) -> (Vec<Together>, Vec<Together>) {
    if causes.len() <= ALONE + 1 {
        return (causes, Vec::new());
    }
    let mut sizes: Vec<(i64, usize)> = causes
        .iter()
        .enumerate()
        .map(|(at, cause)| (-cause.by.as_cents().abs(), at))
        .collect();
    sizes.sort_unstable();
    let alone: Vec<usize> = sizes[..ALONE].iter().map(|(_, at)| *at).collect();
    let (shown, others): (Vec<_>, Vec<_>) = causes
        .into_iter()
        .enumerate()
        .partition(|(at, _)| alone.contains(at));
    let causes = |parted: Vec<(usize, Together)>| parted.into_iter().map(|(_, cause)| cause);
    (causes(shown).collect(), causes(others).collect())
}

fn heading(group: &str) -> String {
    let mut letters = group.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

/// What is said of quotes, each once, with the numbers of those it is said of.
fn beside<'a>(said: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<Beside> {
    let mut found: Vec<(&str, Vec<&str>)> = Vec::new();
    for (number, words) in said {
        match found.iter_mut().find(|(known, _)| *known == words) {
            Some((_, numbers)) => numbers.push(number),
            None => found.push((words, vec![number])),
        }
    }
    let told = found.into_iter().map(|(words, numbers)| Beside {
        numbers: match numbers.len() {
            0..=NAMED => numbers.join(", "),
            many => format!("{} and {} more", numbers[..NAMED].join(", "), many - NAMED),
        },
        words: words.replace('`', ""),
    });
    told.collect()
}

fn left_out(outcome: &Outcome) -> Option<(&str, &str)> {
    match outcome {
        Outcome::Priced(_) => None,
        Outcome::Unpriced { number, because } => Some((number, because)),
    }
}
