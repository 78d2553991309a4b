//! A slab cut straight across into pieces as large as each other: their outlines and what stands along them.
//!
//! Cuts go square to the longer way of the slab, each to the eighth of an inch, so that pieces can be
//! written down as they were reckoned.

use crate::geometry::{Outline, Point, Side, point};
use crate::input::job::{EdgeKind, EdgePart, Meets, Slab};
use crate::input::phrases::{EdgeName, EdgesPhrase};
use crate::values::Length;

/// A corner of a piece, and the side of the slab that begins there; none at a cut.
#[derive(Clone, Copy, Debug)]
struct Corner {
    at: Point,
    side: Option<usize>,
}

/// Which way cuts go: the line of all places as far east, or as far north.
#[derive(Clone, Copy)]
struct Line {
    is_east: bool,
    far: i64,
}

/// The slab in `many` pieces, from the west or the south on; none where it cannot be cut so.
pub(super) fn cut(slab: &Slab, many: usize) -> Option<Vec<Slab>> {
    let is_plain = slab.openings.is_empty()
        && slab.boxes.is_empty()
        && slab.drawn.is_empty()
        && slab.levels.is_none()
        && slab.sections.steps.is_none()
        && slab.outline.sides().iter().all(Side::is_straight);
    if !is_plain {
        return None;
    }
    let (low, high) = slab.outline.bounds();
    let is_east = high.y - low.y <= high.x - low.x;
    let sides = slab.outline.sides().iter().enumerate();
    let mut rest: Vec<Corner> = sides
        .map(|(i, side)| Corner {
            at: side.from,
            side: Some(i),
        })
        .collect();
    let share = area(&rest) / i128::try_from(many).ok()?;
    let mut pieces = Vec::new();
    for _ in 1..many {
        let (piece, left) = split(&rest, even(&rest, is_east, share)?)?;
        pieces.push(piece);
        rest = left;
    }
    pieces.push(rest);
    let pieces = pieces.iter().enumerate();
    pieces.map(|(n, corners)| piece(slab, n, corners)).collect()
}

/// Twice the area.
fn area(corners: &[Corner]) -> i128 {
    let points: Vec<Point> = corners.iter().map(|corner| corner.at).collect();
    point::doubled_area(&points)
}

/// The line that leaves so much on its near side, by halving what is left to look at.
fn even(corners: &[Corner], is_east: bool, share: i128) -> Option<Line> {
    let far = |point: Point| if is_east { point.x } else { point.y };
    let start = corners.iter().map(|corner| far(corner.at)).min()?;
    let mut low = start;
    let mut high = corners.iter().map(|corner| far(corner.at)).max()?;
    while low + 1 < high {
        let line = Line {
            is_east,
            far: low + (high - low) / 2,
        };
        // One half may be of several parts here: only how much it is counts.
        if area(&line.near(corners)) < share {
            low = line.far;
        } else {
            high = line.far;
        }
    }
    let far = start
        + Length::nanometres(high - start)
            .to_the_eighth()
            .as_nanometres();
    Some(Line { is_east, far })
}

impl Line {
    const fn is_near(self, at: Point) -> bool {
        (if self.is_east { at.x } else { at.y }) <= self.far
    }

    /// Where a side crosses it.
    fn crossing(self, from: Point, to: Point) -> Point {
        let between = |a: (i64, i64), b: (i64, i64)| {
            let (run, rise) = (i128::from(b.0 - a.0), i128::from(b.1 - a.1));
            let more = i128::from(self.far - a.0) * rise / run;
            a.1 + i64::try_from(more).unwrap_or(0)
        };
        if self.is_east {
            Point::new(self.far, between((from.x, from.y), (to.x, to.y)))
        } else {
            Point::new(between((from.y, from.x), (to.y, to.x)), self.far)
        }
    }

    /// What lies on its near side, walked the same way round.
    fn near(self, corners: &[Corner]) -> Vec<Corner> {
        self.kept(corners, true)
    }

