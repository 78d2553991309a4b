//! What a surface can be: finishes, colors of the concrete, sealers, and how each is cured.

use super::item::ItemKey;
use crate::input::checks::plain;
use crate::input::phrases::{Days, Dose, Ratio};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, FromLine, Node, Problem, Problems, Read, words};
use crate::values::{Amount, Unit};

keys! {
    /// How a surface is made, and what that takes.
    pub struct Finish in "a finish" {
        says: Option<String> = "says", else "its name", "what the customer reads", "stamped like split slate";
        hours: Option<At<Ratio>> = "hours", else "the rate `finish NAME`",
            "work for so many square feet", "7 hours per 100 sq ft", by hours;
        items: Vec<SurfaceItem> = "items", none, "what is put on, and how much of it",
            "[release powder: 3 lb per 100 sq ft]";
        trips: At<Amount> = "trips", usual "0",
            "times the crew comes back after the pour, to wash or saw", "1", then whole;
        color: Option<At<String>> = "color" as "name", else "none",
            "a color of this book that comes with it", "sandstone";
        seal: Option<At<String>> = "seal" as "name", else "none",
            "a sealer of this book that comes with it", "wet look";
        curing: Option<At<Curing>> = "curing", else "compound",
            "compound (sprayed on), cover (laid over it), wet or none", "cover";
        troweled: Option<At<bool>> = "troweled", else "by its name",
            "whether a steel trowel closes the surface", "yes";
    }
}

/// An item that is put on, and how much of it.
#[derive(Clone, Debug)]
pub struct SurfaceItem {
    pub item: At<ItemKey>,
    pub dose: At<Dose>,
}

keys! {
    /// A color all through the concrete.
    pub struct Color in "a color" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought", "color sandstone";
        dose: At<Dose> = "dose", required, "in the concrete, by its cement or its yards", "3% of cement",
            then mixed_in;
        says: Option<String> = "says", else "its name", "what the customer reads", "sandstone";
    }
}

keys! {
    /// What is put on weeks after the pour.
    pub struct Sealer in "a sealer" {
        item: At<ItemKey> = "item" as "name", required, "the item that is bought", "sealer by the pail";
        coverage: Option<At<Dose>> = "coverage", else "the item is sold by the square foot",
            "how far it goes, and in how many coats", "\"250 sq ft per gal, 2 coats\"", by coverage;
        hours: Option<At<Ratio>> = "hours", none,
            "work for so many square feet, all coats together", "1 hour per 100 sq ft", by hours;
        after: At<Days> = "after", usual "28 days", "from the pour to the sealing", "28 days";
        trips: At<Amount> = "trips", usual "1", "times the crew comes back for it", "1", then whole;
        says: Option<String> = "says", else "its name", "what the customer reads",
            "a clear sealer that soaks in";
    }
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

impl FromLine for SurfaceItem {
    fn from_line(item: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        let dose = put_on(node.read_at(problems)?, &item.value, problems)?;
        Ok(SurfaceItem { item, dose })
    }
}

fn put_on(dose: At<Dose>, item: &str, problems: &mut Problems) -> Read<At<Dose>> {
    if !dose.value.is_mixed_in() {
        return Ok(dose);
    }
    let message = format!("`{item}` goes into the concrete, not onto it");
    let problem = Problem::new("mixed-in", message).at(dose.place);
    let help = "name it under `colors` of the price book, and say here `color: ` and its name";
    Err(problems.push(problem.help(help)))
}

fn mixed_in(dose: At<Dose>, _: &str, problems: &mut Problems) -> Read<At<Dose>> {
    if dose.value.is_mixed_in() {
        return Ok(dose);
    }
    let problem = Problem::new("not-mixed-in", "this dose is put on, not mixed in").at(dose.place);
    let help = "write `3% of cement` or `5 lb per cu yd`; what is put on belongs to the `items` of a finish";
    Err(problems.push(problem.help(help)))
}

/// Without it a sealer is sold by the square foot, so one that cannot be read is not left out.
fn coverage(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<Dose>>> {
    if fields.node(key).is_none() {
        return Ok(None);
    }
    let dose: At<Dose> = fields.need(key, problems)?;
    if matches!(dose.value, Dose::Area { .. } | Dose::Coverage { .. }) {
        return Ok(Some(dose));
    }
    let problem = Problem::new("bad-dose", "a sealer goes by the square foot").at(dose.place);
    let help = "write `250 sq ft per gal`, or `250 sq ft per gal, 2 coats`";
    Err(problems.push(problem.help(help)))
}

/// Person or crew hours for so many square feet; where they cannot be read, no rate holds instead.
fn hours(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<Ratio>>> {
    if fields.node(key).is_none() {
        return Ok(None);
    }
    let rate: At<Ratio> = fields.need(key, problems)?;
    if rate.value.much.unit.is_time() && rate.value.per.unit == Unit::SquareFoot {
        return Ok(Some(rate));
    }
    let message = "`hours` is measured in hours per sq ft";
    let problem = Problem::new("wrong-unit", message).at(rate.place);
    Err(problems.push(problem.help("write, for example, `4 hours per 100 sq ft`")))
}

fn whole(trips: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let trips = plain(trips, key, problems)?;
    if trips.value.value.fract().is_zero() {
        return Ok(trips);
    }
    let problem = Problem::new("not-whole", "nobody comes back half a time").at(trips.place);
    let help = "write a whole number; the hours it takes belong to `hours`";
    Err(problems.push(problem.help(help)))
}
