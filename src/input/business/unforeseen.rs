//! Unit prices for what nobody could see: written in dollars, or made of what the work takes.

use super::tables;
use crate::input::book::ItemKey;
use crate::input::phrases::Ratio;
use crate::reading::{At, Node, Problem, Problems};
use crate::values::{Amount, Money, Unit, rounding};

/// A unit price for what nobody could see, before tax.
#[derive(Clone, Debug)]
pub struct Unforeseen {
    pub what: String,
    /// As people read it: `cu yd`.
    pub per: String,
    pub price: UnforeseenPrice,
}

#[derive(Clone, Debug)]
pub enum UnforeseenPrice {
    /// As the owner wrote it.
    Written(Money),
    /// Priced like the job, from what one unit takes of the book.
    Of(Vec<(At<ItemKey>, At<Amount>)>),
}

pub(super) fn unforeseen(node: &Node, problems: &mut Problems) -> Vec<Unforeseen> {
    let lines = crate::input::named_items(node, "`unforeseen`", problems);
    lines
        .into_iter()
        .filter_map(|(what, price)| {
            if price.is_map() {
                made_of(what.value, price, problems)
            } else {
                written(what.value, price, problems)
            }
        })
        .collect()
}

/// `150.00 per cu yd`.
fn written(what: String, price: &Node, problems: &mut Problems) -> Option<Unforeseen> {
    let ratio = price.read::<Ratio>(problems).ok()?;
    if ratio.much.unit != Unit::Plain {
        problems.push(
            Problem::new("bad-amount", "a price for the unforeseen is in dollars")
                .at(price.place)
                .help("write, for example, `150.00 per cu yd`"),
        );
        return None;
    }
    Some(Unforeseen {
        what,
        per: ratio.per.unit.symbol().to_owned(),
        price: UnforeseenPrice::Written(rounding::to_cents(ratio.much.value)),
    })
}

/// `{per: cu yd, of: {ready-mix: 1 cu yd, labor: 1.2 hours}}`.
fn made_of(what: String, price: &Node, problems: &mut Problems) -> Option<Unforeseen> {
    let fields = price.fields(&tables::UNFORESEEN, problems).ok()?;
    let per: Option<At<Unit>> = fields.need("per", problems).ok();
    let of = fields.required("of", problems).ok()?;
    let mut parts = Vec::new();
    for entry in of.entries("`of`", problems) {
        if let Some(amount) = entry.node.read::<Amount>(problems).ok() {
            let item = At {
                value: entry.key.clone(),
                place: entry.key_place,
            };
            parts.push((
                item,
                At {
                    value: amount,
                    place: entry.node.place,
                },
            ));
        }
    }
    Some(Unforeseen {
        what,
        per: per?.value.symbol().to_owned(),
        price: UnforeseenPrice::Of(parts),
    })
}
