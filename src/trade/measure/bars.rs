//! Bars: counted across the slab, clipped to its outline, lapped where a stick is too short.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::lap;
use crate::input::book::{BarStock, Rules};
use crate::input::business::OrderPolicy;
use crate::input::job::{Layer, Slab};
use crate::tables::bars::Bar;
use crate::trade::sets::Sets;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Shorter pieces are left out.
const SHORTEST: Length = Length::inches_whole(6);

/// Bars of one size in one slab.
#[derive(Clone, Debug)]
pub struct BarQuantities {
    pub bar: Bar,
    /// Every run, all ways, longest first: its length and how many there are.
    pub runs: Vec<Run>,
    /// Feet in place, laps included.
    pub placed: Quantity,
    pub weight: Quantity,
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

/// Pounds follow from feet in place.
pub(super) fn weigh(bar: Bar, placed: &Quantity, name: String) -> Quantity {
    let per_foot = Quantity::new(
        "weight of a foot",
        Amount::new(bar.weight_per_foot(), Unit::Pound),
        Working::Plan {
            how: format!("{bar} bar"),
            of: Vec::new(),
            rule: "ASTM A615, nominal weight (as restated)",
        },
    );
    Quantity::by(
        "feet × pounds a foot",
        name,
        Unit::Pound,
        of(placed) * &per_foot,
    )
}

/// The bars of a slab, each size by itself.
pub(super) fn measure(
    slab: &Slab,
    laid: &[Option<Lines>; 2],
    rules: &Rules,
    sets: Sets<'_>,
) -> Vec<BarQuantities> {
    let Some(bars) = &slab.bars else {
        return Vec::new();
    };
    let sizes = bars.sizes();
    let of_size = |bar: Bar| {
        let stock = rules.bars.get(&bar.to_string())?;
        let lap = lap::lap(&slab.key, bar, stock, rules.mixes.get(&slab.mix.value)?);
        let ways = [
            (&bars.east_west, "east-west"),
            (&bars.north_south, "north-south"),
        ];
        let mut runs: Vec<Run> = Vec::new();
        let mut feet: Vec<Quantity> = Vec::new();
        for ((layer, way), lines) in ways.into_iter().zip(laid) {
            let layer = layer.as_ref().filter(|layer| layer.bar == bar);
            let Some((layer, lines)) = layer.zip(lines.as_ref()) else {
                continue;
            };
            let found = counted(lines, (stock, &lap));
            feet.push(in_place(slab, way, &found, &lap, layer));
            for run in found {
                match runs.iter_mut().find(|known| known.length == run.length) {
                    Some(known) => known.count += run.count,
                    None => runs.push(run),
                }
            }
        }
        runs.sort_by_key(|run| std::cmp::Reverse(run.length));
        let which = if sizes.len() == 1 {
            slab.key.clone()
        } else {
            format!("{} {bar}", slab.key)
        };
        let rule = if feet.len() == 1 {
            "one way, laps included"
        } else {
            "both ways, laps included"
        };
        let placed = sets.settle(Quantity::by(
            rule,
            format!("{which} bars"),
            Unit::Foot,
            sum(&feet),
        ));
        Some(BarQuantities {
            bar,
            runs,
            weight: weigh(bar, &placed, format!("{which} bar weight")),
            placed,
        })
    };
    sizes.iter().filter_map(|bar| of_size(*bar)).collect()
}

/// Where bars lie across a width: spacing is a maximum, so one more than the
/// gaps that fit, evenly spread between the covers.
pub(super) fn lines(low: i64, high: i64, spacing: Length, cover: Length) -> Vec<i64> {
    let usable = high - low - 2 * cover.as_nanometres();
    if usable <= 0 {
        return vec![i64::midpoint(low, high)];
    }
    let spacing = spacing.as_nanometres();
    let gaps = (usable + spacing - 1) / spacing;
    (0..=gaps)
        .map(|i| {
            low + cover.as_nanometres()
                + i64::try_from(i128::from(usable) * i128::from(i) / i128::from(gaps))
                    .expect("a part of the width")
        })
        .collect()
}

/// Bars line by line: where the line lies, and where each bar on it begins and ends.
pub(super) type Lines = Vec<(i64, Vec<(i64, i64)>)>;

/// The bars of both ways, east-west first.
pub(super) fn both_ways(slab: &Slab, policy: &OrderPolicy) -> [Option<Lines>; 2] {
    let lines = |layer: &Option<Layer>, level| {
        let layer = layer.as_ref()?;
        Some(laid(slab, layer, level, policy.cover.value))
    };
    slab.bars.as_ref().map_or([None, None], |bars| {
        [
            lines(&bars.east_west, true),
            lines(&bars.north_south, false),
        ]
    })
}

fn laid(slab: &Slab, layer: &Layer, level: bool, cover: Length) -> Lines {
    let (low, high) = slab.outline.bounds();
    let (from, to) = if level {
        (low.y, high.y)
    } else {
        (low.x, high.x)
    };
    let inward = cover.as_nanometres();
    lines(from, to, layer.spacing.value, cover)
        .into_iter()
        .map(|at| {
            let spans = if level {
                slab.outline.spans_at_y(at)
            } else {
                slab.outline.spans_at_x(at)
            };
            let bars = spans
                .into_iter()
                .map(|(from, to)| (from + inward, to - inward))
                .filter(|(from, to)| SHORTEST.as_nanometres() <= to - from);
            (at, bars.collect())
        })
        .collect()
}

fn counted(lines: &Lines, (stock, lap): (&BarStock, &Quantity)) -> Vec<Run> {
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

/// Feet of one direction: bars times length, and a lap for each splice.
fn in_place(slab: &Slab, way: &str, runs: &[Run], lap: &Quantity, layer: &Layer) -> Quantity {
    const RULE: &str = "bars = gaps up to a whole one + 1; a lap for each splice";
    let name = format!("{} bars {way}", slab.key);
    let spacing = Quantity::inches("bar spacing", &layer.spacing);
    let laps = |splices: u32| number(splices) * lap / number(12);
    if runs.len() <= 3 {
        let term = |run: &Run| {
            let length = Quantity::new(
                "bar",
                run.length.in_feet(),
                Working::Plan {
                    how: if slab.outline.holes().is_empty() {
                        format!("slab less cover at both ends: {}", run.length)
                    } else {
                        format!(
                            "slab or its part beside an opening, less cover at both ends: {}",
                            run.length
                        )
                    },
                    of: vec![spacing.clone()],
                    rule: "",
                },
            );
            let placed = number(run.count) * &length;
            if run.pieces == 1 {
                placed
            } else {
                placed + laps(run.count * (run.pieces - 1))
            }
        };
        let total = runs
            .iter()
            .map(term)
            .reduce(|a, b| a + b)
            .unwrap_or_else(|| Term::from(Decimal::ZERO));
        return Quantity::by(RULE, name, Unit::Foot, total);
    }
    let count: u32 = runs.iter().map(|run| run.count).sum();
    let splices: u32 = runs.iter().map(|run| run.count * (run.pieces - 1)).sum();
    let total: Decimal = runs
        .iter()
        .map(|run| run.length.feet() * Decimal::from(run.count))
        .sum::<Decimal>()
        + laps(splices).value();
    let (longest, shortest) = (runs[0].length, runs[runs.len() - 1].length);
    let cut = if slab.outline.holes().is_empty() {
        "cut to the outline"
    } else {
        "cut to the outline and at openings"
    };
    let how = format!(
        "{count} bars from {shortest} to {longest}, {cut}, and {splices} laps of {}",
        lap.amount()
    );
    Quantity::new(
        name,
        Amount::new(total, Unit::Foot),
        Working::Plan {
            how,
            of: vec![spacing, lap.clone()],
            rule: RULE,
        },
    )
}
