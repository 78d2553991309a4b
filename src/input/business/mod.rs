//! `business.yaml`: who the owner is, how prices are made, what is usual for each kind of slab.

mod escalation;
mod firm;
mod kinds;
mod lists;
mod numbers;
mod policy;
mod retarder;
pub mod tables;
mod unforeseen;

use std::collections::BTreeMap;

pub use escalation::Escalation;
pub use firm::Firm;
pub use kinds::Kind;
pub use lists::Payment;
pub use numbers::{Invoices, Numbers};
pub use policy::{
    Charge, CrewPolicy, CurePolicy, DayCount, DayRule, LaborLines, OrderPolicy, PricePolicy,
    QuotePolicy, TaxBase, TaxRule,
};

pub use unforeseen::{Unforeseen, UnforeseenPrice};

use crate::reading::{At, Node, Place, Problem, Problems};

/// Everything `business.yaml` says.
#[derive(Clone, Debug)]
pub struct Business {
    pub place: Place,
    pub firm: Firm,
    /// Paths as written, from the folder of `business.yaml`; the first is the usual one.
    pub books: Vec<At<String>>,
    pub price: PricePolicy,
    pub order: OrderPolicy,
    pub crew: CrewPolicy,
    pub quote: QuotePolicy,
    pub payments: Vec<Payment>,
    pub kinds: BTreeMap<String, Kind>,
    pub cure: CurePolicy,
    pub promises: Vec<String>,
    pub assumptions: Vec<String>,
    pub not_included: Vec<String>,
    pub unforeseen: Vec<Unforeseen>,
    pub terms: Vec<String>,
    pub numbers: Numbers,
    pub invoices: Invoices,
    pub escalation: Option<Escalation>,
    pub site: crate::input::site::SitePolicy,
}

/// The price books a business names, whatever else is wrong with it; nothing is reported.
pub fn books(node: &Node) -> Vec<At<String>> {
    let mut unheard = Problems::default();
    let Some(fields) = node.fields(&tables::BUSINESS, &mut unheard).ok() else {
        return Vec::new();
    };
    let books = fields.node("books");
    books
        .map(|node| lists::texts_at(node, "`books`", &mut unheard))
        .unwrap_or_default()
}

/// Reads the whole file; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Option<Business> {
    let fields = node.fields(&tables::BUSINESS, problems).ok()?;
    super::format_one(&fields, problems);
    let firm = fields
        .required("firm", problems)
        .ok()
        .and_then(|node| firm::read(node, problems));
    let books = fields
        .required("books", problems)
        .ok()
        .map(|node| lists::texts_at(node, "`books`", problems));
    if let Some(books) = &books
        && books.is_empty()
    {
        problems.push(
            Problem::new("no-price-book", "`books` names no price book")
                .at(fields.heading())
                .help("write `books: [price-books/my-plant.yaml]`"),
        );
    }
    let price = fields
        .required("price", problems)
        .ok()
        .and_then(|node| policy::price(node, problems));
    let order = policy::order(fields.node("order"), fields.heading(), problems);
    let crew = policy::crew(fields.node("crew"), fields.heading(), problems);
    let quote = policy::quote(fields.node("quote"), fields.heading(), problems);
    let payments = fields
        .required("payments", problems)
        .ok()
        .map(|node| lists::payments(node, problems));
    let kinds = fields
        .required("kinds", problems)
        .ok()
        .map(|node| kinds::read(node, problems));
    let cure = policy::cure(fields.node("cure"), fields.heading(), problems);
    let mut texts = |key: &str| {
        fields
            .node(key)
            .map(|node| lists::texts(node, key, problems))
            .unwrap_or_default()
    };
    let (promises, assumptions) = (texts("promises"), texts("assumptions"));
    let (not_included, terms) = (texts("not included"), texts("terms"));
    let unforeseen = fields
        .node("unforeseen")
        .map(|node| unforeseen::unforeseen(node, problems))
        .unwrap_or_default();
    let numbers = numbers::read(fields.node("numbers"), fields.heading(), problems);
    let invoices = numbers::invoices(fields.node("invoices"), fields.heading(), problems);
    let escalation = fields.node("escalation");
    let escalation = escalation.and_then(|node| escalation::read(node, problems));
    let cancellation = quote.as_ref().and_then(|quote| quote.cancellation);
    if let (Some(firm), Some(place)) = (&firm, cancellation)
        && firm.address.is_none()
    {
        problems.push(
            Problem::new(
                "no-address",
                "a customer who cancels has to know where to send the notice",
            )
            .at(place)
            .help("write the `address` of the firm, which the law's form names"),
        );
    }
    let site = crate::input::site::policy(fields.node("site"), problems);
    Some(Business {
        place: fields.heading(),
        firm: firm?,
        books: books?,
        price: price?,
        order: order?,
        crew: crew?,
        quote: quote?,
        payments: payments?,
        kinds: kinds?,
        cure: cure?,
        promises,
        assumptions,
        not_included,
        unforeseen,
        terms,
        numbers: numbers?,
        invoices: invoices?,
        escalation,
        site,
    })
}
