//! What the plant charges beside the concrete. The unit of an item says how it counts:
//! by the load, by the ordered cubic yard, or by the trip, which is once a pour.

use std::collections::BTreeMap;

use super::item::{ItemKey, item_named, or_none};
use crate::input::checks::cubic_yards;
use crate::input::phrases::Season;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problems};
use crate::values::Amount;

keys! {
    pub struct Charges in "`supply`" {
        /// With every order, such as fuel.
        fees: Vec<At<ItemKey>> = "fees" as "list of names", none,
            "items charged with every order; the unit of each says how: load, cu yd, or trip (once a pour)",
            "[fuel]", by fees;
        /// By the part of town a takeoff names; nothing where the plant does not charge for it.
        zones: BTreeMap<String, Option<At<ItemKey>>> = "zones" as "keys by zone", none,
            "an item for each part of town that a takeoff may name, counted the same way; with a part for `none`, a job that names no zone is not asked about",
            "{town: none, north: north zone}", by zones;
        /// When the takeoff sets the pour on a Saturday.
        saturday: Option<At<ItemKey>> = "saturday" as "name", none,
            "the item charged when the takeoff sets the pour on a Saturday", "Saturday opening";
        winter: Option<Winter> = "winter", none, "the item charged in a part of the year",
            "{item: winter heat, during: 11-01 to 03-31}";
        /// When the last truck waits for a call.
        on_call: Option<At<ItemKey>> = "on call" as "name", none,
            "the item charged when the last truck waits for your call", "load on call";
        returned: Option<Returned> = "returned", none,
            "the item charged for what comes back when nothing is lost",
            "{item: returned concrete, over: 1 cu yd}";
    }
}

keys! {
    /// Hot water and heated stone for a part of the year.
    pub struct Winter in "`winter`" {
        item: At<ItemKey> = "item" as "name", required, "an item by the cu yd, load or trip", "winter heat";
        during: At<Season> = "during" as "days of the year", required,
            "first and last day, month and day", "11-01 to 03-31";
    }
}

keys! {
    /// Concrete that comes back to the plant.
    pub struct Returned in "`returned`" {
        item: At<ItemKey> = "item" as "name", required,
            "an item by the cu yd, load or trip", "returned concrete";
        /// So much comes back without charge.
        over: At<Amount> = "over" as "cubic yards", usual "0 cu yd",
            "so much may come back without charge", "1 cu yd", then cubic_yards;
    }
}

fn fees(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<At<ItemKey>> {
    let mut found = Vec::new();
    if let Some(node) = fields.node(key) {
        for line in node.items("`fees`", problems) {
            found.extend(item_named(line, problems));
        }
    }
    found
}

fn zones(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> BTreeMap<String, Option<At<ItemKey>>> {
    let mut found = BTreeMap::new();
    if let Some(node) = fields.node(key) {
        for zone in node.entries("`zones`", problems) {
            if let Ok(item) = item_named(&zone.node, problems) {
                found.insert(zone.key.clone(), or_none(item));
            }
        }
    }
    found
}

impl Charges {
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
