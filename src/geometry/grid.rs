//! Cuts along one axis: which are given by corners, and how the gaps between are divided.

use crate::values::Length;

/// A strip narrower than this may be joined to its neighbour (common practice, no source).
const NARROW: i64 = Length::feet_whole(2).as_nanometres();

/// The gap between two given cuts, divided into even parts.
#[derive(Clone, Copy, Debug)]
pub(super) struct Gap {
    pub from: i64,
    pub to: i64,
    pub parts: i64,
    /// The outermost reach of the slab here: bows beyond the chords belong to the end gaps.
    low: i64,
    high: i64,
    longest: i64,
}

impl Gap {
    /// Cut `n` of `parts`, the ends included, rounded to a nanometre once.
    fn cut(&self, n: i64) -> i64 {
        let (from, to) = self.divided();
        let run = i128::from(to - from) * i128::from(n);
        let parts = i128::from(self.parts);
        from + i64::try_from((2 * run + parts).div_euclid(2 * parts)).expect("within the gap")
    }

    /// Where even division runs: to the chords, or to the bows when they would make an end panel too long.
    fn divided(&self) -> (i64, i64) {
        let bow = (self.from - self.low).max(self.high - self.to);
        if 0 < bow && self.longest < (self.to - self.from) / self.parts + bow {
            (self.low, self.high)
        } else {
            (self.from, self.to)
        }
    }

    /// Part length, for judging shape; all parts of a gap are alike.
    pub fn part(&self) -> i64 {
        self.cut(1) - self.cut(0)
    }

    /// One part more.
    pub fn finer(self) -> Self {
        Self {
            parts: self.parts + 1,
            ..self
        }
    }

    /// The parts, each as (from, to).
    pub fn intervals(&self) -> impl Iterator<Item = (i64, i64)> + '_ {
        (0..self.parts).map(|n| (self.cut(n), self.cut(n + 1)))
    }
}

/// Gaps between the cuts, each divided just enough to keep within `longest`.
///
/// `cuts` are sorted and reach from the first to the last corner; `low` and `high`
/// are the slab's own bounds, beyond them where a side is bulged.
pub(super) fn gaps(cuts: &[i64], low: i64, high: i64, longest: i64) -> Vec<Gap> {
    // A shape without straight extent (a lens, a circle) is all bow.
    let whole = [low, high];
    let cuts = if cuts.len() < 2 { &whole[..] } else { cuts };
    let last = cuts.len() - 2;
    cuts.windows(2)
        .enumerate()
        .map(|(i, pair)| {
            let mut gap = Gap {
                from: pair[0],
                to: pair[1],
                parts: 1,
                low: if i == 0 { low } else { pair[0] },
                high: if i == last { high } else { pair[1] },
                longest,
            };
            while longest < gap.part() {
                gap = gap.finer();
            }
            gap
        })
        .collect()
}

/// Leaves out cuts that make a strip under 2 ft, while the joined strip keeps within `longest`.
///
/// `needed` says which cuts must stay whatever they make.
pub(super) fn joined(mut cuts: Vec<i64>, longest: i64, needed: impl Fn(i64) -> bool) -> Vec<i64> {
    loop {
        let strip = |i: usize| cuts[i + 1] - cuts[i];
        let without = |i: usize| cuts[i + 1] - cuts[i - 1];
        let best = (1..cuts.len().saturating_sub(1))
            .filter(|&i| strip(i - 1).min(strip(i)) < NARROW)
            .filter(|&i| without(i) <= longest && !needed(cuts[i]))
            .min_by_key(|&i| (without(i), cuts[i]));
        match best {
            Some(i) => cuts.remove(i),
            None => return cuts,
        };
    }
}
