//! Unit prices for what nobody could see: written in dollars, or made of what the work takes.

use crate::input::book::ItemKey;
use crate::input::phrases::Ratio;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Node, Problem, Problems, Read};
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

keys! {
    /// A unit price that is made of what the work takes.
    pub struct MadeOf in "a price for the unforeseen" {
        per: At<Unit> = "per", required, "what the price is for", "cu yd";
        of: Vec<(At<ItemKey>, At<Amount>)> = "of" as "keys by item", required,
            "how much of which item of the price book, or of which purpose under its `use`, one takes; overhead, contingency and profit are added as for the job",
            "{ready-mix: 1 cu yd, labor: 1.2 hours}", by parts;
    }
}

pub(super) fn read(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Vec<Unforeseen> {
    let lines = fields.named(key, problems).into_iter();
    lines
        .filter_map(|(what, price)| {
            let read = if price.is_map() { made_of } else { written };
            let (per, price) = read(price, problems).ok()?;
            let (what, per) = (what.value, per.symbol().to_owned());
            Some(Unforeseen { what, per, price })
        })
        .collect()
}

/// `150.00 per cu yd`.
fn written(price: &Node, problems: &mut Problems) -> Read<(Unit, UnforeseenPrice)> {
    let ratio: Ratio = price.read(problems)?;
    if ratio.much.unit != Unit::Plain {
        let message = "a price for the unforeseen is in dollars";
        let problem = Problem::new("bad-amount", message).at(price.place);
        return Err(problems.push(problem.help("write, for example, `150.00 per cu yd`")));
    }
    let dollars = rounding::to_cents(ratio.much.value);
    Ok((ratio.per.unit, UnforeseenPrice::Written(dollars)))
}

/// `{per: cu yd, of: {ready-mix: 1 cu yd, labor: 1.2 hours}}`.
fn made_of(price: &Node, problems: &mut Problems) -> Read<(Unit, UnforeseenPrice)> {
    let made: MadeOf = price.group(problems)?;
    Ok((made.per.value, UnforeseenPrice::Of(made.of)))
}

fn parts(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Vec<(At<ItemKey>, At<Amount>)>> {
    let of = fields.required(key, problems)?;
    let entries = of.entries("`of`", problems).into_iter();
    Ok(entries
        .filter_map(|entry| Some((entry.name(), entry.node.read_at(problems).ok()?)))
        .collect())
}
