//! Everything the office's cost sheet says, as finished strings; nobody else gets it.
//!
//! A plain contract like the quote's view: the template only places the strings, and
//! what is empty closes up. A row's `kind` is `plain`, `group` (white above it), `sum`
//! (bold, white above it) or `total` (bold, a rule above it).

use serde::Serialize;

use super::quote::FileFacts;

/// A cost sheet, top to bottom.
#[derive(Clone, Debug, Serialize)]
pub struct CostView {
    pub file: FileFacts,
    /// Who wrote the file.
    pub firm: String,
    /// "For the office – not for the customer": on every page.
    pub warning: &'static str,
    /// "Cost sheet, Garden patio": at the right end of the band.
    pub beside: String,
    /// "What this job costs us"
    pub title: &'static str,
    /// "For Dana Example, quoted May 4, 2026. …"
    pub facts: String,
    /// Four key figures.
    pub figures: Vec<KeyFigure>,
    pub lines: Vec<OrderRow>,
    pub hours: Vec<HourRow>,
    pub price: Vec<PriceRow>,
    pub rise: Rise,
    /// What the rules of buying cost.
    pub buying: Vec<BuyingRow>,
    pub parts: Vec<PartRow>,
    pub choices: Vec<ChoiceRow>,
    pub set: Vec<SetRow>,
    pub advice: Vec<AdviceRow>,
}

#[derive(Clone, Debug, Serialize)]
pub struct KeyFigure {
    /// "Margin, floor 15%"
    pub label: String,
    /// "20.02%"
    pub amount: String,
}

/// One line of direct cost.
#[derive(Clone, Debug, Default, Serialize)]
pub struct OrderRow {
    pub kind: &'static str,
    /// "Materials" on the first line of a class or a group of the owner's, else empty.
    pub class: String,
    pub item: String,
    /// "6.81 cu yd + 0.4767 cu yd, up to the next 0.25"
    pub working: String,
    pub quantity: String,
    pub unit: String,
    pub price: String,
    pub amount: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct HourRow {
    pub kind: &'static str,
    pub task: String,
    /// "200 sq ft"
    pub work: String,
    /// "4.5 hours per 100 sq ft"
    pub rate: String,
    pub hours: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct PriceRow {
    pub kind: &'static str,
    pub label: String,
    pub amount: String,
    /// "21.2%" of the price before tax.
    pub share: String,
}

/// What a rise of single items does.
#[derive(Clone, Debug, Serialize)]
pub struct Rise {
    /// "What a rise of 10% of each item does"
    pub title: String,
    /// What margin and room mean.
    pub note: String,
    /// "+1%", "+5%", "+10%": heads of the amounts of each row.
    pub heads: Vec<String>,
    pub rows: Vec<RiseRow>,
}

#[derive(Clone, Debug, Serialize)]
pub struct RiseRow {
    pub item: String,
    /// "174.00", or both prices where two pours have different ones.
    pub price: String,
    /// More cost, one for each head.
    pub more: Vec<String>,
    /// Cost and price before tax after the largest rise, by the same policy.
    pub cost: String,
    pub then: String,
    /// The margin if today's price is held.
    pub margin: String,
    pub room: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct BuyingRow {
    pub kind: &'static str,
    /// "Allowance"
    pub rule: &'static str,
    /// "Ready-mix, 4,000 psi, with air"
    pub item: String,
    /// "0.4767 cu yd"
    pub much: String,
    pub cost: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct PartRow {
    pub kind: &'static str,
    pub part: String,
    pub price: String,
    /// "15.27" a sq ft of a slab; `flatwork cost` has cost, feet and yards too.
    pub of_one: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct ChoiceRow {
    /// "Clear sealer", or "nothing, as quoted".
    pub taken: String,
    pub price: String,
    pub total: String,
    /// "20.02%", and "below floor" where it is.
    pub margin: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct SetRow {
    pub name: String,
    pub set: String,
    pub computed: String,
    pub because: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct AdviceRow {
    pub message: String,
    /// "business.yaml:27"
    pub at: String,
}
