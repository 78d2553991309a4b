//! Dimension lines outside the slabs: rows 14 apart, clear of everything.

use super::labels;
use super::rows::{DimensionRow, RowEnd};
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{PlanView, SlabView};
use crate::documents::figures::pen::{INK, RULE, SOLID};
use crate::geometry::Compass;
use crate::press::drawing::{Words, point};
use crate::press::frame::Frame;

const ROW: f32 = 14.0;
const FIRST: f32 = 12.0;
/// What an extension line through a slab costs, in points further out.
const BLOCKED: f32 = 40.0;

/// Draws the dimensions of every slab, small slabs first so that theirs stay close.
pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    let mut slabs: Vec<&SlabView> = view.slabs.iter().filter(|s| !s.is_step).collect();
    slabs.sort_by_key(|slab| slab.outline.area());
    for slab in slabs {
        both_ways(sheet, slab, view, scale, [Compass::South, Compass::North]);
        if slab.outline.is_circle().is_none() {
            both_ways(sheet, slab, view, scale, [Compass::East, Compass::West]);
        }
    }
}

/// The parts and the whole along one axis, on whichever of two sides has room.
fn both_ways(sheet: &mut Sheet, slab: &SlabView, view: &PlanView, scale: Scale, on: [Compass; 2]) {
    let rows = on.map(|facing| DimensionRow { facing });
    let chains = rows.map(|row| row.stops(slab, scale));
    let sites = |stops: &[RowEnd]| -> Vec<i64> { stops.iter().map(|s| s.site).collect() };
    let same = sites(&chains[0]) == sites(&chains[1]);
    let first = |row: DimensionRow| row.base(slab, scale) + FIRST;
    let mut parts_on = None;
    for i in [0, 1] {
        if chains[i].len() <= 2 || (i == 1 && same) {
            continue;
        }
        // Parts stand on the side where their corners are, or across the slab when that side is full.
        let (near, far) = (rows[i], rows[1 - i]);
        let across = DimensionRow::across(&chains[i], far.base(slab, scale));
        let mut beyond = found(sheet, far, &across, first(far), "");
        beyond.cost += 10.0;
        let best = cheaper(found(sheet, near, &chains[i], first(near), ""), beyond);
        parts_on = parts_on.or(Some(best.row));
        best.draw(sheet);
    }
    let suffix = if slab.outline.is_circle().is_some() {
        format!("\u{a0}{}", view.words.across)
    } else {
        String::new()
    };
    let whole = |row: DimensionRow| found(sheet, row, &row.ends(slab, scale), first(row), &suffix);
    // The whole goes outside its parts.
    let best = parts_on.map_or_else(|| cheaper(whole(rows[0]), whole(rows[1])), whole);
    // A neighbor in line says the same length; reaching across it would only confuse.
    let ends = sites(&best.stops);
    let says_it = |other: &SlabView| {
        let in_line = sites(&best.row.ends(other, scale)) == ends;
        let has_room = || {
            let laid = |row: DimensionRow| {
                found(
                    sheet,
                    row,
                    &row.ends(other, scale),
                    row.base(other, scale) + FIRST,
                    "",
                )
            };
            rows.into_iter().any(|row| laid(row).cost < BLOCKED)
        };
        !std::ptr::eq(other, slab) && !other.is_step && in_line && has_room()
    };
    if 2.0 * ROW <= best.cost && view.slabs.iter().any(says_it) {
        return;
    }
    best.draw(sheet);
}

/// The one with more room; the first when both are alike.
fn cheaper(a: Laid, b: Laid) -> Laid {
    if b.cost < a.cost { b } else { a }
}

/// A row with its place found, not yet drawn.
struct Laid {
    row: DimensionRow,
    stops: Vec<RowEnd>,
    out: f32,
    texts: Vec<Words>,
    cost: f32,
}

