//! Jobs written as text, read and priced by the program itself.

use std::collections::BTreeMap;
use std::ops::{Deref, DerefMut};

use flatwork::inside::costing::{Offer, Prices, Pricing, offer};
use flatwork::inside::documents::offering;
use flatwork::inside::documents::views::quote::QuoteView;
use flatwork::inside::input::book::{self, PriceBook};
use flatwork::inside::input::business::{self, Business};
use flatwork::inside::input::job::{self, Takeoff};
use flatwork::inside::outside::desk;
use flatwork::inside::press::drawing::{Drawing, Rgb};
use flatwork::inside::reading::{Node, Problems, Read, Sources, caret, yaml};
use flatwork::inside::trade::Quantity;
use flatwork::inside::trade::measure::SlabQuantities;
use flatwork::inside::values::{Day, Unit};
use rust_decimal::Decimal;

pub const BUSINESS: &str = include_str!("../../demo-quotes/business.yaml");
/// River Road with few of its goods, so that a test can add its own.
pub const BOOK: &str = include_str!("small-book.yaml");
pub const RIVER_ROAD: &str = include_str!("../../price-books/river-road.yaml");
pub const FAR_BANK: &str = include_str!("../../price-books/far-bank.yaml");

/// The words of a command line; what stands in quotes is one.
pub fn words(line: &str) -> Vec<&str> {
    let parts = line.split('\'').enumerate();
    parts
        .flat_map(|(i, part)| match i % 2 {
            0 => part.split_whitespace().collect(),
            _ => vec![part],
        })
        .collect()
}

/// A business and its price book, read once for many jobs.
pub struct Shop {
    pub business: Business,
    pub book: PriceBook,
}

/// Everything a command works on, without a disk.
pub struct Desk(desk::Desk);

/// `text` with every pair replaced; one that is not there would leave the test without its premise.
#[track_caller]
pub fn with(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (old, new)| {
        assert!(text.contains(old), "the file has no `{old}`");
        text.replacen(old, new, 1)
    })
}

/// Reads `text` by `how`; any problem fails the test and is shown.
#[track_caller]
fn read<T>(text: &str, how: impl FnOnce(&Node, &mut Problems) -> Read<T>) -> T {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("test.yaml", text.to_owned());
    let result = yaml::read(id, &sources, &mut problems).and_then(|node| how(&node, &mut problems));
    match result {
        Ok(result) if problems.is_empty() => result,
        _ => panic!(
            "{}\n{text}",
            caret::show_all(&problems, "problem", &sources)
        ),
    }
}

#[track_caller]
pub fn desk(job: &str, business: &str, book: &str) -> Desk {
    let shop = Shop::new(business, book);
    let takeoff = shop.resolved(job);
    let mut sources = Sources::default();
    let texts = [job, business, book].map(|text| sources.add("test.yaml", text.to_owned()));
    let on = Some(quoted(&takeoff));
    Desk(desk::Desk::new(
        texts,
        on,
        takeoff,
        shop.business,
        shop.book,
    ))
}

fn quoted(takeoff: &Takeoff) -> Day {
    takeoff.head.quoted.unwrap_or(day("2026-05-04"))
}

impl Shop {
    #[track_caller]
    pub fn new(business: &str, book: &str) -> Self {
        Self {
            business: read(business, business::read),
            book: read(book, book::read),
        }
    }

    #[track_caller]
    fn resolved(&self, job: &str) -> Takeoff {
        read(job, |node, problems| {
            let written = job::read(node, problems)?;
            job::resolve(written, "job", &self.book, &self.business, problems)
        })
    }

    #[track_caller]
    pub fn takeoff(&self, job: &str) -> (Takeoff, Vec<Prices>) {
        let takeoff = self.resolved(job);
        let days = desk::days(&takeoff, quoted(&takeoff), &self.business, &self.book);
        (takeoff, days)
    }

    #[track_caller]
    pub fn offer(&self, job: &str) -> Offer {
        self.tried(job)
            .unwrap_or_else(|codes| panic!("{codes:?}\n{job}"))
    }

    /// The offer of a job that reads well, or the codes of what pricing refused.
    #[track_caller]
    pub fn tried(&self, job: &str) -> Result<Offer, Vec<&'static str>> {
        let (takeoff, days) = self.takeoff(job);
        let mut problems = Problems::default();
        let at = Pricing {
            book: &self.book,
            business: &self.business,
            days: &days,
        };
        offer(&takeoff, at, &mut problems)
            .map_err(|_| problems.iter().map(|problem| problem.code).collect())
    }
}

impl Desk {
    #[track_caller]
    pub fn offer(&self) -> Offer {
        let mut problems = Problems::default();
        let offer = self.0.offer(&mut problems);
        offer.unwrap_or_else(|_| panic!("{:#?}", problems.sorted()))
    }

    /// What the customer reads.
    #[track_caller]
    pub fn view(&self) -> QuoteView {
        offering::view(self.0.offering(&self.offer()))
    }

    /// What the customer sees drawn.
    #[track_caller]
    pub fn figures(&self) -> BTreeMap<String, Drawing> {
        offering::figures(self.0.offering(&self.offer()), Rgb(0, 0, 0))
    }
}

impl Deref for Desk {
    type Target = desk::Desk;

    fn deref(&self) -> &desk::Desk {
        &self.0
    }
}

impl DerefMut for Desk {
    fn deref_mut(&mut self) -> &mut desk::Desk {
        &mut self.0
    }
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

/// What the list of a slab holds under a title.
pub fn listed<'a>(
    slab: &'a SlabQuantities,
    title: &'a str,
) -> impl Iterator<Item = &'a Quantity> + 'a {
    let listed = slab.listed.iter().map(|listed| &listed.quantity);
    listed.filter(move |quantity| quantity.name().ends_with(title))
}
