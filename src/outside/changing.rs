//! A change order on the desk: its work looked up, priced for the stated day, added up.

use std::path::Path;

use super::desk::no_such_book;
use super::files::{self, Files};
use super::from_record::no_files;
use super::quote_record;
use crate::costing::{
    self, Cause, LineItem, Offer, Prices, Pricing, Way, book_for_changes, book_without_trucks,
    business_for_changes, change_price, prices,
};
use crate::documents::offering::{self, Offering};
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::change;
use crate::input::job::{self, Customer, Discount, JobWritten, Takeoff};
use crate::input::phrases::Off;
use crate::office::job::Job;
use crate::office::record::{
    Change, ChangeLine, ChangeWork, Figures, Input, InputKind, Quote, WorkLine,
};
use crate::office::text::{Cents, Day as Written};
use crate::office::words;
use crate::reading::{At, FileId, Problems, Read};
use crate::values::{Amount, Day, Money, Percent, Unit};

/// A change order as it is put on record, its PDF left out, and the business it was priced by.
#[derive(Debug)]
pub struct Changed {
    pub change: Change,
    pub business: Business,
}

/// Work that is added or left out.
struct ChangedWork {
    way: Way,
    takeoff: Takeoff,
    offer: Offer,
    work: Vec<WorkLine>,
}

/// What a part is priced with.
struct With<'a> {
    job: &'a str,
    business: &'a Business,
    book: &'a PriceBook,
    /// The day whose prices count where the work names no pour.
    priced: Day,
    /// What the customer bought at so many percent less.
    discounts: &'a [Discount],
    /// Days more: as often the crew comes for it, unless the work says its own trips.
    days: u32,
}

/// Reads a change order with the business and its usual book, or another one.
pub fn lay_out(
    file: &Path,
    other_book: Option<&Path>,
    home: &Path,
    job: Job<'_>,
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
    laid([change?, business?, book?], job, job.next_change(), files)
}

/// The change of this number once more, from the texts kept in its record.
pub fn lay_out_again(
    texts: &[Input],
    job: Job<'_>,
    number: u32,
    files: &mut Files,
) -> Read<Changed> {
    let [change, business, book] = texts else {
        return Err(files.refuse(no_files()));
    };
    let ids = [change, business, book].map(|input| files.kept(input));
    laid(ids, job, number, files)
}

fn laid(texts: [FileId; 3], job: Job<'_>, number: u32, files: &mut Files) -> Read<Changed> {
    let (_, quote) = job.quote(&mut files.problems)?;
    let [change, home, book] = texts.map(|id| files.tree(id));
    let customer = Customer::new(quote.customer.clone(), quote.address.clone());
    let change = change.and_then(|node| files.made(&node, change::read));
    let business = home.and_then(|node| files.made(&node, business::read));
    let book = book.and_then(|node| files.made(&node, book::read));
    let (change, business, book) = (change?, business?, book?);
    // What is left out saves no truck.
    let less = book_without_trucks(&book);
    let begun = book_for_changes(&book);
    let priced = change.priced.unwrap_or(job.day);
    let discounts = percents_off(quote, &book);
    let comes_again = business_for_changes(&business, 0 < change.days.0);
    let stays = business_for_changes(&business, false);
    let added = With {
        job: &quote.job,
        business: &comes_again,
        book: if change.same_truck { &less } else { &begun },
        priced,
        discounts: &discounts,
        days: u32::try_from(change.days.0).unwrap_or_default(),
    };
    let deducted = With {
        business: &stays,
        book: &less,
        days: 0,
        ..added
    };
    let problems = &mut files.problems;
    let added = change
        .add
        .map(|work| added.part(Way::Added, work.of(customer.clone()), problems));
    let deducted = change
        .deduct
        .map(|work| deducted.part(Way::Deducted, work.of(customer.clone()), problems));
    // Both are looked at, so that all their problems show at once.
    let parts = added.into_iter().chain(deducted);
    let parts: Vec<ChangedWork> = parts.collect::<Read<_>>()?;
    let amounts: Vec<_> = parts
        .iter()
        .map(|part| (part.way, part.offer.quoted()))
        .collect();
    let price = change_price(&amounts, &change.lines, &business);
    let taxes = price.taxes.iter();
    let taxes = taxes.map(|(name, amount)| (name.clone(), amount.as_money()));
    let mut lines: Vec<ChangeLine> = parts.iter().map(ChangedWork::line).collect();
    let off = |discount: &Discount| taken_off(discount, &parts);
    lines.extend(discounts.iter().filter_map(off));
    lines.extend(change.lines.iter().map(|line| ChangeLine {
        says: line.says.clone(),
        price: Cents(line.price.value.0),
        work: Vec::new(),
    }));
    let change = Change {
        change: number,
        title: change.title,
        because: change.because,
        lines,
        figures: Figures::of(price.price.as_money(), taxes.collect()),
        work: parts.iter().map(ChangedWork::record).collect(),
        days: change.days.0,
        priced: Written(priced),
        inputs: files.inputs(
            [InputKind::Change, InputKind::Business, InputKind::PriceBook],
            texts,
        ),
        pdf: None,
    };
    Ok(Changed { change, business })
}

