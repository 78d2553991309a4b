//! Bars: counted across the slab, clipped to its outline, lapped where a stick is too short.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::Measuring;
use super::lap::{self, Lap};
use super::rows::{Lines, SHORTEST};
use crate::input::book::BarStock;
use crate::input::job::{Layer, Slab};
use crate::input::phrases::SteelAtJoints;
use crate::input::sections::EdgeBars;
use crate::reading::At;
use crate::tables::bars::Bar;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Bars of one size in one slab.
#[derive(Clone, Debug)]
pub struct BarQuantities {
    pub bar: Bar,
    /// Every run, all ways, longest first: its length and how many there are.
    pub runs: Vec<Run>,
    /// Feet in place, laps included.
    pub placed: Quantity,
    pub weight: Quantity,
    /// Where any is spliced.
    pub(super) lap: Option<Lap>,
}

/// Bars of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    pub length: Length,
    pub count: u32,
    /// Sticks spliced into each.
    pub pieces: u32,
    /// How far its sticks overlap.
    pub lap: Length,
}

impl Run {
    /// So many bars of one length, spliced where a stick is shorter.
    pub fn of(length: Length, count: u32, stick: Length, lap: Length) -> Self {
        Self {
            length,
            count,
            pieces: crate::tables::laps::pieces_in_run(length, stick, lap).unwrap_or(1),
            lap,
        }
    }
}

impl BarQuantities {
    /// Bars that are bent around corners, with legs as long as their lap.
    pub(super) fn bent(
        (bar, run): (Bar, Run),
        lap: Lap,
        placed: Quantity,
        tally: &Tally<'_>,
    ) -> Self {
        Self {
            bar,
            runs: vec![run],
            weight: weigh(bar, &placed, tally.name("bent corner bar weight")),
            lap: Some(lap),
            placed,
        }
    }
}

/// Pounds follow from feet in place.
pub(in crate::trade) fn weigh(bar: Bar, placed: &Quantity, name: String) -> Quantity {
    let per_foot = Quantity::new(
        "weight of a foot",
        Amount::new(bar.weight_per_foot(), Unit::Pound),
        Working::plan(
            format!("{bar} bar"),
            Vec::new(),
            "ASTM A615, nominal weight (as restated)",
        ),
    );
    Quantity::by(
        "feet × pounds a foot",
        name,
        Unit::Pound,
        of(placed) * &per_foot,
    )
}

/// The sticks a bar comes in, and how far they lap in this slab.
pub(super) fn stock_and_lap<'a>(
    slab: &Slab,
    bar: Bar,
    with: Measuring<'a>,
) -> Option<(&'a BarStock, Lap)> {
    let stock = with.rules.bars.get(&bar.to_string())?;
    let mix = with.rules.mixes.get(&slab.mix.value)?;
    Some((stock, Lap::of(&slab.key, bar, stock, mix)))
}

/// The bars of a slab, each size by itself.
pub(super) fn measure(
    slab: &Slab,
    laid: &[Option<Lines>; 2],
    with: Measuring<'_>,
    tally: &Tally<'_>,
) -> Vec<BarQuantities> {
    let Some(bars) = &slab.bars else {
        return Vec::new();
    };
    let sizes = bars.sizes();
    let of_size = |bar: Bar| {
        let (stock, lap) = stock_and_lap(slab, bar, with)?;
        let ways = [
            (&bars.east_west, "east-west"),
            (&bars.north_south, "north-south"),
        ];
        let mut runs: Vec<Run> = Vec::new();
        let mut feet: Vec<Quantity> = Vec::new();
        let mut is_lapped = false;
        for ((layer, way), lines) in ways.into_iter().zip(laid) {
            let layer = layer.as_ref().filter(|layer| layer.bar == bar);
            let Some((layer, lines)) = layer.zip(lines.as_ref()) else {
                continue;
            };
            let found = counted(lines, stock, &lap.length);
            feet.push(in_place(slab, way, &found, &lap.length, layer));
            is_lapped |= SHOWN < found.len() || found.iter().any(|run| 1 < run.pieces);
            for run in found {
                match runs.iter_mut().find(|known| known.length == run.length) {
                    Some(known) => known.count += run.count,
                    None => runs.push(run),
                }
            }
        }
        runs.sort_by_key(|run| std::cmp::Reverse(run.length));
        let which = |what: &str| {
            if sizes.len() == 1 {
                tally.name(what)
            } else {
                tally.name(&format!("{bar} {what}"))
            }
        };
        let rule = if feet.len() == 1 {
            "one way, laps included"
        } else {
            "both ways, laps included"
        };
        let placed = Quantity::by(rule, which("bars"), Unit::Foot, sum(&feet));
        let placed = tally.sets.settle(placed);
        Some(BarQuantities {
            bar,
            runs,
            weight: weigh(bar, &placed, which("bar weight")),
            lap: is_lapped.then_some(lap),
            placed,
        })
    };
    sizes.iter().filter_map(|bar| of_size(*bar)).collect()
}

