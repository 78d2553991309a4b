//! What the plant, the hire yard and the dump charge, and what the customer reads of it.

mod bags;
mod cheapest;
mod placing;
mod plant;
mod removal;
mod words;

use flatwork::inside::costing::Offer;
use flatwork::inside::trade::order::{Need, NeedItem};
use rust_decimal::Decimal;

use crate::support::{BUSINESS, desk};

/// A patio of 9 cu yd net: 9.63 with its allowance, 10 as the far bank sells it.
const NINE_YARDS: &str =
    "customer: Ira Sample\nslabs:\n  patio: {size: 27 ft x 27 ft, edges: {north: house}}\n";

fn offer(more: &str, book: &str) -> Offer {
    desk(&format!("{NINE_YARDS}{more}\n"), BUSINESS, book).offer()
}

/// How much is bought under this name; none where nothing is.
fn bought(offer: &Offer, name: &str) -> Option<Decimal> {
    need(offer, name).map(|need| need.quantity.value())
}

fn need<'a>(offer: &'a Offer, name: &str) -> Option<&'a Need> {
    let needs = &offer.quoted().needs.needs;
    needs.iter().find(|need| need.quantity.name() == name)
}

fn item(need: &Need) -> &str {
    match &need.item {
        NeedItem::Item(key) => &key.value,
        NeedItem::Lump { .. } => "",
    }
}
