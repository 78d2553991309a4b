//! Jobs written as text, read and priced by the program itself.

use flatwork::costing::{Offer, Prices, offer, prices};
use flatwork::input::book::{self, PriceBook};
use flatwork::input::business::{self, Business};
use flatwork::input::job::{self, Takeoff};
use flatwork::reading::{Node, Problems, Sources, caret, yaml};
use flatwork::trade::Quantity;
use flatwork::values::{Day, Unit};
use rust_decimal::Decimal;

pub const BUSINESS: &str = include_str!("../../demo-quotes/business.yaml");
pub const BOOK: &str = include_str!("../../price-books/river-road.yaml");

/// Everything a command works on, without a disk.
pub struct Desk {
    pub takeoff: Takeoff,
    pub business: Business,
    pub book: PriceBook,
    pub days: Vec<Prices>,
}

/// `text` with every pair replaced; one that is not there would leave the test without its premise.
#[track_caller]
pub fn with(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (old, new)| {
        assert!(text.contains(old), "the file has no `{old}`");
        text.replacen(old, new, 1)
    })
}

/// Reads all three files; any problem fails the test and is shown.
#[track_caller]
pub fn desk(job: &str, business: &str, book: &str) -> Desk {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let desk = read(job, business, book, &mut sources, &mut problems);
    desk.unwrap_or_else(|| panic!("{}\n{job}", caret::show_all(&problems, "problem", &sources)))
}

fn read(
    job: &str,
    business: &str,
    book: &str,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let mut node = |name: &str, text: &str, problems: &mut Problems| -> Option<Node> {
        let id = sources.add(name, text.to_owned());
        yaml::read(id, sources, problems)
    };
    let job = node("job.yaml", job, problems)?;
    let business = node("business.yaml", business, problems)?;
    let book = node("book.yaml", book, problems)?;
    let business = business::read(&business, problems)?;
    let book = book::read(&book, problems)?;
    let written = job::read(&job, problems)?;
    let takeoff = job::resolve(written, "job", &book, &business, problems)?;
    let quoted = takeoff.quoted.unwrap_or(day("2026-05-04"));
    let days = takeoff
        .placements
        .iter()
        .map(|placement| {
            let day = placement.day.as_ref().map_or(quoted, |day| day.value);
            prices(&book, day, &takeoff.name)
        })
        .collect();
    Some(Desk {
        takeoff,
        business,
        book,
        days,
    })
}

impl Desk {
    #[track_caller]
    pub fn offer(&self) -> Offer {
        let mut problems = Problems::default();
        let offer = offer(
            &self.takeoff,
            &self.book,
            &self.business,
            &self.days,
            &mut problems,
        );
        offer.unwrap_or_else(|| panic!("{:#?}", problems.sorted()))
    }
}

/// The offer of a job with the demo's business and book.
#[track_caller]
#[allow(dead_code)]
pub fn offered(job: &str) -> Offer {
    desk(job, BUSINESS, BOOK).offer()
}

fn day(text: &str) -> Day {
    text.parse().expect("a day of the tests")
}

/// Every quantity behind the lines of every combination, each once.
pub fn reachable(offer: &Offer) -> Vec<Quantity> {
    let mut found: Vec<Quantity> = Vec::new();
    let mut open: Vec<Quantity> = Vec::new();
    for priced in offer.by_choice.values() {
        open.extend(priced.needs.roots());
        for line in &priced.lines {
            open.push(line.amount.clone());
            open.extend(line.quantity.clone());
        }
    }
    while let Some(quantity) = open.pop() {
        if !found.iter().any(|known| known.is(&quantity)) {
            open.extend(quantity.parts());
            found.push(quantity);
        }
    }
    found
}

/// The quantity of this name behind the job as quoted; the money of its line bears the same name.
#[track_caller]
pub fn value(offer: &Offer, name: &str) -> Decimal {
    let all = reachable(offer);
    let found = all
        .iter()
        .find(|quantity| quantity.name() == name && quantity.amount().unit != Unit::Dollar);
    let names = || {
        all.iter()
            .map(Quantity::name)
            .collect::<Vec<_>>()
            .join(", ")
    };
    found
        .unwrap_or_else(|| panic!("no `{name}` among {}", names()))
        .value()
}
