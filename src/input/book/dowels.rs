//! A kind of dowel: the bar, where it goes, what holds it.

use super::item::{ItemKey, or_none};
use crate::input::checks::{at_least, in_unit};
use crate::input::phrases::DowelBar;
use crate::reading::keys::keys;
use crate::reading::{At, FieldTable, Fields, Group, Problem, Problems, Read};
use crate::values::{Amount, Length, Percent, Unit};

keys! {
    /// Bars across an edge, by the name the owner gives them.
    pub struct DowelStock in "a kind of dowel" {
        item: At<ItemKey> = "item" as "name", required,
            "the item that is bought, by the piece", "dowel 1/2 in";
        bar: At<DowelBar> = "bar", required,
            "smooth, so that it slides, or a deformed bar that ties", "1/2 in smooth";
        length: At<Length> = "length", usual "18 in", "of the bar", "18 in", by length;
        depth: At<Length> = "depth", usual "9 in", "of the hole in concrete that stays", "9 in";
        hole: At<Length> = "hole", else "1/8 in over the bar",
            "across the hole that is drilled", "5/8 in", by hole;
        spacing: At<Length> = "spacing", usual "24 in", "the most from one to the next", "24 in", then apart;
        from_ends: At<Length> = "from ends", usual "12 in",
            "from each end of the edge to the nearest one", "12 in";
        /// None is charged where there is none.
        cap: Option<At<ItemKey>> = "cap" as "name", none,
            "the item on the end that slides, one for each drilled dowel", "dowel cap 1/2 in",
            then charged;
        _bonded: Option<At<bool>> = "bonded", else "yes for deformed, and where `adhesive` is named",
            "whether it is set in adhesive", "yes";
        .. bond: Bond;
    }
}

keys! {
    /// What bonds a bar in its hole.
    pub struct Adhesive in "a kind of dowel" {
        /// `none` where it is not charged.
        item: Option<At<ItemKey>> = "adhesive" as "name", none,
            "the item that bonds it, by the cartridge; `none` where you do not charge it",
            "adhesive cartridge", by adhesive;
        cartridge: At<Amount> = "cartridge" as "milliliters", usual "300 ml", "in a cartridge", "300 ml",
            then some_milliliters;
        /// What stays in nozzle and cartridge or runs out of the hole.
        loss: At<Percent> = "loss", usual "10%", "adhesive left in nozzle and cartridge", "10%";
    }
}

/// The adhesive of a bar that is bonded.
#[derive(Clone, Debug)]
pub struct Bond(pub Option<Adhesive>);

impl Group for Bond {
    const TABLE: &'static FieldTable = Adhesive::TABLE;

    fn read(dowel: &Fields<'_>, problems: &mut Problems) -> Read<Self> {
        let said = dowel.yes("bonded", &mut Problems::new());
        let bonded = said.map_or_else(
            || {
                // Who names an adhesive for a smooth bar sets its one end in it.
                let named = dowel.said("adhesive").and_then(or_none);
                let bar = dowel.said::<DowelBar>("bar");
                named.is_some() || bar.is_some_and(|bar| !bar.value.is_smooth())
            },
            |said| said.value,
        );
        let adhesive = bonded.then(|| Adhesive::read(dowel, problems));
        Ok(Bond(adhesive.transpose()?))
    }
}

/// Room around a bonded bar: 1/8 in over it, or less (UFC 3-270-04, before paragraph 4.8).
const OVER_THE_BAR: Length = Length::sixty_fourths(8);

fn length(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<At<Length>> {
    let depth = fields.said::<Length>("depth");
    let least = depth.map_or(Length::ZERO, |depth| depth.value);
    let why = "a dowel is longer than its hole is deep";
    at_least(fields.need(key, problems)?, least, why, problems)
}

fn hole(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<At<Length>> {
    let bar = fields.said::<DowelBar>("bar");
    let bar = bar.map_or(At::new(Length::ZERO, fields.heading()), |bar| {
        bar.map(DowelBar::diameter)
    });
    if fields.node(key).is_none() {
        return Ok(bar.map(|diameter| diameter + OVER_THE_BAR));
    }
    let why = "a hole is wider than its bar";
    at_least(fields.need(key, problems)?, bar.value, why, problems)
}

fn apart(spacing: At<Length>, _: &str, problems: &mut Problems) -> Read<At<Length>> {
    let why = "dowels stand some way apart";
    at_least(spacing, Length::sixty_fourths(1), why, problems)
}

fn charged(item: Option<At<ItemKey>>, _: &str, _: &mut Problems) -> Option<At<ItemKey>> {
    item.and_then(or_none)
}

fn adhesive(
    fields: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<ItemKey>>> {
    fields.required(key, problems)?;
    Ok(fields.read(key, problems).and_then(or_none))
}

fn some_milliliters(at: At<Amount>, key: &str, problems: &mut Problems) -> Read<At<Amount>> {
    let at = in_unit(at, Unit::Milliliter, key, problems)?;
    if !at.value.value.is_zero() {
        return Ok(at);
    }
    let problem = Problem::new("not-above-zero", "a cartridge holds more than nothing");
    let help = "write what it holds, for example `300 ml`";
    Err(problems.push(problem.at(at.place).help(help)))
}

impl DowelStock {
    /// Every item it names.
    pub(super) fn items(&self) -> impl Iterator<Item = &At<ItemKey>> {
        let adhesive = self.bond.0.iter().flat_map(|adhesive| &adhesive.item);
        std::iter::once(&self.item).chain(&self.cap).chain(adhesive)
    }
}