/// The nearest free place for a row, from `first` outward.
fn found(sheet: &Sheet, row: DimensionRow, stops: &[RowEnd], first: f32, suffix: &str) -> Laid {
    let mut best: Option<Laid> = None;
    for n in 0_u8..12 {
        let out = first + ROW / 2.0 * f32::from(n);
        let (texts, clear) = labels::of_row(sheet, row, stops, out, suffix);
        let barred = stops.windows(2).filter(|pair| {
            let bar = row.bar(pair, out, 3.0);
            bar.overlaps_any(&sheet.ground)
                || bar.overlaps_any(&sheet.marks)
                || lies_on(&row.bar(pair, out, 7.0), row, sheet)
        });
        let crossed = extensions(row, stops, out)
            .filter(|f| f.overlaps_any(&sheet.marks) || crosses(f, sheet))
            .count();
        let trouble = barred.count() + usize::from(!clear) * 2;
        let trouble = f32::from(u8::try_from(trouble).unwrap_or(u8::MAX));
        let crossed = f32::from(u8::try_from(crossed).unwrap_or(u8::MAX));
        let cost = out - first + 400.0 * trouble + BLOCKED * crossed;
        if best.as_ref().is_none_or(|b| cost < b.cost) {
            best = Some(Laid {
                row,
                stops: stops.to_vec(),
                out,
                texts,
                cost,
            });
        }
    }
    best.expect("at least one place was tried")
}

/// Whether a parallel dimension line is nearer than a row.
fn lies_on(reach: &Frame, row: DimensionRow, sheet: &Sheet) -> bool {
    let parallel = |line: &&Frame| (line.height() < line.width()) == row.is_level();
    sheet
        .lines
        .iter()
        .filter(parallel)
        .any(|line| reach.overlaps(line))
}

/// Whether an extension line runs through a slab, not only along its edge.
fn crosses(line: &Frame, sheet: &Sheet) -> bool {
    sheet
        .ground
        .iter()
        .any(|slab| slab.grown(-0.8).overlaps(line))
}

/// Whether an extension line would run along an edge that is already drawn.
fn is_drawn(line: &Frame, sheet: &Sheet) -> bool {
    let along = |slab: &&Frame| slab.grown(0.5).overlaps(line);
    !crosses(line, sheet) && sheet.ground.iter().any(|slab| along(&slab))
}

/// Boxes of the extension lines, from the slab's corner to just beyond the row.
fn extensions(row: DimensionRow, stops: &[RowEnd], out: f32) -> impl Iterator<Item = Frame> + '_ {
    stops
        .iter()
        .filter(move |s| s.out + 6.0 < out)
        .map(move |s| {
            Frame::around(
                row.place(s.along, s.out + 3.0),
                row.place(s.along, out + 3.0),
            )
            .grown(0.2)
        })
}

impl Laid {
    fn draw(self, sheet: &mut Sheet) {
        let Self {
            row, stops, out, ..
        } = self;
        for frame in extensions(row, &stops, out) {
            if is_drawn(&frame, sheet) {
                continue;
            }
            let middle = frame.middle();
            let ends = if row.is_level() {
                [point(middle.x, frame.top), point(middle.x, frame.bottom)]
            } else {
                [point(frame.left, middle.y), point(frame.right, middle.y)]
            };
            sheet.line(Layer::Ground, &ends, RULE, 0.4, SOLID);
            sheet.lines.push(frame);
        }
        for pair in stops.windows(2) {
            let ends = [row.place(pair[0].along, out), row.place(pair[1].along, out)];
            sheet.line(Layer::Dimension, &ends, INK, 0.45, SOLID);
            sheet.lines.push(Frame::around(ends[0], ends[1]).grown(2.4));
        }
        for stop in &stops {
            let at = row.place(stop.along, out);
            let half = 2.4 * core::f32::consts::FRAC_1_SQRT_2 * 1.4;
            let ends = [
                point(at.x - half, at.y + half),
                point(at.x + half, at.y - half),
            ];
            sheet.line(Layer::Dimension, &ends, INK, 0.9, SOLID);
        }
        for words in self.texts {
            sheet.write(Layer::Dimension, words);
        }
    }
}