    fn kept(self, corners: &[Corner], is_near: bool) -> Vec<Corner> {
        let ends = corners.iter().cycle().skip(1);
        let mut kept = Vec::new();
        for (corner, end) in corners.iter().zip(ends) {
            let (starts, stays) = (
                self.is_near(corner.at) == is_near,
                self.is_near(end.at) == is_near,
            );
            let crossing = || self.crossing(corner.at, end.at);
            if starts {
                kept.push(*corner);
            }
            match (starts, stays) {
                // From here on along the cut.
                (true, false) => kept.push(Corner {
                    at: crossing(),
                    side: None,
                }),
                (false, true) => kept.push(Corner {
                    at: crossing(),
                    side: corner.side,
                }),
                (true, true) | (false, false) => {}
            }
        }
        // A corner on the line leaves nothing of its side beyond it.
        let all = kept.clone();
        let next = |i: usize| all[(i + 1) % all.len()].at;
        let mut numbers = 0..all.len();
        kept.retain(|corner| numbers.next().is_some_and(|i| next(i) != corner.at));
        kept
    }
}

/// Both parts, where the line crosses the outline twice and no more.
fn split(corners: &[Corner], line: Line) -> Option<(Vec<Corner>, Vec<Corner>)> {
    let ends = corners.iter().cycle().skip(1);
    let sides = corners.iter().zip(ends);
    let crossed = sides.filter(|(from, to)| line.is_near(from.at) != line.is_near(to.at));
    (crossed.count() == 2).then(|| (line.kept(corners, true), line.kept(corners, false)))
}

/// A piece as a slab of its own: what stood along the slab stands along it still, and nothing is said of its cuts.
fn piece(slab: &Slab, n: usize, corners: &[Corner]) -> Option<Slab> {
    let points: Vec<(Point, Length)> = corners
        .iter()
        .map(|corner| (corner.at, Length::ZERO))
        .collect();
    let outline = Outline::cornered(&points).ok()?;
    let mut edges = Vec::new();
    for (side, corner) in corners.iter().enumerate() {
        let Some(whole) = corner.side else {
            edges.push(EdgePart {
                side,
                kind: EdgeKind::Joined,
                stretch: None,
                meets: Meets::Nothing,
            });
            continue;
        };
        let first = slab.outline.sides()[whole].from;
        let from = along(first, corner.at);
        let to = along(first, corners[(side + 1) % corners.len()].at);
        let parts = slab.edges.iter().filter(|part| part.side == whole);
        edges.extend(parts.filter_map(|part| {
            let (start, end) = part.stretch.unwrap_or((from, to));
            let (start, end) = (start.max(from), end.min(to));
            let stretch = Some((start - from, end - from));
            (start < end).then(|| EdgePart {
                side,
                stretch: stretch.filter(|_| end - start < to - from),
                ..*part
            })
        }));
    }
    let mut own = Slab {
        outline,
        size: None,
        width: None,
        edges,
        matched: Vec::new(),
        ..slab.clone()
    };
    thicken(&mut own, slab, corners);
    if 0 < n {
        own.key = format!("{} {}", slab.key, n + 1);
    }
    Some(own)
}

/// How far along a side.
fn along(from: Point, to: Point) -> Length {
    let side = Side {
        from,
        to,
        bulge: Length::ZERO,
        leg: 0,
    };
    Length::of_feet(side.chord())
}

/// A pour that ends at a bulkhead has no thick edge there: only what was thick stays so.
fn thicken(own: &mut Slab, slab: &Slab, corners: &[Corner]) {
    let Some(thickened) = &mut own.sections.thickened else {
        return;
    };
    if thickened.edges.value == EdgesPhrase::AllOpen {
        return;
    }
    let strips = slab.thickened_strips();
    let is_thick = |corner: &Corner| {
        let mut strips = strips.iter();
        strips.any(|strip| Some(strip.side) == corner.side)
    };
    let sides = corners.iter().enumerate();
    let sides = sides.filter(|(_, corner)| is_thick(corner));
    let names: Vec<EdgeName> = sides.map(|(i, _)| EdgeName::Number(i + 1)).collect();
    if names.is_empty() {
        own.sections.thickened = None;
    } else {
        thickened.edges.value = EdgesPhrase::Named(names);
    }
}
