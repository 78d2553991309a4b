//! Slabs turned and mirrored are laid out alike.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::super::ground::Ground;
use super::super::pose::Posed;
use super::super::score::Score;
use super::super::{Layout, best};
use super::gallery::Slab;
use super::laws::{asked, slabs};
use crate::geometry::{Outline, Point};

/// Turned or mirrored by a map of places that keeps lengths.
fn moved(slab: &Slab, map: &dyn Fn(Point) -> Point) -> Option<Slab> {
    let turned = |outline: &Outline| {
        if let Some(diameter) = outline.is_circle() {
            let (low, high) = outline.bounds();
            let middle = map(Point::new(
                i64::midpoint(low.x, high.x),
                i64::midpoint(low.y, high.y),
            ));
            let half = diameter.half().as_nanometres();
            return Some(Outline::circle(diameter).moved(middle - Point::new(half, half)));
        }
        let corners = outline
            .sides()
            .iter()
            .map(|side| (map(side.from), side.bulge));
        Outline::cornered(&corners.collect::<Vec<_>>()).ok()
    };
    let mut outline = turned(&slab.outline)?;
    for hole in slab.outline.holes() {
        outline = outline.with_hole(turned(hole)?).ok()?;
    }
    Some(Slab {
        name: slab.name,
        outline,
        longest: slab.longest,
        boxes: Vec::new(),
        isolated: Vec::new(),
        solid: Vec::new(),
        meet: Vec::new(),
    })
}

fn same(one: &Layout, other: &Layout) -> bool {
    let sorted = |layout: &Layout| {
        let mut areas: Vec<Decimal> = layout.panels.iter().map(|panel| panel.area).collect();
        areas.sort_unstable();
        areas
    };
    let (one, other) = (sorted(one), sorted(other));
    one.len() == other.len()
        && one
            .iter()
            .zip(&other)
            .all(|(a, b)| (*a - *b).abs() < dec!(0.01))
}

fn score(slab: &Slab) -> Score {
    let posed = Posed::of(&asked(slab));
    best(&Ground::of(&posed.asked())).score
}

/// Within a tenth: turned by no quarter, corners are rounded, and a climb may end at another layout.
fn is_as_good(one: Score, other: Score) -> bool {
    let near = |a: i64, b: i64, hair: i64| (a - b).abs() * 10 <= a.max(b) + hair;
    (one.long, one.hard) == (other.long, other.hard)
        && near(one.cracks, other.cracks, 200)
        && near(one.cost, other.cost, 0)
}

fn checked(
    map: &dyn Fn(Point) -> Point,
    like: &dyn Fn(&Slab, &Slab) -> bool,
) -> (usize, Vec<usize>) {
    let many = std::env::var("SLABS").map_or(120, |many| many.parse().unwrap());
    let all = slabs(many);
    let turned = all
        .iter()
        .enumerate()
        .filter(|(_, slab)| slab.boxes.is_empty());
    let turned: Vec<_> = turned
        .filter_map(|(number, slab)| Some((number, slab, moved(slab, map)?)))
        .collect();
    let differ = turned
        .iter()
        .filter(|(_, slab, turned)| !like(slab, turned));
    (turned.len(), differ.map(|one| one.0).collect())
}

#[test]
fn a_slab_turned_by_a_quarter_or_mirrored_is_laid_out_alike() {
    let maps: [&dyn Fn(Point) -> Point; 2] =
        [&|at| Point::new(-at.y, at.x), &|at| Point::new(-at.x, at.y)];
    for map in maps {
        let (_, differ) = checked(map, &|slab, turned| {
            same(&slab.laid_out(), &turned.laid_out())
        });
        assert!(differ.is_empty(), "{differ:?}");
    }
}

#[test]
fn a_slab_turned_by_any_angle_is_laid_out_as_well() {
    let part = |a: i64, x: i64, b: i64, y: i64| (a * x + b * y + 2).div_euclid(5);
    let map = |at: Point| Point::new(part(3, at.x, -4, at.y), part(4, at.x, 3, at.y));
    let (tried, differ) = checked(&map, &|slab, turned| is_as_good(score(slab), score(turned)));
    assert!(
        differ.len() * 40 <= tried,
        "{} of {tried}: {differ:?}",
        differ.len()
    );
}
