//! Boxes and covers that are set in slabs: opening, maker's load, lids.

use super::ItemKey;
use super::tables::BOX_STOCK;
use crate::input::phrases::{Opening, Pounds};
use crate::reading::{At, Fields, Node, Place, Problem, Problems, words};
use crate::values::{Amount, Length, Unit};

/// A box as it is bought.
#[derive(Clone, Debug)]
pub struct BoxStock {
    pub item: At<ItemKey>,
    /// What the customer reads.
    pub called: Option<String>,
    pub opening: At<Opening>,
    pub depth: Option<At<Length>>,
    /// The load the maker tested it for, or calls it rated for.
    pub rated: Option<At<Pounds>>,
    /// The load the maker designed it for.
    pub design_load: Option<At<Pounds>>,
    pub stands_for: Option<At<StandsFor>>,
    /// The maker's own word for its class; makers use the same words differently.
    pub says: Option<At<String>>,
    pub lid: Option<At<ItemKey>>,
    pub temporary_lid: Option<At<ItemKey>>,
    /// Brings an existing cover up.
    pub ring: Option<At<ItemKey>>,
    /// To set one; without it the rate `set box` holds.
    pub hours: Option<At<Amount>>,
}

words! {
    /// Who may pass over it, as the maker states.
    pub enum StandsFor("unknown-word", "a box does not stand for `{}`", choose) {
        Walk "walk";
        Passenger "passenger" "(cars)";
        Vehicle "vehicle" "(trucks), as its maker states";
    }
}

pub(super) fn read(node: &Node, problems: &mut Problems) -> Option<BoxStock> {
    let fields = node.fields(&BOX_STOCK, problems).ok()?;
    let item = fields
        .required("item", problems)
        .ok()
        .and_then(|_| fields.read::<String>("item", problems));
    let opening = fields.need("opening", problems).ok();
    let hours = fields
        .read("hours", problems)
        .and_then(|at| crate::input::checks::in_unit(at, Unit::Hour, "hours", problems).ok());
    let stock = BoxStock {
        called: fields.read::<String>("called", problems).map(|at| at.value),
        depth: depth(&fields, problems),
        rated: fields.read("rated", problems),
        design_load: fields.read("design load", problems),
        stands_for: fields.read("stands for", problems),
        says: fields.read::<String>("says", problems),
        lid: fields.read::<String>("lid", problems),
        temporary_lid: fields.read::<String>("temporary lid", problems),
        ring: fields.read::<String>("ring", problems),
        hours,
        item: item?,
        opening: opening?,
    };
    Some(stock)
}

fn depth(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<Length>> {
    let text = fields.read::<String>("depth", problems)?;
    match crate::input::phrases::positive(&text.value) {
        Ok(value) => Some(At {
            value,
            place: text.place,
        }),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(text.place));
            None
        }
    }
}

impl BoxStock {
    /// Every item it names, with the place of the name.
    pub(super) fn items(&self) -> impl Iterator<Item = (&str, Place)> {
        [
            Some(&self.item),
            self.lid.as_ref(),
            self.temporary_lid.as_ref(),
            self.ring.as_ref(),
        ]
        .into_iter()
        .flatten()
        .map(|at| (at.value.as_str(), at.place))
    }
}
