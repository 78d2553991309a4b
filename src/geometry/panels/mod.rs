//! Contraction joints: a grid of panels over an outline.
//!
//! Limits first, then even panels, then squareness: lines through the re-entrant
//! corners (a crack starts there), each gap divided evenly to keep within the
//! longest panel allowed, and a panel over 1.5 times as long as wide divided
//! further until it is at most 1.25 (1.25 preferred, never over 1.5: Basham at
//! forconstructionpros.com, seen in search excerpts only; not over 1.25: TM
//! 5-809-12 / UFC 3-320-06A, paragraph 5-2). Lines run north-south and east-west
//! only, whatever way the sides slant. Holes change no line of the layout; they
//! are only left out of it.

use std::collections::BTreeSet;

use rust_decimal::Decimal;

use super::grid::{self, Gap};
use super::outline::Outline;
use super::point::{self, Point};
use super::side::Side;
use super::{clip, square};
use crate::values::{Area, Length};

/// The joint layout of one slab.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panels {
    /// Joint lines, clipped to the outline.
    pub lines: Vec<(Point, Point)>,
    /// Feet of joint.
    pub length: Decimal,
    /// The largest panel, east-west by north-south, bows beyond a chord left out.
    pub widest: (Length, Length),
    /// Panel widths, west to east.
    pub columns: Vec<Length>,
    /// Panel depths, north to south.
    pub rows: Vec<Length>,
    /// Longer over shorter side of the most stretched panel.
    pub worst_ratio: Decimal,
    /// Panels row by row, north-west first; together they are the whole slab less its holes.
    pub panels: Vec<Panel>,
}

/// The part of the slab in one field of the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Panel {
    /// South-west corner of the field, bows included.
    pub low: Point,
    /// North-east corner of the field, bows included.
    pub high: Point,
    /// East-west by north-south, bows beyond a chord left out.
    pub size: (Length, Length),
    /// Square feet of the slab in it, curves as chords.
    pub area: Decimal,
}

/// Lays out joints so that no panel is longer than `longest`.
pub fn panels(outline: &Outline, longest: Length) -> Panels {
    let longest = longest.as_nanometres().max(1);
    let (xs, ys) = given_cuts(outline, longest);
    let (low, high) = outline.bounds();
    let mut columns = grid::gaps(&xs, low.x, high.x, longest);
    let mut rows = grid::gaps(&ys, low.y, high.y, longest);
    // A curb has its joints as far apart as was said: square panels would be inches long.
    if !outline.is_narrow() {
        square::make_square(outline, &mut columns, &mut rows);
    }
    laid_out(outline, &columns, &rows)
}

/// Cuts at the outermost corners and through the re-entrant ones.
fn given_cuts(outline: &Outline, longest: i64) -> (Vec<i64>, Vec<i64>) {
    let corners: Vec<Point> = outline.sides().iter().map(|side| side.from).collect();
    let (low, high) = point::bounds(&corners);
    let inner: Vec<Point> = re_entrant(outline.sides());
    let sorted = |ends: [i64; 2], middle: Vec<i64>| -> Vec<i64> {
        let set: BTreeSet<i64> = ends.into_iter().chain(middle).collect();
        set.into_iter().collect()
    };
    let xs = sorted([low.x, high.x], inner.iter().map(|p| p.x).collect());
    let ys = sorted([low.y, high.y], inner.iter().map(|p| p.y).collect());
    let xs = grid::joined(xs, longest, |_| false);
    // A corner that lost its north-south line keeps its east-west one.
    let ys = grid::joined(ys, longest, |y| {
        inner.iter().any(|p| p.y == y && !xs.contains(&p.x))
    });
    (xs, ys)
}

/// Corners between straight sides where the slab turns inward by more than about 6 degrees.
fn re_entrant(sides: &[Side]) -> Vec<Point> {
    let next = sides.iter().cycle().skip(1);
    sides
        .iter()
        .zip(next)
        .filter(|(a, b)| {
            let ahead = b.to - b.from;
            let turn = a.from.turn(a.to, b.to);
            let along = a.to - a.from;
            let onward = i128::from(along.x) * i128::from(ahead.x)
                + i128::from(along.y) * i128::from(ahead.y);
            a.is_straight() && b.is_straight() && turn < 0 && onward < -10 * turn
        })
        .map(|(a, _)| a.to)
        .collect()
}

