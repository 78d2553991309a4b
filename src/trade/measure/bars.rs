//! Bars both ways: counted across the slab, clipped to its outline, lapped where a stick is too short.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::input::book::{BarStock, Rules};
use crate::input::business::OrderPolicy;
use crate::input::job::{Bars, Slab};
use crate::reading::At;
use crate::tables::bars::Bar;
use crate::trade::sets::Sets;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Shorter pieces are left out.
const SHORTEST: Length = Length::inches_whole(6);

/// Steel of one slab.
#[derive(Clone, Debug)]
pub struct BarQuantities {
    pub bar: Bar,
    /// Every run, both ways, longest first: its length and how many there are.
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
}

pub(super) fn measure(
    slab: &Slab,
    policy: &OrderPolicy,
    rules: &Rules,
    sets: Sets<'_>,
) -> Option<BarQuantities> {
    let bars = slab.bars.as_ref()?;
    let stock = rules.bars.get(&bars.bar.to_string())?;
    let lap = lap(bars.bar, stock);
    let cover = policy.cover.value;
    let (low, high) = slab.outline.bounds();
    let east_west = lines(low.y, high.y, bars, cover)
        .into_iter()
        .flat_map(|y| slab.outline.spans_at_y(y));
    let north_south = lines(low.x, high.x, bars, cover)
        .into_iter()
        .flat_map(|x| slab.outline.spans_at_x(x));
    let east_west: Vec<Run> = runs(east_west, cover, stock, lap);
    let north_south: Vec<Run> = runs(north_south, cover, stock, lap);
    let lap_at = At {
        value: lap,
        place: stock.lap.place,
    };
    let both = [
        feet(slab, "bars east-west", &east_west, &lap_at, bars),
        feet(slab, "bars north-south", &north_south, &lap_at, bars),
    ];
    let placed = sets.settle(Quantity::by(
        "both ways, laps included",
        format!("{} bars", slab.key),
        Unit::Foot,
        sum(&both),
    ));
    let weight = weigh(bars.bar, &placed, format!("{} bar weight", slab.key));
    let mut runs = east_west;
    for run in north_south {
        match runs.iter_mut().find(|known| known.length == run.length) {
            Some(known) => known.count += run.count,
            None => runs.push(run),
        }
    }
    runs.sort_by_key(|run| std::cmp::Reverse(run.length));
    Some(BarQuantities {
        bar: bars.bar,
        runs,
        placed,
        weight,
    })
}

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

/// The owner's rule: so many bar diameters.
pub fn lap(bar: Bar, stock: &BarStock) -> Length {
    let nanometres = Decimal::from(bar.diameter().as_nanometres()) * stock.lap.value.value;
    Length::nanometres(
        i64::try_from(nanometres.ceil()).expect("a lap is far below the longest length"),
    )
}

/// Where bars lie across a width: spacing is a maximum, so one more than the
/// gaps that fit, evenly spread between the covers.
fn lines(low: i64, high: i64, bars: &Bars, cover: Length) -> Vec<i64> {
    let usable = high - low - 2 * cover.as_nanometres();
    if usable <= 0 {
        return vec![i64::midpoint(low, high)];
    }
    let spacing = bars.spacing.value.as_nanometres();
    let gaps = (usable + spacing - 1) / spacing;
    (0..=gaps)
        .map(|i| {
            low + cover.as_nanometres()
                + i64::try_from(i128::from(usable) * i128::from(i) / i128::from(gaps))
                    .expect("a part of the width")
        })
        .collect()
}

fn runs(
    spans: impl Iterator<Item = (i64, i64)>,
    cover: Length,
    stock: &BarStock,
    lap: Length,
) -> Vec<Run> {
    let mut counted: BTreeMap<i64, u32> = BTreeMap::new();
    for (from, to) in spans {
        let length = to - from - 2 * cover.as_nanometres();
        if SHORTEST.as_nanometres() <= length {
            *counted.entry(length).or_default() += 1;
        }
    }
    let pieces = |length: Length| {
        crate::tables::laps::pieces_in_run(length, stock.stock.value, lap).unwrap_or(1)
    };
    counted
        .into_iter()
        .rev()
        .map(|(length, count)| Run {
            length: Length::nanometres(length),
            count,
            pieces: pieces(Length::nanometres(length)),
        })
        .collect()
}

/// Feet of one direction: bars times length, and a lap for each splice.
fn feet(slab: &Slab, what: &str, runs: &[Run], lap: &At<Length>, bars: &Bars) -> Quantity {
    const RULE: &str = "bars = gaps up to a whole one + 1; a lap for each splice, in bar diameters as the book says";
    let name = format!("{} {what}", slab.key);
    let lap = Quantity::feet("lap", lap);
    let spacing = Quantity::inches("bar spacing", &bars.spacing);
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
                placed + number(run.count * (run.pieces - 1)) * &lap
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
        + Decimal::from(splices) * lap.value();
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
            of: vec![spacing, lap],
            rule: RULE,
        },
    )
}
