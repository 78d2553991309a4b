//! Rules of buying: which item is meant, in what pieces it is sold. No price is known here.

use std::collections::{BTreeMap, BTreeSet};

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

mod charges;
pub(super) mod dowels;
mod hire;
mod read;
mod surfaces;
mod units;

pub use charges::{Charges, Returned, Winter};
pub use dowels::{Adhesive, DowelStock};
pub use hire::{BuggyHire, Hose, PumpHire};
pub(super) use read::read;
pub(super) use surfaces::check;
pub use surfaces::{Color, Curing, Finish, Sealer, SurfaceItem, Surfaces};
pub(super) use units::check as check_units;

use super::ItemKey;
use super::rates::Rates;
use crate::input::phrases::{LapPhrase, Ratio};
use crate::reading::{At, Place, words};
use crate::values::{Amount, Length, Percent, Unit};

/// Everything of the book except prices.
#[derive(Clone, Debug, Default)]
pub struct Rules {
    pub mixes: BTreeMap<String, Mix>,
    pub bases: BTreeMap<String, BaseStock>,
    pub bars: BTreeMap<String, BarStock>,
    pub mesh: BTreeMap<String, MeshStock>,
    pub fiber: BTreeMap<String, FiberStock>,
    pub dowels: BTreeMap<String, DowelStock>,
    pub surfaces: Surfaces,
    pub disposal: BTreeMap<String, Dumping>,
    pub boxes: BTreeMap<String, super::BoxStock>,
    pub site: BTreeMap<crate::input::site::Question, super::SiteRule>,
    pub supply: Option<Supply>,
    pub pump: Option<PumpHire>,
    pub buggy: Option<BuggyHire>,
    pub roles: BTreeMap<Role, At<Option<ItemKey>>>,
    pub rates: Rates,
    /// Names whose entry could not be read; nobody is told a second time that they are unknown.
    pub broken: BTreeSet<String>,
    /// How each item is sold; prices stay in the book.
    pub selling: BTreeMap<ItemKey, Selling>,
    /// Where `use` and `rates` stand, for messages about what they lack.
    pub place: Option<Place>,
}

/// How an item is sold, without its price.
#[derive(Clone, Debug)]
pub struct Selling {
    pub unit: Unit,
    /// Bought in such steps; zero when it is weighed or measured.
    pub step: Decimal,
    pub smallest: Decimal,
    /// Hours that come with each.
    pub work: Option<At<Ratio>>,
    pub place: Place,
}

#[derive(Clone, Debug)]
pub struct Mix {
    pub item: At<ItemKey>,
    pub strength: At<Amount>,
    pub air: At<Percent>,
    pub aggregate: At<Length>,
    pub cement: At<Cement>,
    /// Pounds in a yard, where the owner knows them.
    pub cement_content: Option<At<Ratio>>,
}

words! {
    /// How fast it hardens, the slowest first.
    pub enum Cement("unknown-word", "`cement` is not `{}`", either) {
        /// Type IL and other blends: the curve of ordinary cement, stretched in time
        /// by the owner's lag (common practice, no source).
        Blended "blended";
        /// Types I and II.
        Ordinary "ordinary";
        /// Type III.
        HighEarly "early";
    }
}

#[derive(Clone, Debug)]
pub struct BaseStock {
    pub item: At<ItemKey>,
    pub delivered: At<Ratio>,
}

#[derive(Clone, Debug)]
pub struct BarStock {
    pub item: At<ItemKey>,
    pub stock: At<Length>,
    pub lap: At<LapPhrase>,
    pub grade: At<Grade>,
}

words! {
    /// Thousands of psi at which a bar yields.
    pub enum Grade("unknown-word", "`grade` is not `{}`", choose) {
        Sixty "60";
        Forty "40";
    }
}

impl Grade {
    pub const fn psi(self) -> Decimal {
        match self {
            Self::Sixty => dec!(60000),
            Self::Forty => dec!(40000),
        }
    }
}

#[derive(Clone, Debug)]
pub struct MeshStock {
    pub item: At<ItemKey>,
    pub width: At<Length>,
    pub length: At<Length>,
    pub lap: At<Length>,
}

#[derive(Clone, Debug)]
pub struct FiberStock {
    pub item: At<ItemKey>,
    pub by: FiberBy,
    pub dose: At<Ratio>,
    pub bag: At<Amount>,
}