/// The percents that the quote took off; a sum was taken off the job once, and stays as it is.
fn percents_off(quote: &Quote, book: &PriceBook) -> Vec<Discount> {
    let lines = quote.quoted().map_or(&[][..], |quoted| &quoted.lines);
    let off = lines.iter().filter_map(|line| {
        let Some((Cause::Discount(says), _)) = words::added(&line.cause, &line.side) else {
            return None;
        };
        let percent = Percent::new(line.quantity?.0);
        Some(Discount {
            says,
            off: At::new(Off::Percent(percent), book.place),
        })
    });
    off.collect()
}

/// What a percent of the quote takes off all parts together, as the customer reads it.
fn taken_off(discount: &Discount, parts: &[ChangedWork]) -> Option<ChangeLine> {
    let Off::Percent(percent) = discount.off.value else {
        return None;
    };
    let is_it = |line: &&LineItem| line.cause == Cause::Discount(discount.says.clone());
    let off: Money = parts
        .iter()
        .map(|part| {
            let lines = part.offer.quoted().lines.iter().filter(is_it);
            part.way.signed(lines.map(LineItem::money).sum())
        })
        .sum();
    (!parts.is_empty()).then(|| ChangeLine {
        says: format!("{}, {percent} as in the quote", discount.says),
        price: Cents(off),
        work: Vec::new(),
    })
}

impl With<'_> {
    fn part(&self, way: Way, written: JobWritten, problems: &mut Problems) -> Read<ChangedWork> {
        let (book, business) = (self.book, self.business);
        let mut takeoff = job::resolve(written, self.job, book, business, problems)?;
        takeoff.head.discounts = self.discounts.to_vec();
        // What the customer reads of days is what is charged: its stages share the job's own.
        let days = Amount::new(self.days.into(), Unit::Trip);
        let trips = &mut takeoff.head.trips;
        trips.get_or_insert(At::new(days, book.place));
        let pours = takeoff.placements.iter();
        let pours = pours.map(|one| one.day.as_ref().map_or(self.priced, |day| day.value));
        let days: Vec<Prices> = pours.map(|day| prices(book, day, &takeoff.name)).collect();
        let at = Pricing {
            book,
            business,
            days: &days,
        };
        let offer = costing::offer(&takeoff, at, problems)?;
        let work = offering::work(Offering {
            takeoff: &takeoff,
            business,
            rules: &book.rules,
            offer: &offer,
            quoted: self.priced,
            number: None,
            replaces: None,
            photos: &[],
        });
        // What is left out is said by what it would have been, not by how it would have been made.
        let told = |word: &str| way == Way::Added || word == "Remove" || word == "Pour";
        let work = work.into_iter().filter(|term| told(&term.word));
        let work = work.map(|term| WorkLine {
            word: term.word,
            text: term.text,
        });
        Ok(ChangedWork {
            way,
            work: work.collect(),
            takeoff,
            offer,
        })
    }
}

impl ChangedWork {
    fn line(&self) -> ChangeLine {
        let named = || {
            let slabs = self.takeoff.slabs.iter();
            let names: Vec<String> = slabs.map(|slab| slab.called.clone()).collect();
            offering::named(&names)
        };
        let quoted = self.offer.quoted();
        let is_off = |line: &&LineItem| matches!(line.cause, Cause::Discount(_));
        let off: Money = quoted
            .lines
            .iter()
            .filter(is_off)
            .map(LineItem::money)
            .sum();
        ChangeLine {
            says: self.takeoff.head.title.clone().unwrap_or_else(named),
            // What is taken off is a line of its own.
            price: Cents(self.way.signed(quoted.totals().price - off)),
            work: self.work.clone(),
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
