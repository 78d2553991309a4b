//! A change order on the desk: its work looked up, priced for the stated day, added up.

use std::path::Path;

use super::files;
use crate::costing::{
    self, ChangePrice, Offer, Prices, Way, book_without_trucks, business_for_changes, change_price,
    prices,
};
use crate::documents::offering::{self, Offering};
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::change::{self, ChangeWritten, PriceLine};
use crate::input::job::{self, Customer, JobWritten, Takeoff};
use crate::office::chain::hash;
use crate::office::record::{Change, ChangeLine, ChangeWork, Figures, Input, Quote, WorkLine};
use crate::office::text::{Cents, Day as Written};
use crate::reading::{FileId, Problem, Problems, Sources, yaml};
use crate::values::{Day, Money};

/// A change order with everything it comes to.
#[derive(Debug)]
pub struct Changed {
    pub title: String,
    pub because: Option<String>,
    pub days: i32,
    pub parts: Vec<Part>,
    pub lines: Vec<PriceLine>,
    pub price: ChangePrice,
    pub priced: Day,
    pub business: Business,
    /// Change order, business, price book.
    texts: [FileId; 3],
}

/// Work that is added or left out.
#[derive(Debug)]
pub struct Part {
    pub way: Way,
    takeoff: Takeoff,
    pub offer: Offer,
    work: Vec<WorkLine>,
}

