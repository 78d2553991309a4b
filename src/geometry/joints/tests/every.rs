//! Small slabs, with every choice of lines tried: none is better than what was found.

use super::super::ground::Ground;
use super::super::plan::Plan;
use super::super::seam::Seam;
use super::super::{Asked, best};
use super::gallery::{Slab, long, rectangle, slab};
use crate::geometry::Point;
use crate::geometry::walks::walked;

/// Lines through the whole slab at these feet from its south-west corner.
fn lines(slab: &Slab, columns: &[&str], rows: &[&str]) -> Vec<Seam> {
    let (low, high) = slab.outline.bounds();
    let far = |text: &str| long(text).as_nanometres();
    let column = |text: &&str| {
        let x = low.x + far(text);
        Seam::straight(Point::new(x, low.y - 1), Point::new(x, high.y + 1))
    };
    let row = |text: &&str| {
        let y = low.y + far(text);
        Seam::straight(Point::new(low.x - 1, y), Point::new(high.x + 1, y))
    };
    columns
        .iter()
        .map(column)
        .chain(rows.iter().map(row))
        .collect()
}

#[track_caller]
fn case(slab: &Slab, columns: &[&str], rows: &[&str]) {
    let asked = Asked {
        outline: &slab.outline,
        longest: slab.longest,
        boxes: &slab.boxes,
        isolated: &slab.isolated,
        solid: &slab.solid,
        meet: &slab.meet,
        drawn: None,
    };
    let ground = Ground::of(&asked);
    let found = best(&ground).score;
    // The lines through, and each of their parts alone where the slab interrupts them.
    let mut pool: Vec<Seam> = Vec::new();
    for line in lines(slab, columns, rows) {
        pool.extend(ground.whole.stretches(&line));
    }
    assert!(
        pool.len() <= 12,
        "{} lines are too many to try them all",
        pool.len()
    );
    for set in 0..1_usize << pool.len() {
        let chosen: Vec<Seam> = (0..pool.len())
            .filter(|n| set >> n & 1 == 1)
            .map(|n| pool[n])
            .collect();
        let plan = Plan::cut(&ground, &chosen);
        assert!(
            found <= plan.score,
            "{}: {found:?}, and {:?} by {chosen:?}",
            slab.name,
            plan.score
        );
    }
}

#[test]
fn no_choice_of_lines_is_better() {
    let all = ["4 ft", "5 ft", "6 ft", "8 ft", "10 ft", "12 ft"];
    case(
        &slab("rectangle", "10 ft", rectangle("20 ft", "16 ft")),
        &all,
        &all,
    );
    case(
        &slab("patio", "10 ft", rectangle("12 ft", "15 ft")),
        &["3 ft", "4 ft", "6 ft", "8 ft", "9 ft"],
        &["3 ft", "5 ft", "7 ft 6 in", "10 ft", "12 ft"],
    );
    case(
        &slab("walk", "10 ft", rectangle("4 ft", "18 ft")),
        &["2 ft"],
        &[
            "3 ft",
            "3 ft 7.2 in",
            "4 ft 6 in",
            "6 ft",
            "7 ft 2.4 in",
            "9 ft",
            "10 ft 9.6 in",
            "12 ft",
            "13 ft 6 in",
            "14 ft 4.8 in",
        ],
    );
    let tee = walked(
        "east 8 ft, north 16 ft, east 8 ft, north 8 ft, west 24 ft, south 8 ft, east 8 ft, south 16 ft",
    );
    case(
        &slab("T", "10 ft", tee),
        &["4 ft", "6 ft", "8 ft", "12 ft", "16 ft", "20 ft"],
        &["8 ft", "16 ft", "20 ft"],
    );
    let ell = walked("east 16 ft, north 8 ft, west 8 ft, north 8 ft, west 8 ft, south 16 ft");
    case(
        &slab("L", "9 ft", ell),
        &["4 ft", "8 ft", "12 ft"],
        &["4 ft", "8 ft", "12 ft"],
    );
    let you = walked(
        "east 30 ft, north 20 ft, west 10 ft, south 12 ft, west 10 ft, north 12 ft, west 10 ft, south 20 ft",
    );
    case(
        &slab("U", "10 ft", you),
        &["5 ft", "10 ft", "20 ft", "25 ft"],
        &["8 ft", "10 ft", "14 ft"],
    );
}