fn laid_out(outline: &Outline, columns: &[Gap], rows: &[Gap]) -> Panels {
    let xs: Vec<(i64, i64)> = columns.iter().flat_map(Gap::intervals).collect();
    let ys: Vec<(i64, i64)> = rows.iter().flat_map(Gap::intervals).collect();
    let mut lines = Vec::new();
    for x in xs.iter().skip(1).map(|i| i.0) {
        let spans = outline.spans_at_x(x).into_iter();
        lines.extend(spans.map(|(a, b)| (Point::new(x, a), Point::new(x, b))));
    }
    for y in ys.iter().skip(1).map(|i| i.0) {
        let spans = outline.spans_at_y(y).into_iter();
        lines.extend(spans.map(|(a, b)| (Point::new(a, y), Point::new(b, y))));
    }
    let long: i64 = lines.iter().map(|(a, b)| b.x - a.x + b.y - a.y).sum();
    let size = |i: &(i64, i64)| Length::nanometres(i.1 - i.0);
    let mut all = Panels {
        lines,
        length: Length::nanometres(long).feet(),
        widest: (Length::ZERO, Length::ZERO),
        columns: xs.iter().map(size).collect(),
        rows: ys.iter().rev().map(size).collect(),
        worst_ratio: Decimal::ONE,
        panels: Vec::new(),
    };
    for row in ys.iter().rev() {
        for column in &xs {
            all.take(outline, *column, *row, &xs, &ys);
        }
    }
    // A shape that fills no field by half still has a largest panel.
    if all.widest.0 == Length::ZERO
        && let Some(panel) = all.panels.iter().max_by_key(|panel| panel.area)
    {
        let across = panel.high - panel.low;
        all.widest = (Length::nanometres(across.x), Length::nanometres(across.y));
    }
    all
}

impl Panels {
    /// Takes up the panel of one field, if there is slab in it.
    fn take(
        &mut self,
        outline: &Outline,
        column: (i64, i64),
        row: (i64, i64),
        xs: &[(i64, i64)],
        ys: &[(i64, i64)],
    ) {
        // Bows beyond the outermost corners belong to the outermost panels.
        let (west_south, east_north) = outline.bounds();
        let reach = |i: (i64, i64), all: &[(i64, i64)], low: i64, high: i64| {
            let from = if Some(&i) == all.first() {
                i.0.min(low)
            } else {
                i.0
            };
            let to = if Some(&i) == all.last() {
                i.1.max(high)
            } else {
                i.1
            };
            (from, to)
        };
        let (x0, x1) = reach(column, xs, west_south.x, east_north.x);
        let (y0, y1) = reach(row, ys, west_south.y, east_north.y);
        let (low, high) = (Point::new(x0, y0), Point::new(x1, y1));
        let doubled = clip::doubled_area(outline.polygon(), low, high);
        let open = outline.holes().iter();
        let open: i128 = open
            .map(|hole| clip::doubled_area(hole.polygon(), low, high))
            .sum();
        if doubled <= open {
            return;
        }
        let area = Area::square_nanometres(doubled - open).square_feet() / Decimal::TWO;
        let (wide, deep) = (column.1 - column.0, row.1 - row.0);
        let size = (Length::nanometres(wide), Length::nanometres(deep));
        self.panels.push(Panel {
            low,
            high,
            size,
            area,
        });
        let whole = i128::from(wide) * i128::from(deep);
        // Slivers at slanted and round edges say nothing about the shape of the panels.
        if doubled < whole {
            return;
        }
        self.worst_ratio = self.worst_ratio.max(square::ratio(wide, deep));
        if (self.widest.0 * self.widest.1).as_square_nanometres() < whole {
            self.widest = size;
        }
    }
}

#[cfg(test)]
mod tests;