/// Reads a change order with the business and its usual book, or another one.
pub fn lay_out(
    file: &Path,
    other_book: Option<&Path>,
    home: &Path,
    quote: &Quote,
    day: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Changed> {
    let change = files::read(file, sources, problems);
    let business = files::read(
        &files::relative(&home.join("business.yaml")),
        sources,
        problems,
    );
    let node = business.and_then(|id| yaml::read(id, sources, problems))?;
    let usual = business::books(&node);
    let path = match (other_book, usual.first()) {
        (Some(other), _) => other.to_path_buf(),
        (None, Some(usual)) => files::relative(&home.join(&usual.value)),
        (None, None) => home.join("price-book.yaml"),
    };
    if !files::exists(&path) {
        problems.push(
            Problem::new(
                "no-such-book",
                format!("there is no price book `{}`", path.display()),
            )
            .help("paths in `books` start from the folder of business.yaml"),
        );
    }
    let book = files::read(&path, sources, problems);
    laid([change?, business?, book?], quote, day, sources, problems)
}

/// The same from the texts kept in a record.
pub fn lay_out_again(
    texts: &[Input; 3],
    quote: &Quote,
    day: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Changed> {
    let ids = texts
        .each_ref()
        .map(|input| sources.add(&input.name, input.text.clone()));
    laid(ids, quote, day, sources, problems)
}

fn laid(
    texts: [FileId; 3],
    quote: &Quote,
    day: Day,
    sources: &Sources,
    problems: &mut Problems,
) -> Option<Changed> {
    let [change, home, book] = texts.map(|id| yaml::read(id, sources, problems));
    let customer = Customer {
        name: quote.customer.clone(),
        address: quote.address.clone(),
    };
    let change = change.and_then(|node| change::read(&customer, &node, problems));
    let business = home.and_then(|node| business::read(&node, problems));
    let book = book.and_then(|node| book::read(&node, problems));
    let (change, business, book) = (change?, business?, book?);
    let ChangeWritten {
        title,
        because,
        days,
        priced,
        same_truck,
        add,
        deduct,
        lines,
    } = change;
    let priced = priced.unwrap_or(day);
    let comes_again = business_for_changes(&business, 0 < days);
    let stays = business_for_changes(&business, false);
    // What is left out saves no truck.
    let less = book_without_trucks(&book);
    let more = if same_truck { &less } else { &book };
    let ways = [
        (Way::Added, add, &comes_again, more),
        (Way::Deducted, deduct, &stays, &less),
    ];
    let parts: Vec<Option<Part>> = ways
        .into_iter()
        .filter_map(|(way, written, business, book)| {
            let written = *written?;
            let job = &quote.job;
            Some(part(way, written, job, business, book, priced, problems))
        })
        .collect();
    // Both are looked at, so that all their problems show at once.
    let parts: Vec<Part> = parts.into_iter().collect::<Option<_>>()?;
    let amounts: Vec<_> = parts
        .iter()
        .map(|part| (part.way, part.offer.quoted()))
        .collect();
    let price = change_price(&amounts, &lines, &business);
    Some(Changed {
        title: title.value,
        because,
        days,
        price,
        parts,
        lines,
        priced,
        business,
        texts,
    })
}

fn part(
    way: Way,
    written: JobWritten,
    job: &str,
    business: &Business,
    book: &PriceBook,
    priced: Day,
    problems: &mut Problems,
) -> Option<Part> {
    let takeoff = job::resolve(written, job, book, business, problems)?;
    let days: Vec<Prices> = takeoff
        .placements
        .iter()
        .map(|placement| placement.day.as_ref().map_or(priced, |day| day.value))
        .map(|day| prices(book, day, &takeoff.name))
        .collect();
    let offer = costing::offer(&takeoff, book, business, &days, problems)?;
    let work = offering::work(Offering {
        takeoff: &takeoff,
        business,
        rules: &book.rules,
        offer: &offer,
        quoted: priced,
        pour: days[takeoff.first_pour()].day,
        number: None,
        replaces: None,
        photos: &[],
    });
    // What is left out is said by what it would have been, not by how it would have been made.
    let told = |word: &str| way == Way::Added || word == "Remove" || word == "Pour";
    let work = work
        .into_iter()
        .filter(|term| told(&term.word))
        .map(|term| WorkLine {
            word: term.word,
            text: term.text,
        })
        .collect();
    Some(Part {
        way,
        takeoff,
        offer,
        work,
    })
}

impl Changed {
    /// The change order as it is put on record, its PDF left out.
    pub fn record(&self, number: u32, sources: &Sources) -> Change {
        let mut lines: Vec<ChangeLine> = self.parts.iter().map(Part::line).collect();
        lines.extend(self.lines.iter().map(|line| ChangeLine {
            says: line.says.clone(),
            price: Cents(line.price.value),
            work: Vec::new(),
        }));
        let taxes = self.price.taxes.iter();
        let taxes = taxes.map(|(name, amount)| (name.clone(), amount.as_money()));
        Change {
            change: number,
            title: self.title.clone(),
            because: self.because.clone(),
            lines,
            figures: Figures::of(self.price.price.as_money(), taxes.collect()),
            work: self.parts.iter().map(Part::record).collect(),
            days: self.days,
            priced: Written(self.priced),
            inputs: self.inputs(sources),
            pdf: None,
        }
    }

    fn inputs(&self, sources: &Sources) -> Vec<Input> {
        let named = ["change", "business", "price book"].into_iter();
        named
            .zip(self.texts)
            .map(|(what, id)| Input {
                what: what.to_owned(),
                name: sources.name(id).to_owned(),
                sha256: hash(sources.text(id).as_bytes()),
                text: sources.text(id).to_owned(),
            })
            .collect()
    }
}

impl Part {
    fn line(&self) -> ChangeLine {
        let named = || {
            let slabs = self.takeoff.slabs.iter();
            let names: Vec<String> = slabs.map(|slab| slab.called.clone()).collect();
            offering::named(&names)
        };
        let price = self.offer.quoted().totals().price;
        ChangeLine {
            says: self.takeoff.title.clone().unwrap_or_else(named),
            price: Cents(self.signed(price)),
            work: self.work.clone(),
        }
    }

    fn signed(&self, amount: Money) -> Money {
        match self.way {
            Way::Added => amount,
            Way::Deducted => -amount,
        }
    }

    fn record(&self) -> ChangeWork {
        let priced = self.offer.quoted();
        ChangeWork {
            is_deducted: self.way == Way::Deducted,
            cost: Cents(priced.totals().cost),
            price: Cents(priced.totals().price),
            lines: super::quote_record::lines(priced, 1),
        }
    }
}
