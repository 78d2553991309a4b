//! Machines that bring concrete to the slab, and how they are hired.

use crate::input::book::ItemKey;
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::values::{Amount, Length};

/// A pump, hired by the hour; the item's own steps and smallest sale are those of the hire.
#[derive(Clone, Debug)]
pub struct PumpHire {
    pub item: At<ItemKey>,
    /// Cubic yards an hour.
    pub rate: At<Ratio>,
    /// Hours that are paid beside pumping.
    pub set_up: At<Amount>,
    pub travel_time: At<Amount>,
    /// Items charged once a pour, each with its purpose.
    pub once: Vec<(&'static str, At<ItemKey>)>,
    pub hose: Option<Hose>,
}

/// Hose beyond what comes with the pump.
#[derive(Clone, Debug)]
pub struct Hose {
    pub item: At<ItemKey>,
    pub included: At<Length>,
}

#[derive(Clone, Debug)]
pub struct BuggyHire {
    /// By the day or the hour.
    pub item: At<ItemKey>,
    pub width: Option<At<Length>>,
}

impl PumpHire {
    /// Keys of items that are charged once a pour.
    pub const ONCE: [&'static str; 4] = ["base charge", "travel", "prime", "washout"];
}
