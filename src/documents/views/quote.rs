//! Everything a customer's quote says, as finished strings.
//!
//! A plain contract: whoever fills it has done all arithmetic and formatting;
//! the template only places the strings. An empty list or a `None` closes up.
//! Strings are plain text (no markup; escaping is done later), with unbroken
//! spaces between numbers and units where a line must not end.
//!
//! In any string, `{page:choices}` prints the number of the page where that
//! part starts. The parts are `deal`, `choices`, `scope`, `hidden` (unit
//! prices), `acceptance`, `cure`, `terms` and `cancel`.

use serde::Serialize;

/// A quote, top to bottom.
#[derive(Clone, Debug, Serialize)]
pub struct QuoteView {
    pub file: FileFacts,
    pub firm: Firm,
    /// "A new patio, walk and step behind your house"
    pub title: String,
    /// The customer's name and address: "Dana Example, 18 Sample Lane, Quillhaven".
    pub customer: String,
    /// "26-031, May 4, 2026", with the revision if there is one.
    pub quote: String,
    /// "Quote 26-031 for Dana Example, May 4, 2026": beside the firm's name on later pages.
    pub running_head: String,
    pub total: Total,
    /// "This takes the place of our quote of May 4, 2026, then $9,400.00: the work is the same, …"
    pub replaces: Option<String>,
    /// "Remove": "old patio, 200 sq ft, …".
    pub scope: Vec<Term>,
    pub when_we_come: Vec<Sentence>,
    pub not_included: Vec<String>,
    pub payments: Payments,
    pub choices: Option<Choices>,
    pub combinations: Option<Combinations>,
    /// "We counted on": what the price rests on.
    pub assumptions: Vec<String>,
    /// Prices for unforeseen work.
    pub unit_prices: Vec<UnitPriceRow>,
    /// "How we work": what workmanship promises.
    pub promises: Vec<String>,
    /// The kind words just before signing, on cracks and color.
    pub kind_word: Headed,
    /// What the customer initials before signing: "Driveway": "Our truck stands on it. …"
    pub releases: Vec<Term>,
    pub acceptance: Acceptance,
    pub cure: Cure,
    pub care: Vec<Term>,
    pub safety: Vec<Term>,
    /// Paragraphs of the terms.
    pub terms: Vec<String>,
    /// "Local codes, your concrete supplier and licensed professionals decide …"
    pub deferral: String,
    /// Off unless the owner switched it on.
    pub cancellation: Option<Cancellation>,
    /// Two in a row; none prints no heading either.
    pub photos: Vec<Vec<PhotoView>>,
}

/// A picture of the site.
#[derive(Clone, Debug, Serialize)]
pub struct PhotoView {
    /// "photo-1", the name of the drawing
    pub figure: String,
    /// "The gate we come through"
    pub caption: String,
}

/// What the file says of itself.
#[derive(Clone, Debug, Serialize)]
pub struct FileFacts {
    /// "Quote 26-031, Larkspur Flatwork"
    pub title: String,
    pub subject: String,
    /// BCP 47, for example `en-US`.
    pub language: String,
    /// Seconds since 1970 in UTC of the quote's own day; never the clock's.
    pub created: i64,
}

#[derive(Clone, Debug, Serialize)]
pub struct Firm {
    pub name: String,
    pub tagline: Option<String>,
    pub phone: Option<String>,
    pub email: Option<String>,
    pub address: Option<String>,
    /// "License 0000-118"
    pub licence: Option<String>,
    /// "Liability insured to $1,000,000"
    pub insurance: Option<String>,
}

#[derive(Clone, Debug, Serialize)]
pub struct Total {
    /// "$12,200.60"
    pub amount: String,
    /// "Price $11,510.00, less 5% for two patios at once, $575.50"; empty where nothing is taken off.
    pub discounts: String,
    /// "Total, including 6% sales tax of $690.60"
    pub tax_sentence: String,
    /// "Price good until June 3, 2026"
    pub good_until: String,
}

