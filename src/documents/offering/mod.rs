//! From an offer to the customer's quote: plain words and finished strings.
//!
//! Only what a customer may see passes through here: no cost, no margin, no
//! supplier, no item of the price book.

mod access;
mod around;
pub(super) use around::short;
mod cancellation;
mod choices;
mod cure;
mod dowels;
mod english;
mod excluded;
mod falls;
mod money;
mod openings;
pub(super) mod phrases;
mod plan;
mod removal;
mod scope;
mod season;
mod sections;
mod set;
mod site;
mod surface;
mod when;

use std::collections::BTreeMap;

use super::views::quote::{
    Acceptance, Cure, FileFacts, Firm, Headed, PhotoView, QuoteView, Term, Total,
};
use crate::costing::{Offer, Totals};
use crate::input::business::Business;
use crate::input::job::Takeoff;
use crate::office::record::Replaces;
use crate::press::drawing::{Drawing, Rgb, Size};
use crate::press::photo::Photo;
use crate::values::Day;

/// What a quote is made of.
#[derive(Clone, Copy, Debug)]
pub struct Offering<'a> {
    pub takeoff: &'a Takeoff,
    pub business: &'a Business,
    pub rules: &'a crate::input::book::Rules,
    pub offer: &'a Offer,
    pub quoted: Day,
    /// The number it is issued under, with its revision.
    pub number: Option<&'a str>,
    /// The quote whose place it takes, where the customer is told.
    pub replaces: Option<Replaces>,
    /// Pictures of the site for the customer.
    pub photos: &'a [Shown],
}

impl Offering<'_> {
    /// The last day on which the price holds.
    fn good_until(&self) -> Day {
        self.quoted.plus(i64::from(self.business.quote.good_for.0))
    }

    /// Whether any edge of it needs a form.
    fn has_forms(&self) -> bool {
        self.offer.quoted().needs.slabs.iter().any(|slab| {
            let edges = [&slab.edges.straight, &slab.edges.deep, &slab.edges.curved];
            edges.iter().any(|edge| !edge.value().is_zero())
        })
    }
}

/// A photo, and what the customer reads below it.
#[derive(Clone, Debug)]
pub struct Shown {
    pub photo: Photo,
    pub caption: String,
}

/// Everything the quote says.
pub fn view(of: Offering<'_>) -> QuoteView {
    let totals = of.offer.quoted().totals();
    let day = of.quoted.long();
    let quote = match of.number {
        Some(number) => format!("{number}, {day}"),
        None => day.clone(),
    };
    let title = of
        .takeoff
        .head
        .title
        .clone()
        .unwrap_or_else(|| around::title(of.takeoff));
    let customer = &of.takeoff.customer;
    let has_choices = !of.takeoff.options.is_empty();
    let must_choose = of.takeoff.options.iter().any(|group| group.must_choose);
    QuoteView {
        file: FileFacts {
            title: match of.number {
                Some(number) => format!("Quote {number}, {}", of.business.firm.name),
                None => format!("Quote for {}, {}", customer.name, of.business.firm.name),
            },
            subject: title.clone(),
            language: "en-US".to_owned(),
            created: of.quoted.noon(),
        },
        firm: firm(of.business),
        title,
        customer: self::customer(&customer.name, customer.address.as_deref()),
        running_head: match of.number {
            Some(number) => format!("Quote {number} for {}, {day}", customer.name),
            None => format!("Quote for {}, {day}", customer.name),
        },
        quote,
        total: total(of, &totals),
        replaces: of.replaces.map(|before| replaces(before, &totals)),
        scope: scope::scope(of),
        when_we_come: when::when(of),
        not_included: around::not_included(of),
        payments: money::payments(of, &totals),
        choices: has_choices.then(|| choices::choices(of)),
        combinations: choices::combinations(of),
        assumptions: around::assumptions(of),
        unit_prices: money::unit_prices(of),
        promises: of
            .business
            .promises
            .iter()
            .map(|promise| phrases::printed(&promise.value))
            .collect(),
        kind_word: Headed {
            heading: english::KIND_HEADING.to_owned(),
            text: surface::kind_word(of),
        },
        releases: site::releases(of),
        acceptance: Acceptance {
            heading: english::ACCEPT_HEADING.to_owned(),
            sentence: match (has_choices, must_choose) {
                (_, true) => english::ACCEPT_WITH_ONE_OF_EACH,
                (true, false) => english::ACCEPT_WITH_CHOICES,
                (false, false) => english::ACCEPT,
            }
            .to_owned(),
            total_label: match (has_choices, must_choose) {
                (_, true) => "Total as quoted",
                (true, false) => "Total without choices",
                (false, false) => "Total",
            }
            .to_owned(),
            total: totals.total.to_string(),
            has_choices,
        },
        cure: Cure {
            heading: english::CURE_HEADING.to_owned(),
            lead: season::lead(of),
        },
        care: surface::care(of),
        safety: english::terms(english::SAFETY),
        terms: paragraphs(&terms(of.business)),
        deferral: english::DEFERRAL.to_owned(),
        cancellation: cancellation::cancellation(of.business),
        photos: photos(of),
    }
}