words! {
    /// Who adds the fiber: the plant by the yard, or the crew by the bag.
    pub enum FiberBy("unknown-word", "`by` is not `{}`", choose) {
        Plant "plant";
        Us "us";
    }
}

#[derive(Clone, Debug)]
pub struct Dumping {
    pub item: At<ItemKey>,
    /// Loose yards from one solid yard.
    pub loose: At<Amount>,
    pub weight: At<Ratio>,
    pub load: At<Amount>,
}

/// How the plant sells concrete.
#[derive(Clone, Debug)]
pub struct Supply {
    pub sold_in: At<Amount>,
    pub smallest: At<Amount>,
    pub truck: At<Amount>,
    pub short_load: Option<ShortLoad>,
    /// Minutes for each yard or for each load.
    pub free_time: At<Ratio>,
    pub pump_prime: At<Amount>,
    pub filling: Filling,
    pub charges: Charges,
}

words! {
    /// How an order is spread over its trucks.
    pub enum Filling("unknown-word", "`loads` is not `{}`", choose) {
        /// Full trucks, and the rest on the last.
        InTurn "in turn";
        Evened "evened";
    }
}

#[derive(Clone, Debug)]
pub struct ShortLoad {
    pub under: At<Amount>,
    pub counted: ShortCount,
    pub charge: ShortCharge,
}

words! {
    /// Which loads are looked at for being short.
    pub enum ShortCount("unknown-word", "`counted` is not `{}`", either) {
        ByTruck "by truck";
        ByOrder "by order";
        LastTruck "on the last truck";
    }
}

words! {
    /// What a short load is charged by.
    pub enum ShortCharge("unknown-word", "`charge` is not `{}`", choose) {
        /// Each yard that is missing.
        EachYard "each yard";
        Flat "flat";
    }
}

words! {
    /// What an item may stand for in every job; `units.rs` says by which units it may be sold.
    pub enum Role {
        Forms "forms";
        DeepForms "deep forms";
        Stakes "stakes";
        IsolationStrip "isolation strip";
        CuringCompound "curing compound";
        VaporRetarder "vapor retarder";
        CuringCover "curing cover";
        Chairs "chairs";
        TieWire "tie wire";
        ShortLoad "short load";
        Delivery "delivery";
        Standing "standing time";
        Pump "pump";
        SawCutting "saw cutting";
        BreakingMachine "breaking machine";
        Labor "labor";
        Trip "trip";
    }
}

impl Rules {
    /// Whether mesh is sold in rolls, which its item's unit says.
    pub fn is_roll(&self, mesh: &MeshStock) -> bool {
        self.selling
            .get(&mesh.item.value)
            .is_some_and(|selling| selling.unit == Unit::Roll)
    }

    /// Every item the rules name, with the place of the name.
    pub fn items_named(&self) -> impl Iterator<Item = (&str, Place)> {
        let mixes = self.mixes.values().map(|mix| &mix.item);
        let bases = self.bases.values().map(|base| &base.item);
        let bars = self.bars.values().map(|bar| &bar.item);
        let mesh = self.mesh.values().map(|mesh| &mesh.item);
        let fiber = self.fiber.values().map(|fiber| &fiber.item);
        let disposal = self.disposal.values().map(|dumping| &dumping.item);
        let named = mixes
            .chain(bases)
            .chain(bars)
            .chain(mesh)
            .chain(fiber)
            .chain(disposal)
            .map(|at| (at.value.as_str(), at.place));
        let roles = self
            .roles
            .values()
            .filter_map(|role| role.value.as_deref().map(|key| (key, role.place)));
        let charges = self.supply.iter().flat_map(|supply| supply.charges.items());
        let pump = self.pump.iter().flat_map(|pump| {
            let once = pump.once.iter().map(|(_, item)| item);
            let hose = pump.hose.iter().map(|hose| &hose.item);
            std::iter::once(&pump.item).chain(once).chain(hose)
        });
        let hired = charges
            .chain(pump)
            .chain(self.buggy.iter().map(|buggy| &buggy.item))
            .map(|at| (at.value.as_str(), at.place));
        let boxes = self.boxes.values().flat_map(super::BoxStock::items);
        let site = self.site.values().filter_map(|rule| rule.item.as_ref());
        let site = site.map(|at| (at.value.as_str(), at.place));
        named
            .chain(roles)
            .chain(hired)
            .chain(dowels::items_named(&self.dowels))
            .chain(self.surfaces.items_named())
            .chain(boxes)
            .chain(site)
    }
}