/// A bold word or phrase, and the text that belongs to it.
#[derive(Clone, Debug, Serialize)]
pub struct Term {
    pub word: String,
    pub text: String,
}

impl Term {
    pub fn new(word: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            word: word.into(),
            text: text.into(),
        }
    }
}

/// A sentence with one part in bold: "Start between ", "June 8 and June 19, 2026", ".".
#[derive(Clone, Debug, Serialize)]
pub struct Sentence {
    pub before: String,
    pub strong: String,
    pub after: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct Headed {
    pub heading: String,
    pub text: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct Payments {
    pub rows: Vec<PaymentRow>,
    /// "$12,200.60"
    pub total: String,
    /// "Choices on page {page:choices} change each payment in proportion."
    pub note: Option<String>,
}

#[derive(Clone, Debug, Serialize)]
pub struct PaymentRow {
    /// "When you sign"
    pub event: String,
    /// "10%", or empty when the schedule is in amounts.
    pub share: String,
    /// "$1,220.06"; the dollar sign on the first row only.
    pub amount: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct Choices {
    /// "The slab is complete and sound without any of these. Prices include 6% sales tax."
    pub lead: String,
    pub groups: Vec<ChoiceGroup>,
}

#[derive(Clone, Debug, Serialize)]
pub struct ChoiceGroup {
    /// "Border along the open edges, 60 ft:"
    pub question: String,
    /// "tick one at most"
    pub how_many: String,
    /// Whether the items exclude each other: then "or" stands between the boxes.
    pub only_one: bool,
    pub items: Vec<ChoiceItem>,
}

#[derive(Clone, Debug, Serialize)]
pub struct ChoiceItem {
    pub title: String,
    /// May be empty.
    pub description: String,
    /// "+ 1,314.40"
    pub adds: String,
    /// "13,515.00"
    pub new_total: String,
}

/// The total of every combination of choices, as a grid: rows by columns.
///
/// With one question only, or when a grid makes no sense, use one column and
/// an empty head.
#[derive(Clone, Debug, Serialize)]
pub struct Combinations {
    /// "tax included"
    pub note: String,
    /// "no sealer", "with sealer"; as many as each row has amounts, at most four.
    pub heads: Vec<String>,
    pub rows: Vec<CombinationRow>,
}

#[derive(Clone, Debug, Serialize)]
pub struct CombinationRow {
    /// "Washed pebble border"
    pub name: String,
    pub amounts: Vec<CombinationAmount>,
}

#[derive(Clone, Debug, Serialize)]
pub struct CombinationAmount {
    pub text: String,
    /// The total as quoted stands in bold.
    pub as_quoted: bool,
}

#[derive(Clone, Debug, Serialize)]
pub struct UnitPriceRow {
    /// "Soft soil out, stone in"
    pub work: String,
    /// "per cu yd"
    pub unit: String,
    /// Before tax: "150.00".
    pub price: String,
    pub with_tax: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct Acceptance {
    /// "Yes, please go ahead"
    pub heading: String,
    /// "I accept this quote with the choices ticked above."
    pub sentence: String,
    /// "Total without choices", or "Total".
    pub total_label: String,
    pub total: String,
    /// Whether there is a line for "Total with my choices".
    pub has_choices: bool,
}

#[derive(Clone, Debug, Serialize)]
pub struct Cure {
    /// "While your concrete cures"
    pub heading: String,
    /// "It hardens for weeks, faster when it is warm. …"
    pub lead: String,
}

/// The customer's right to cancel, in the law's own words.
#[derive(Clone, Debug, Serialize)]
pub struct Cancellation {
    /// "You, the buyer, may cancel this transaction …": beside the signature.
    pub statement: String,
    /// "Notice of Cancellation"
    pub heading: String,
    /// Paragraphs of the form.
    pub text: Vec<String>,
    /// "To cancel this transaction, mail or deliver …"
    pub to: String,
    /// What each copy is for.
    pub copies: Vec<String>,
}
