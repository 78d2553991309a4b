//! Cutting bars from stock: the fewest sticks found, offcuts used again.

use std::collections::BTreeMap;
use std::fmt::Write as _;

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
    /// Sticks that are cut alike: how many, and the pieces of each, longest first.
    pub patterns: Vec<(u64, Vec<Length>)>,
}

impl CutPlan {
    pub fn sticks(&self) -> u64 {
        self.full + self.cut
    }

    /// `; cut 6 sticks to 14 ft 2 in + 5 ft, 2 to 2 of 9 ft`; nothing when nothing is cut.
    pub fn cut_list(&self) -> String {
        let mut out = String::new();
        for (i, (sticks, pieces)) in self.patterns.iter().enumerate() {
            let _ = match (i, sticks) {
                (0, 1) => write!(out, "; cut 1 stick to "),
                (0, _) => write!(out, "; cut {sticks} sticks to "),
                _ => write!(out, "; {sticks} to "),
            };
            alike(pieces, &mut out);
        }
        out
    }
}

/// `14 ft`, and `2 of 3 ft` for pieces of one length, as a tape shows them.
fn alike(pieces: &[Length], out: &mut String) {
    let pieces: Vec<Length> = pieces.iter().map(|piece| piece.to_the_eighth()).collect();
    for (i, same) in pieces.chunk_by(|a, b| a == b).enumerate() {
        if i != 0 {
            out.push_str(" + ");
        }
        let _ = match same {
            [one] => write!(out, "{one}"),
            _ => write!(out, "{} of {}", same.len(), same[0]),
        };
    }
}

/// Longest pieces first, each into the fullest stick it still fits.
pub fn cut_plan<'a>(runs: impl IntoIterator<Item = &'a Run>, stock: Length) -> CutPlan {
    let stock = stock.as_nanometres();
    let mut pieces: BTreeMap<i64, u64> = BTreeMap::new();
    let (mut full, mut steel) = (0_u64, 0_i128);
    for run in runs {
        let (length, count) = (run.length.as_nanometres(), u64::from(run.count));
        let lap = run.lap.as_nanometres();
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
    let sticks = packed(&pieces, stock);
    let least = u64::try_from((steel + i128::from(stock) - 1) / i128::from(stock))
        .expect("steel of one job");
    CutPlan {
        full,
        pieces: total,
        cut: sticks.len() as u64,
        least,
        patterns: patterns(sticks),
    }
}

/// The pieces of every stick that is cut.
fn packed(pieces: &BTreeMap<i64, u64>, stock: i64) -> Vec<Vec<i64>> {
    let mut sticks: Vec<Vec<i64>> = Vec::new();
    // What is left of a stick, and which sticks have that much left.
    let mut offcuts: BTreeMap<i64, Vec<usize>> = BTreeMap::new();
    for (&piece, &count) in pieces.iter().rev() {
        for _ in 0..count {
            let (stick, left) = take(&mut offcuts, piece).unwrap_or_else(|| {
                sticks.push(Vec::new());
                (sticks.len() - 1, stock)
            });
            sticks[stick].push(piece);
            offcuts.entry(left - piece).or_default().push(stick);
        }
    }
    sticks
}

/// The fullest stick that still holds the piece, and what is left of it.
fn take(offcuts: &mut BTreeMap<i64, Vec<usize>>, piece: i64) -> Option<(usize, i64)> {
    let left = *offcuts.range(piece..).next()?.0;
    let sticks = offcuts.get_mut(&left)?;
    let stick = sticks.pop()?;
    if sticks.is_empty() {
        offcuts.remove(&left);
    }
    Some((stick, left))
}

fn patterns(sticks: Vec<Vec<i64>>) -> Vec<(u64, Vec<Length>)> {
    let mut counted: BTreeMap<Vec<i64>, u64> = BTreeMap::new();
    for stick in sticks {
        *counted.entry(stick).or_default() += 1;
    }
    counted
        .into_iter()
        .rev()
        .map(|(pieces, sticks)| {
            let pieces = pieces.into_iter().map(Length::nanometres).collect();
            (sticks, pieces)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const STICK: Length = Length::feet_whole(20);

    fn run(feet: i64, count: u32, pieces: u32) -> Run {
        Run {
            length: Length::feet_whole(feet),
            count,
            pieces,
            lap: Length::feet_whole(1),
        }
    }

    #[test]
    fn offcuts_are_used_again() {
        // 6 pieces of 9 ft: two a stick.
        let plan = cut_plan(&[run(9, 6, 1)], STICK);
        assert_eq!((plan.sticks(), plan.least), (3, 3));
        // 15 and 5 ft share a stick.
        let plan = cut_plan(&[run(15, 2, 1), run(5, 2, 1)], STICK);
        assert_eq!((plan.sticks(), plan.pieces), (2, 4));
    }

    #[test]
    fn a_long_run_takes_whole_sticks_and_a_rest() {
        // 35 ft with 1 ft laps from 20 ft: 20 + 16.
        let plan = cut_plan(&[run(35, 2, 2)], STICK);
        assert_eq!((plan.full, plan.pieces, plan.sticks()), (2, 2, 4));
        // Exactly two whole sticks.
        let plan = cut_plan(&[run(39, 1, 2)], STICK);
        assert_eq!((plan.full, plan.cut), (2, 0));
        assert_eq!(plan.cut_list(), "");
    }

    #[test]
    fn every_run_laps_as_its_own_slab_asks() {
        let longer = Run {
            lap: Length::feet_whole(3),
            ..run(35, 1, 2)
        };
        let plan = cut_plan(&[run(35, 1, 2), longer], STICK);
        assert_eq!(plan.cut_list(), "; cut 1 stick to 18 ft; 1 to 16 ft");
    }

    #[test]
    fn the_cut_list_says_what_each_stick_becomes() {
        let plan = cut_plan(&[run(14, 2, 1), run(3, 5, 1), run(9, 2, 1)], STICK);
        let list = plan.cut_list();
        assert_eq!(
            list,
            "; cut 2 sticks to 14 ft + 2 of 3 ft; 1 to 2 of 9 ft; 1 to 3 ft"
        );
        // Every piece is in the list once, and no stick is cut longer than it is.
        let mut pieces = 0;
        for (sticks, cuts) in &plan.patterns {
            let used = cuts.iter().fold(Length::ZERO, |sum, cut| sum + *cut);
            assert!(used <= STICK, "{list}");
            pieces += sticks * cuts.len() as u64;
        }
        assert_eq!(pieces, plan.pieces);
    }
}
