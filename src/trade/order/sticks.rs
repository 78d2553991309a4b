//! Cutting bars from stock: the fewest sticks found, offcuts used again.

use std::collections::BTreeMap;

use crate::trade::measure::Run;
use crate::values::Length;

/// How runs are cut from sticks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPlan {
    /// Sticks used whole.
    pub full: u64,
    /// Pieces cut, and the sticks they are cut from.
    pub pieces: u64,
    pub cut: u64,
    /// No plan can need fewer: all steel laid end to end.
    pub least: u64,
}

impl CutPlan {
    pub fn sticks(&self) -> u64 {
        self.full + self.cut
    }
}

/// Longest pieces first, each into the fullest stick it still fits.
pub fn cut_plan<'a>(
    runs: impl IntoIterator<Item = &'a Run>,
    stock: Length,
    lap: Length,
) -> CutPlan {
    let (stock, lap) = (stock.as_nanometres(), lap.as_nanometres());
    let mut pieces: BTreeMap<i64, u64> = BTreeMap::new();
    let (mut full, mut steel) = (0_u64, 0_i128);
    for run in runs {
        let (length, count) = (run.length.as_nanometres(), u64::from(run.count));
        let whole = i64::from(run.pieces) - 1;
        let rest = length - whole * (stock - lap);
        full += count * u64::try_from(whole).expect("a run has at least one piece");
        steel += (i128::from(length) + i128::from(whole) * i128::from(lap)) * i128::from(count);
        if rest == stock {
            full += count;
        } else {
            *pieces.entry(rest).or_default() += count;
        }
    }
    let total = pieces.values().sum();
    let mut offcuts: BTreeMap<i64, u64> = BTreeMap::new();
    let mut cut = 0;
    for (&piece, &count) in pieces.iter().rev() {
        for _ in 0..count {
            let fits = offcuts.range(piece..).next().map(|(&left, _)| left);
            let left = if let Some(left) = fits {
                take(&mut offcuts, left);
                left
            } else {
                cut += 1;
                stock
            };
            *offcuts.entry(left - piece).or_default() += 1;
        }
    }
    let least = u64::try_from((steel + i128::from(stock) - 1) / i128::from(stock))
        .expect("steel of one job");
    CutPlan {
        full,
        pieces: total,
        cut,
        least,
    }
}

fn take(offcuts: &mut BTreeMap<i64, u64>, left: i64) {
    if let Some(count) = offcuts.get_mut(&left) {
        *count -= 1;
        if *count == 0 {
            offcuts.remove(&left);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(feet: i64, count: u32, pieces: u32) -> Run {
        Run {
            length: Length::feet_whole(feet),
            count,
            pieces,
        }
    }

    #[test]
    fn offcuts_are_used_again() {
        // 6 pieces of 9 ft: two a stick.
        let plan = cut_plan(
            &[run(9, 6, 1)],
            Length::feet_whole(20),
            Length::feet_whole(1),
        );
        assert_eq!((plan.sticks(), plan.least), (3, 3));
        // 15 and 5 ft share a stick.
        let plan = cut_plan(
            &[run(15, 2, 1), run(5, 2, 1)],
            Length::feet_whole(20),
            Length::feet_whole(1),
        );
        assert_eq!((plan.sticks(), plan.pieces), (2, 4));
    }

    #[test]
    fn a_long_run_takes_whole_sticks_and_a_rest() {
        // 35 ft with 1 ft laps from 20 ft: 20 + 16.
        let plan = cut_plan(
            &[run(35, 2, 2)],
            Length::feet_whole(20),
            Length::feet_whole(1),
        );
        assert_eq!((plan.full, plan.pieces, plan.sticks()), (2, 2, 4));
        // Exactly two whole sticks.
        let plan = cut_plan(
            &[run(39, 1, 2)],
            Length::feet_whole(20),
            Length::feet_whole(1),
        );
        assert_eq!((plan.full, plan.cut), (2, 0));
    }
}
