//! A demo's takeoff, read and priced, for tests to fill their pages with.

use super::offering::Offering;
use super::views::office::Sheet;
use crate::costing::{Offer, Prices, Pricing, offer, prices};
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::job::{self, Takeoff};
use crate::reading::{Node, Problems, Sources, yaml};
use crate::values::Day;

const BUSINESS: &str = include_str!("../../demo-quotes/business.yaml");
const BOOK: &str = include_str!("../../price-books/river-road.yaml");
pub(super) const PATIO: &str = include_str!("../../demo-quotes/garden-patio.yaml");

pub(super) struct Demo {
    sources: Sources,
    pub takeoff: Takeoff,
    pub business: Business,
    pub book: PriceBook,
    pub days: Vec<Prices>,
    pub offer: Offer,
    pub quoted: Day,
}

impl Demo {
    /// Priced on the day of the quote, all pours alike.
    pub fn new(takeoff: &str) -> Self {
        let (mut sources, mut problems) = (Sources::default(), Problems::default());
        let mut node = |text: &str| -> Node {
            let id = sources.add("demo", text.to_owned());
            yaml::read(id, &sources, &mut Problems::default()).expect("sound YAML")
        };
        let (shop, list, written) = (node(BUSINESS), node(BOOK), node(takeoff));
        let business = business::read(&shop, &mut problems).expect("a business");
        let book = book::read(&list, &mut problems).expect("a book");
        let written = job::read(&written, &mut problems).expect("a takeoff");
        let takeoff = job::resolve(written, "job", &book, &business, &mut problems);
        let takeoff = takeoff.expect("a takeoff");
        let quoted: Day = "2026-05-04".parse().expect("a day");
        let days: Vec<Prices> = takeoff
            .placements
            .iter()
            .map(|_| prices(&book, quoted, &takeoff.name))
            .collect();
        let pricing = Pricing {
            book: &book,
            business: &business,
            days: &days,
        };
        let offer = offer(&takeoff, pricing, &mut problems);
        assert!(problems.is_empty(), "{problems:?}");
        Self {
            sources,
            takeoff,
            business,
            book,
            days,
            offer: offer.expect("an offer"),
            quoted,
        }
    }

    pub fn pricing(&self) -> Pricing<'_> {
        Pricing {
            book: &self.book,
            business: &self.business,
            days: &self.days,
        }
    }

    pub fn offering(&self) -> Offering<'_> {
        Offering {
            takeoff: &self.takeoff,
            business: &self.business,
            rules: &self.book.rules,
            offer: &self.offer,
            quoted: self.quoted,
            number: None,
            replaces: None,
            photos: &[],
        }
    }

    pub fn sheet(&self) -> Sheet<'_> {
        Sheet {
            takeoff: &self.takeoff,
            business: &self.business,
            book: &self.book,
            quoted: self.quoted,
            days: &self.days,
            offer: &self.offer,
            sources: &self.sources,
        }
    }
}
