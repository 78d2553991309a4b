//! What the plant charges beside the concrete. The unit of an item says how it counts:
//! by the load, by the ordered cubic yard, or by the trip, which is once a pour.

use std::collections::BTreeMap;

use crate::input::book::ItemKey;
use crate::input::phrases::Season;
use crate::reading::At;
use crate::values::{Amount, Unit};

#[derive(Clone, Debug, Default)]
pub struct Charges {
    /// With every order, such as fuel.
    pub fees: Vec<At<ItemKey>>,
    /// By the part of town a takeoff names; nothing where the plant does not charge for it.
    pub zones: BTreeMap<String, Option<At<ItemKey>>>,
    /// When the takeoff sets the pour on a Saturday.
    pub saturday: Option<At<ItemKey>>,
    pub winter: Option<Winter>,
    /// When the last truck waits for a call.
    pub on_call: Option<At<ItemKey>>,
    pub returned: Option<Returned>,
}

/// Hot water and heated stone for a part of the year.
#[derive(Clone, Debug)]
pub struct Winter {
    pub item: At<ItemKey>,
    pub during: At<Season>,
}

/// Concrete that comes back to the plant.
#[derive(Clone, Debug)]
pub struct Returned {
    pub item: At<ItemKey>,
    /// So much comes back without charge.
    pub over: At<Amount>,
}

impl Charges {
    /// The units in which a charge can be counted.
    pub const UNITS: &'static [Unit] = &[Unit::Load, Unit::CubicYard, Unit::Trip];

    pub fn items(&self) -> impl Iterator<Item = &At<ItemKey>> {
        let winter = self.winter.iter().map(|winter| &winter.item);
        let returned = self.returned.iter().map(|returned| &returned.item);
        self.fees
            .iter()
            .chain(self.zones.values().flatten())
            .chain(&self.saturday)
            .chain(&self.on_call)
            .chain(winter)
            .chain(returned)
    }
}
