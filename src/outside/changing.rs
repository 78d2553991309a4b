//! A change order on the desk: its work looked up, priced for the stated day, added up.

use std::path::Path;

use super::desk::no_such_book;
use super::files::{self, Files};
use super::from_record::no_files;
use super::quote_record;
use crate::costing::{
    self, ChangePrice, Offer, Prices, Way, book_without_trucks, business_for_changes, change_price,
    prices,
};
use crate::documents::offering::{self, Offering};
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::change::{self, ChangeWritten, PriceLine};
use crate::input::job::{self, Customer, JobWritten, Takeoff};
use crate::office::record::{
    Change, ChangeLine, ChangeWork, Figures, Input, InputKind, Quote, WorkLine,
};
use crate::office::text::{Cents, Day as Written};
use crate::reading::{FileId, Problems, Read};
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
    files: &mut Files,
) -> Read<Changed> {
    let change = files.text(file);
    let business = files.text(&files::relative(&home.join("business.yaml")));
    let node = business.and_then(|id| files.tree(id))?;
    let usual = business::books(&node);
    let path = match (other_book, usual.first()) {
        (Some(other), _) => other.to_path_buf(),
        (None, Some(usual)) => files::relative(&home.join(&usual.value)),
        (None, None) => home.join("price-book.yaml"),
    };
    if !files::exists(&path) {
        files.refuse(no_such_book(&path));
    }
    let book = files.text(&path);
    laid([change?, business?, book?], quote, day, files)
}

/// The same from the texts kept in a record.
pub fn lay_out_again(texts: &[Input], quote: &Quote, day: Day, files: &mut Files) -> Read<Changed> {
    let [change, business, book] = texts else {
        return Err(files.refuse(no_files()));
    };
    let ids = [change, business, book].map(|input| files.kept(input));
    laid(ids, quote, day, files)
}

/// The change of a quoted job, priced for this day where the change names none.
fn laid(texts: [FileId; 3], quote: &Quote, day: Day, files: &mut Files) -> Read<Changed> {
    let [change, home, book] = texts.map(|id| files.tree(id));
    let customer = Customer {
        name: quote.customer.clone(),
        address: quote.address.clone(),
    };
    let read = |node: &_, problems: &mut _| change::read(&customer, node, problems);
    let change = change.and_then(|node| files.made(&node, read));
    let business = home.and_then(|node| files.made(&node, business::read));
    let book = book.and_then(|node| files.made(&node, book::read));
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
    let job = &quote.job;
    let ways = [
        (Way::Added, add, &comes_again, more),
        (Way::Deducted, deduct, &stays, &less),
    ];
    let mut parts = Vec::new();
    for (way, written, business, book) in ways {
        if let Some(written) = written {
            parts.push(part(
                way,
                *written,
                job,
                business,
                book,
                priced,
                &mut files.problems,
            ));
        }
    }
    // Both are looked at, so that all their problems show at once.
    let parts: Vec<Part> = parts.into_iter().collect::<Read<_>>()?;
    let amounts: Vec<_> = parts
        .iter()
        .map(|part| (part.way, part.offer.quoted()))
        .collect();
    let price = change_price(&amounts, &lines, &business);
    Ok(Changed {
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
) -> Read<Part> {
    let takeoff = job::resolve(written, job, book, business, problems);
    let takeoff = problems.proven(takeoff)?;
    let days: Vec<Prices> = takeoff
        .placements
        .iter()
        .map(|placement| placement.day.as_ref().map_or(priced, |day| day.value))
        .map(|day| prices(book, day, &takeoff.name))
        .collect();
    let offer = costing::offer(&takeoff, book, business, &days, problems);
    let offer = problems.proven(offer)?;
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
    Ok(Part {
        way,
        takeoff,
        offer,
        work,
    })
}

impl Changed {
    /// The change order as it is put on record, its PDF left out.
    pub fn record(&self, number: u32, files: &Files) -> Change {
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
            inputs: files.inputs(
                [InputKind::Change, InputKind::Business, InputKind::PriceBook],
                self.texts,
            ),
            pdf: None,
        }
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
            lines: quote_record::lines(priced, 1),
        }
    }
}
