//! Rules of buying: which item is meant, in what pieces it is sold. No price is known here.

use std::collections::BTreeMap;

use super::also::Also;
use super::boxes::BoxStock;
use super::dowels::DowelStock;
use super::hire::{BuggyHire, PumpHire};
use super::item::{ItemKey, Selling};
use super::rates::{self, Rates};
use super::roles::{self, Roles};
use super::site::{self, SiteRule};
use super::stock::{BarStock, BaseStock, Dumping, FiberStock, MeshStock, Mix};
use super::supply::Supply;
use super::surfaces::{Color, Finish, Sealer};
use super::ways::Ways;
use crate::input::phrases::Dose;
use crate::input::site::Question;
use crate::reading::keys::keys;
use crate::reading::{At, FieldTable, Fields, Group, Named, Place, Problems, Read, suggest};
use crate::values::{Length, Unit};

keys! {
    /// Everything of the book except prices.
    #[derive(Default)]
    pub struct Rules in "the price book" {
        mixes: Named<Mix> = "mixes" as "keys by mix", none, "concrete by the name you call it",
            "{exterior: {item: ready-mix, strength: 4000 psi}}";
        bases: Named<BaseStock> = "bases" as "keys by material", none, "what stands under a slab",
            "{crushed stone: {item: crushed stone, delivered: 2 ton per cu yd}}";
        bars: Named<BarStock> = "bars" as "keys by bar", none,
            "which item a bar is, and how long it is sold", "{no. 4: {item: bar no. 4, stock: 20 ft}}";
        mesh: Named<MeshStock> = "mesh" as "keys by style", none, "which item a mesh is, and its sheet",
            "{6x6 W1.4/W1.4: {item: mesh sheet, width: 5 ft, length: 10 ft, lap: 6 in}}";
        fiber: Named<FiberStock> = "fiber" as "keys by fiber", none,
            "who adds it, how much", "{micro: {item: fiber, by: plant}}";
        dowels: Named<DowelStock> = "dowels" as "keys by kind", none,
            "bars across an edge, by the name you give them",
            "{smooth: {item: dowel 1/2 in, bar: 1/2 in smooth}}";
        finishes: Named<Finish> = "finishes" as "keys by finish", none,
            "what a finish takes beside its hours, and what the customer reads of it",
            "{stamped slate: {says: stamped like split slate, hours: 7 hours per 100 sq ft}}";
        colors: Named<Color> = "colors" as "keys by color", none, "colors all through the concrete",
            "{sandstone: {item: color sandstone, dose: 3% of cement}}";
        sealers: Named<Sealer> = "sealers" as "keys by sealer", none,
            "what is put on weeks after the pour",
            "{wet look: {item: sealer by the pail, coverage: 250 sq ft per gal}}";
        disposal: Named<Dumping> = "disposal" as "keys by material", none,
            "where concrete and soil go", "{soil: {item: dump soil, loose: 1.25, load: 10 cu yd}}";
        boxes: Named<BoxStock> = "boxes" as "keys by box", none, "boxes and covers set in slabs",
            "{cleanout: {item: cleanout cover, opening: 8 in round, rated: 20800 lb}}";
        site: BTreeMap<Question, SiteRule> = "site" as "keys by question", none,
            "what the answers about a site cost",
            "{walls to cover: {item: masking film, hours: 2 hours per 100 ft}}", by site::read, of SiteRule;
        supply: Option<Supply> = "supply", required, "how the plant sells concrete",
            "{sold in: 1/4 cu yd, truck: 9 cu yd}";
        pump: Option<PumpHire> = "pump", none,
            "how a pump is hired; without it, one trip a pour of what `use` names",
            "{item: line pump, rate: 20 cu yd per hour}";
        buggy: Option<BuggyHire> = "buggy", none, "how a power buggy is hired",
            "{item: power buggy, width: 36 in}";
        roles: Roles = "use" as "keys by purpose", required,
            "which item stands for what; `none` where you do not charge it", "{forms: form board}",
            by roles::read;
        rates: Rates = "rates" as "keys by task", required, "hours of work for so much",
            "{form straight: 7 hours per 100 ft}", by rates::read;
        way: Ways = "way", none, "how much longer placing takes over a long way, by method",
            "{wheelbarrow: 12% per 50 ft past 40 ft}";
        also: Named<Also> = "also" as "keys by rule", none,
            "rules of your own: what is bought or done with what",
            "{stone truck: {for: crushed stone, buy: stone truck, each: 12 ton}}";
        .. selling: SoldAs;
    }
}

/// How each item is sold. No rule says it: the book fills it in from its items.
#[derive(Clone, Debug, Default)]
pub struct SoldAs(pub(super) BTreeMap<ItemKey, Selling>);

impl SoldAs {
    pub fn get(&self, item: &str) -> Option<&Selling> {
        self.0.get(item)
    }

    /// Every item of the book.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }
}

impl SoldAs {
    /// Every item that says how high it holds steel.
    pub(super) fn chairs(&self) -> impl Iterator<Item = (&ItemKey, &At<Length>)> {
        let items = self.0.iter();
        items.filter_map(|(key, selling)| Some((key, selling.height.as_ref()?)))
    }
}

impl Group for SoldAs {
    const TABLE: &'static FieldTable = Place::TABLE;

    fn read(_: &Fields<'_>, _: &mut Problems) -> Read<Self> {
        Ok(Self::default())
    }
}

impl Rules {
    /// Whether mesh is sold in rolls, which its item's unit says.
    pub fn is_roll(&self, mesh: &MeshStock) -> bool {
        self.selling
            .get(&mesh.item.value)
            .is_some_and(|selling| selling.unit == Unit::Roll)
    }

    /// The finish known to the book that is nearest to what was written.
    pub fn nearest_finish(&self, name: &str) -> Option<&str> {
        let rated = self.rates.0.keys();
        let names = rated
            .filter_map(|task| task.strip_prefix("finish "))
            .chain(self.finishes.keys().map(String::as_str));
        suggest::closest(name, names)
    }

    /// Every item of a finish, color or sealer, with how it is dosed.
    pub(super) fn on_surfaces(&self) -> impl Iterator<Item = (&At<ItemKey>, Option<&At<Dose>>)> {
        let finishes = self.finishes.values().flat_map(|finish| &finish.items);
        let finishes = finishes.map(|one| (&one.item, Some(&one.dose)));
        let colors = self.colors.values().map(|one| (&one.item, Some(&one.dose)));
        let sealers = self.sealers.values();
        finishes
            .chain(colors)
            .chain(sealers.map(|one| (&one.item, one.coverage.as_ref())))
    }
}
