//! What a surface can be: finishes, colors of the concrete, sealers, and how each is cured.

use std::collections::BTreeMap;

use super::Rules;
use crate::input::book::ItemKey;
use crate::input::phrases::{Days, Dose, Ratio};
use crate::reading::{At, Place, Problem, Problems, suggest, words};
use crate::values::{Amount, Unit};

/// The finishes, colors and sealers of the book, by the names the owner gave them.
#[derive(Clone, Debug, Default)]
pub struct Surfaces {
    pub finishes: BTreeMap<String, Finish>,
    pub colors: BTreeMap<String, Color>,
    pub sealers: BTreeMap<String, Sealer>,
}

/// How a surface is made, and what that takes.
#[derive(Clone, Debug)]
pub struct Finish {
    /// What the customer reads; else the name of the finish.
    pub says: Option<String>,
    /// Hours for so many square feet; else the rate `finish NAME`.
    pub hours: Option<At<Ratio>>,
    pub items: Vec<SurfaceItem>,
    /// Times the crew comes back after the pour, to wash or saw it.
    pub trips: At<Amount>,
    pub color: Option<At<String>>,
    pub seal: Option<At<String>>,
    pub curing: Option<At<Curing>>,
    /// Whether a steel trowel closes the surface.
    pub troweled: Option<At<bool>>,
}

/// An item that is put on, and how much of it.
#[derive(Clone, Debug)]
pub struct SurfaceItem {
    pub item: At<ItemKey>,
    pub dose: At<Dose>,
}

/// A color all through the concrete.
#[derive(Clone, Debug)]
pub struct Color {
    pub says: Option<String>,
    pub what: SurfaceItem,
}

/// What is put on weeks after the pour.
#[derive(Clone, Debug)]
pub struct Sealer {
    pub says: Option<String>,
    pub item: At<ItemKey>,
    /// None where the item is sold by the square foot sealed.
    pub coverage: Option<At<Dose>>,
    /// Hours for so many square feet, all coats together.
    pub hours: Option<At<Ratio>>,
    /// Days from the pour.
    pub after: At<Days>,
    /// Times the crew comes back to do it.
    pub trips: At<Amount>,
}

words! {
    /// How the surface is kept from drying while it hardens.
    pub enum Curing("unknown-word", "`curing` is not `{}`", choose) {
        Compound "compound" "(sprayed on)";
        Cover "cover" "(laid over it)";
        /// It is kept wet.
        Wet "wet";
        /// Nothing is done, or what is put on cures it too.
        None "none";
    }
}

impl Finish {
    /// Whether a steel trowel closes the surface, by what its entry says or else by its name.
    pub fn is_troweled(name: &str, entry: Option<&Self>) -> bool {
        match entry.and_then(|finish| finish.troweled.as_ref()) {
            Some(troweled) => troweled.value,
            None => name
                .split_whitespace()
                .any(|word| word.starts_with("trowel")),
        }
    }
}

impl Surfaces {
    /// Every item that is named, with how it is dosed.
    fn items(&self) -> impl Iterator<Item = (&At<ItemKey>, Option<&At<Dose>>)> {
        let finishes = self.finishes.values().flat_map(|finish| &finish.items);
        let colors = self.colors.values().map(|color| &color.what);
        let dosed = finishes
            .chain(colors)
            .map(|one| (&one.item, Some(&one.dose)));
        let sealers = self.sealers.values();
        dosed.chain(sealers.map(|one| (&one.item, one.coverage.as_ref())))
    }

    pub(super) fn items_named(&self) -> impl Iterator<Item = (&str, Place)> {
        self.items()
            .map(|(item, _)| (item.value.as_str(), item.place))
    }
}

impl Rules {
    /// The finish known to the book that is nearest to what was written.
    pub fn nearest_finish(&self, name: &str) -> Option<&str> {
        let rated = self.rates.0.keys();
        let names = rated
            .filter_map(|task| task.strip_prefix("finish "))
            .chain(self.surfaces.finishes.keys().map(String::as_str));
        suggest::closest(name, names)
    }
}

/// Reports doses in another unit than the item's, and colors and sealers no entry explains.
pub(in crate::input::book) fn check(rules: &Rules, problems: &mut Problems) {
    for (item, dose) in rules.surfaces.items() {
        let Some(selling) = rules.selling.get(&item.value) else {
            continue;
        };
        let unit = dose.map_or(Unit::SquareFoot, |dose| dose.value.unit());
        let counted = unit == Unit::Plain && matches!(selling.unit, Unit::Piece | Unit::Lump);
        if unit != selling.unit && !counted {
            let (sold, dosed) = (selling.unit.symbol(), unit.symbol());
            let dosed = if dosed.is_empty() {
                "a number without a unit".to_owned()
            } else {
                format!("in {dosed}")
            };
            let message = format!(
                "`{}` is sold by the {sold}, and this is {dosed}",
                item.value
            );
            let problem = Problem::new("wrong-unit", message)
                .at(dose.map_or(item.place, |dose| dose.place))
                .also(selling.place, "the item says so here");
            problems.push(match dose {
                Some(_) => problem.help(format!("say how much in {sold}, or give the item the other unit; it can still be `sold in` whole bags or pails")),
                None => problem.help(format!("add `coverage`, for example `coverage: 250 sq ft per {sold}`")),
            });
        }
    }
    for finish in rules.surfaces.finishes.values() {
        known(
            finish.color.as_ref(),
            "color",
            &rules.surfaces.colors,
            rules,
            problems,
        );
        known(
            finish.seal.as_ref(),
            "sealer",
            &rules.surfaces.sealers,
            rules,
            problems,
        );
    }
}

fn known<T>(
    name: Option<&At<String>>,
    what: &str,
    among: &BTreeMap<String, T>,
    rules: &Rules,
    problems: &mut Problems,
) {
    let Some(name) = name else { return };
    if among.contains_key(&name.value) || rules.broken.contains(&name.value) {
        return;
    }
    let problem = Problem::new(
        "unknown-name",
        format!("price book has no {what} `{}`", name.value),
    )
    .at(name.place);
    let near = suggest::closest(&name.value, among.keys().map(String::as_str));
    problems.push(match near {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None => problem.help(format!(
            "name it under `{what}s` of the price book, or take the line out"
        )),
    });
}
