//! Boxes and covers that are set in slabs: opening, maker's load, lids.

use super::item::ItemKey;
use crate::input::checks::{length_of_some, work_time, written};
use crate::input::phrases::{OpeningPhrase, Pounds};
use crate::reading::keys::keys;
use crate::reading::{At, words};
use crate::values::{Amount, Length};

keys! {
    /// A box as it is bought.
    pub struct BoxStock in "a box" {
        item: At<ItemKey> = "item" as "name", required,
            "the item that is bought, by the piece", "valve box 12 x 18";
        opening: At<OpeningPhrase> = "opening" as "opening", required,
            "the hole it makes: `8 in round`, or east-west x north-south", "12 in x 18 in";
        called: Option<String> = "called", else "its name", "what the customer reads", "valve box";
        depth: Option<At<Length>> = "depth", none, "of the box, top to bottom", "12 in", by length_of_some;
        rated: Option<At<Pounds>> = "rated", none, "the load its maker tested it for", "20800 lb";
        design_load: Option<At<Pounds>> = "design load", none,
            "the load its maker designed it for", "22500 lb";
        stands_for: Option<At<StandsFor>> = "stands for", none,
            "walk, passenger (cars) or vehicle (trucks), as its maker states", "vehicle";
        says: Option<At<String>> = "says", none,
            "the maker's word for its class, for the office; makers disagree on such words", "Tier 22";
        lid: Option<At<ItemKey>> = "lid" as "name", none,
            "its lid, where that is bought by itself", "steel lid 12 x 18";
        temporary_lid: Option<At<ItemKey>> = "temporary lid" as "name", none,
            "stands until a lid on order comes", "plywood lid";
        ring: Option<At<ItemKey>> = "ring" as "name", none,
            "brings an existing cover up to the new surface", "riser ring";
        hours: Option<At<Amount>> = "hours" as "hours", else "the rate `set box`",
            "to set one", "3/4 hour", then written(work_time);
    }
}

words! {
    /// Who may pass over it, as the maker states.
    pub enum StandsFor("unknown-word", "a box does not stand for `{}`", choose) {
        Walk "walk";
        Passenger "passenger" "(cars)";
        Vehicle "vehicle" "(trucks), as its maker states";
    }
}

impl BoxStock {
    /// Every item it names.
    pub(super) fn items(&self) -> impl Iterator<Item = &At<ItemKey>> {
        let more = [&self.lid, &self.temporary_lid, &self.ring];
        std::iter::once(&self.item).chain(more.into_iter().flatten())
    }
}