/// Each lap once, then what is placed of each size.
pub(super) fn list<'a>(
    steel: impl Iterator<Item = &'a BarQuantities> + Clone,
    tally: &mut Tally<'_>,
) {
    let mut known: Vec<Bar> = Vec::new();
    for bars in steel.clone().filter(|bars| bars.lap.is_some()) {
        if !known.contains(&bars.bar) {
            known.push(bars.bar);
            tally.show(bars.lap.iter().flat_map(Lap::shown));
        }
    }
    tally.list(steel.flat_map(|bars| [&bars.placed, &bars.weight]));
}

/// Bars along an edge or a step: what is known before they are put on the list.
pub(super) struct Along {
    bar: Bar,
    runs: Vec<Run>,
    splices: u32,
    lap: Lap,
}

/// So many bars for each of these lengths, of which there are so many; too short ones are left out.
pub(super) fn along(
    slab: &Slab,
    wanted: &At<EdgeBars>,
    lengths: &[(Length, u32)],
    with: Measuring<'_>,
) -> Option<Along> {
    let (bar, count) = (wanted.value.bar, wanted.value.count);
    let (stock, lap) = stock_and_lap(slab, bar, with)?;
    let splice = lap::as_length(&lap.length);
    let mut runs: Vec<Run> = Vec::new();
    for &(length, times) in lengths.iter().filter(|(length, _)| SHORTEST <= *length) {
        match runs.iter_mut().find(|known| known.length == length) {
            Some(known) => known.count += count * times,
            None => runs.push(Run::of(length, count * times, stock.stock.value, splice)),
        }
    }
    runs.retain(|run| run.count != 0);
    runs.sort_by_key(|run| std::cmp::Reverse(run.length));
    let splices = runs.iter().map(|run| run.count * (run.pieces - 1)).sum();
    (!runs.is_empty()).then_some(Along {
        bar,
        runs,
        splices,
        lap,
    })
}

impl Along {
    /// With its feet in place: `straight`, and a lap for each splice.
    pub fn placed(
        self,
        rule: &'static str,
        what: &str,
        straight: Term,
        tally: &Tally<'_>,
    ) -> BarQuantities {
        let feet = if self.splices == 0 {
            straight
        } else {
            straight + number(self.splices) * &self.lap.length / number(12)
        };
        let placed = tally.between(rule, &format!("{what} bars"), Unit::Foot, feet);
        BarQuantities {
            weight: weigh(self.bar, &placed, tally.name(&format!("{what} bar weight"))),
            bar: self.bar,
            runs: self.runs,
            lap: (self.splices != 0).then_some(self.lap),
            placed,
        }
    }
}

fn counted(lines: &Lines, stock: &BarStock, lap: &Quantity) -> Vec<Run> {
    let mut counted: BTreeMap<i64, u32> = BTreeMap::new();
    for (from, to) in lines.iter().flat_map(|(_, bars)| bars) {
        *counted.entry(to - from).or_default() += 1;
    }
    let lap = lap::as_length(lap);
    counted
        .into_iter()
        .rev()
        .map(|(length, count)| Run::of(Length::nanometres(length), count, stock.stock.value, lap))
        .collect()
}

/// With more lengths than this the formula is told in words.
const SHOWN: usize = 3;

/// Feet of one direction: bars times length, and a lap for each splice.
fn in_place(slab: &Slab, way: &str, runs: &[Run], lap: &Quantity, layer: &Layer) -> Quantity {
    const RULE: &str = "bars = gaps up to a whole one + 1; a lap for each splice";
    let name = format!("{} bars {way}", slab.key);
    let spacing = Quantity::inches("bar spacing", &layer.spacing);
    let laps = |splices: u32| number(splices) * lap / number(12);
    let (cut, less) = if slab.steel_at_joints != SteelAtJoints::Through {
        (
            "cut to the outline, at openings and at joints",
            "slab or its part beside a joint or an opening, less cover at both ends",
        )
    } else if slab.outline.holes().is_empty() {
        ("cut to the outline", "slab less cover at both ends")
    } else {
        (
            "cut to the outline and at openings",
            "slab or its part beside an opening, less cover at both ends",
        )
    };
    if runs.len() <= SHOWN {
        let term = |run: &Run| {
            let how = format!("{less}: {}", run.length);
            let working = Working::plan(how, vec![spacing.clone()], "");
            let length = Quantity::new("bar", run.length.in_feet(), working);
            let placed = number(run.count) * &length;
            if run.pieces == 1 {
                placed
            } else {
                placed + laps(run.count * (run.pieces - 1))
            }
        };
        let total = runs.iter().map(term).reduce(|a, b| a + b);
        return Quantity::by(RULE, name, Unit::Foot, total.unwrap_or_else(|| number(0)));
    }
    let count: u32 = runs.iter().map(|run| run.count).sum();
    let splices: u32 = runs.iter().map(|run| run.count * (run.pieces - 1)).sum();
    let feet = |run: &Run| run.length.feet() * Decimal::from(run.count);
    let total: Decimal = runs.iter().map(feet).sum::<Decimal>() + laps(splices).value();
    let (longest, shortest) = (runs[0].length, runs[runs.len() - 1].length);
    let how = format!(
        "{count} bars from {shortest} to {longest}, {cut}, and {splices} laps of {}",
        lap.amount()
    );
    let working = Working::plan(how, vec![spacing, lap.clone()], RULE);
    Quantity::new(name, Amount::new(total, Unit::Foot), working)
}