/// What will be done, for a part of a job; what has no slab is broken out or nothing to describe.
pub fn work(of: Offering<'_>) -> Vec<Term> {
    let told = |word: &str| !of.takeoff.slabs.is_empty() || word == "Permit" || word == "Remove";
    let terms = scope::scope(of).into_iter();
    terms.filter(|term| told(&term.word)).collect()
}

/// Names as a title: `Walk and landing`.
pub fn named(names: &[String]) -> String {
    phrases::capital(&phrases::list(names))
}

/// The figures of the quote, by the names its template uses.
pub fn figures(of: Offering<'_>, accent: Rgb) -> BTreeMap<String, Drawing> {
    let mut figures = BTreeMap::from([
        ("plan".to_owned(), plan::figure(of, accent)),
        ("cure".to_owned(), cure::figure(of, accent)),
    ]);
    for (number, shown) in (1..).zip(of.photos) {
        let figure = shown.photo.figure(PHOTO, phrases::printed(&shown.caption));
        figures.insert(photo_name(number), figure);
    }
    figures
}

/// Half a page wide, and so high that two rows and their words fit on a page with the terms.
const PHOTO: Size = Size {
    width: 252.0,
    height: 189.0,
};

fn photo_name(number: usize) -> String {
    format!("photo-{number}")
}

/// Two in a row.
fn photos(of: Offering<'_>) -> Vec<Vec<PhotoView>> {
    let views: Vec<PhotoView> = (1..)
        .zip(of.photos)
        .map(|(number, shown)| PhotoView {
            figure: photo_name(number),
            caption: phrases::printed(&shown.caption),
        })
        .collect();
    views.chunks(2).map(<[PhotoView]>::to_vec).collect()
}

/// Name and address.
pub(super) fn customer(name: &str, address: Option<&str>) -> String {
    address.map_or_else(|| name.to_owned(), |address| format!("{name}, {address}"))
}

pub(super) fn firm(business: &Business) -> Firm {
    let firm = &business.firm;
    Firm {
        name: firm.name.clone(),
        tagline: firm.does.clone(),
        phone: firm.phone.clone(),
        email: firm.email.clone(),
        address: firm.address.clone(),
        licence: firm
            .license
            .as_ref()
            .map(|number| format!("License {number}")),
        insurance: firm.insurance.clone(),
    }
}

/// What changed, and nothing of why: what we pay is ours alone.
fn replaces(before: Replaces, totals: &Totals) -> String {
    let (day, was) = (before.day.0.long(), before.total.0);
    if was == totals.total {
        return format!("This takes the place of our quote of {day}; the price is the same.");
    }
    format!(
        "This takes the place of our quote of {day}, then {was}: the work is the same, prices have moved."
    )
}

fn total(of: Offering<'_>, totals: &Totals) -> Total {
    Total {
        amount: totals.total.to_string(),
        discounts: money::discounts(of),
        tax_sentence: money::tax_sentence(of),
        good_until: format!("Price good until {}", of.good_until().long()),
    }
}

/// The owner's sentences, and the clause of an index where there is one.
fn terms(business: &Business) -> Vec<String> {
    let clause = business
        .escalation
        .iter()
        .map(crate::input::business::Escalation::clause);
    business.terms.iter().cloned().chain(clause).collect()
}

/// Sentences in two paragraphs of about the same length, for two columns.
fn paragraphs(sentences: &[String]) -> Vec<String> {
    let whole: usize = sentences.iter().map(String::len).sum();
    let mut first = 0;
    let mut length = 0;
    while first < sentences.len() && length * 2 < whole {
        length += sentences[first].len();
        first += 1;
    }
    let parts = [&sentences[..first], &sentences[first..]];
    parts
        .iter()
        .filter(|part| !part.is_empty())
        .map(|part| phrases::printed(&part.join(" ")))
        .collect()
}
