//! `business.yaml`: who the owner is, how prices are made, what is usual for each kind of slab.

mod escalation;
mod firm;
mod numbers;
mod payments;
mod policy;
mod unforeseen;

use std::collections::BTreeMap;

pub use escalation::Escalation;
pub use firm::Firm;
pub use numbers::{Invoices, Numbers};
pub use payments::Installment;
pub use policy::{
    Buying, Charge, CrewPolicy, CurePolicy, DayCount, DayRule, LaborLines, NightBefore,
    OrderPolicy, PourDayPolicy, PricePolicy, QuotePolicy, SetLids, TaxBase, TaxRule,
};
pub use unforeseen::{Unforeseen, UnforeseenPrice};

use super::site::SitePolicy;
use super::slab_values::SlabValues;
use crate::reading::keys::keys;
use crate::reading::{
    At, Fields, FormatOne, FromKey, Group as _, Node, Place, Problem, Problems, Read,
};
use crate::values::Length;

keys! {
    /// Everything `business.yaml` says.
    pub struct Business in "the business" {
        _format: FormatOne = "format", usual "1", "version of this file's keys", "1";
        firm: Firm = "firm", required, "who you are, for the letterhead", "{name: Larkspur Flatwork}";
        /// Paths as written, from the folder of `business.yaml`.
        books: Vec<At<String>> = "books" as "list of paths", required,
            "price books; the first is the usual one", "[price-books/my-plant.yaml]", by books_named;
        price: PricePolicy = "price", required, "from cost to price", "{overhead: 14%, profit: markup 25%}";
        order: OrderPolicy = "order", none, "what is ordered beyond the drawing", "{allowance: 7%}";
        crew: CrewPolicy = "crew", none, "people and hours", "{people: 3}";
        pour_day: PourDayPolicy = "pour day", none, "what a crew can place and finish before it sets",
            "{longest day: 11 hours}";
        quote: QuotePolicy = "quote", none, "days and limits of a quote", "{good for: 30 days}";
        numbers: Numbers = "numbers", none, "how quotes are numbered", "{pattern: YYYY-0000, start: 41}";
        invoices: Invoices = "invoices", none, "how bills are made", "{due: 10 days}";
        escalation: Option<Escalation> = "escalation", none,
            "a clause by which the price follows a published price of concrete; printed with the terms",
            "{index: the ready-mix price the county posts, reference: 190.00, over: 5%}";
        payments: Vec<Installment> = "payments" as "list", required,
            "when the customer pays, and which share",
            "[When you sign: 10%, When it is done: rest]", by payments::read;
        short_payments: Vec<Installment> = "payments of a short job" as "list", else "those of any job",
            "when forms and pour share a day and payments by stage would fall together",
            "[When you sign: 1/3, When it is done: rest]", by payments::read;
        kinds: BTreeMap<String, Kind> = "kinds" as "keys by kind", required,
            "what is usual for each kind of slab", "{patio: {thickness: 4 in, mix: exterior}}";
        cure: CurePolicy = "cure", none, "temperatures and waiting times", "{cool: 60, warm: 80}";
        promises: Vec<At<String>> = "promises" as "list of sentences", none,
            "what the workmanship promise covers", "[We come back within a year.]";
        assumptions: Vec<String> = "assumptions", none,
            "what every quote counts on", "[Water and power at the house]";
        not_included: Vec<String> = "not included", none, "what no quote contains", "[Town permit]";
        unforeseen: Vec<Unforeseen> = "unforeseen" as "list of prices", none,
            "unit prices for what nobody could see, in dollars or made of items",
            "[Soft soil out: 150.00 per cu yd]", by unforeseen::read, of unforeseen::MadeOf;
        terms: Vec<String> = "terms", none, "your terms", "[Invoices are due in 10 days.]";
        frost_depth: Option<At<Length>> = "frost depth", else "nobody is told of it",
            "how deep the ground freezes where you work; what carries a building goes below it", "36 in";
        site: SitePolicy = "site" as "keys by question", none,
            "usual answers about a site, and which questions are asked",
            "{washout: on site, ask: [overhead wires]}";
        .. place: Place;
    } then address_for_notices
}

keys! {
    /// What is usual for one kind: a takeoff of three lines is priced with these.
    pub struct Kind in "a kind of slab" {
        .. values: SlabValues;
    }
}

/// The price books a business names, whatever else is wrong with it; nothing is reported.
pub fn books(node: &Node) -> Vec<At<String>> {
    let mut unheard = Problems::default();
    let fields = node.fields(Business::TABLE, &mut unheard).ok();
    let books = fields.and_then(|fields| fields.node("books"));
    books.map_or_else(Vec::new, |node| node.texts("`books`", &mut unheard))
}

/// Reads the whole file; what cannot be read is reported.
pub fn read(node: &Node, problems: &mut Problems) -> Read<Business> {
    node.group(problems)
}

fn address_for_notices(business: Business, _: &Fields<'_>, problems: &mut Problems) -> Business {
    if let (None, Some(place)) = (&business.firm.address, business.quote.cancellation) {
        let message = "a customer who cancels has to know where to send the notice";
        let problem = Problem::new("no-address", message).at(place);
        problems.push(problem.help("write the `address` of the firm, which the law's form names"));
    }
    business
}

fn books_named(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<At<String>>> {
    let books: Vec<At<String>> = FromKey::from_key(fields, key, problems)?;
    if books.is_empty() {
        let problem = Problem::new("no-price-book", "`books` names no price book");
        let problem = problem.at(fields.heading());
        problems.push(problem.help("write `books: [price-books/my-plant.yaml]`"));
    }
    Ok(books)
}
