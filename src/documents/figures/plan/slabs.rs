//! Slabs as they lie: fills, outlines, joints, steps, and what stands at their edges.

use super::edges;
use super::frame::Frame;
use super::scale::Scale;
use super::sheet::{self, DOTS, INK, JOINT, Layer, PALE, SOFT, SOLID, Sheet, TINT};
use super::view::{PlanView, SlabView};
use crate::geometry::{Outline, Point as Site};
use crate::press::drawing::Point;

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    for slab in &view.slabs {
        let places: Vec<Point> = polygon(&slab.outline, scale);
        if slab.is_step {
            sheet.draw(Layer::Step, sheet::outlined(&places, Some(PALE), 1.3));
            for (from, to) in &slab.treads {
                let ends = [scale.place(*from), scale.place(*to)];
                sheet.line(Layer::Step, &ends, INK, 0.7, SOLID);
            }
            sheet.marks.push(extent(&slab.outline, scale).grown(1.5));
        } else {
            sheet.draw(Layer::Fill, sheet::filled(&places, TINT));
            sheet.ground.extend(bands(&slab.outline, scale));
            for (from, to) in &slab.joints {
                let ends = [scale.place(*from), scale.place(*to)];
                sheet
                    .joints
                    .push(Frame::around(ends[0], ends[1]).grown(0.4));
                sheet.line(Layer::Joint, &ends, INK, 0.7, JOINT);
            }
        }
        edges::draw(sheet, slab, view.accent, scale);
        chords(sheet, slab, scale);
    }
}

/// Dots along the chord of a bulged side, where the dimension of the bow begins.
fn chords(sheet: &mut Sheet, slab: &SlabView, scale: Scale) {
    if slab.outline.is_circle().is_some() || slab.outline.is_sector().is_some() {
        return;
    }
    for side in slab.outline.sides().iter().filter(|s| !s.is_straight()) {
        let ends = [scale.place(side.from), scale.place(side.to)];
        sheet.line(Layer::Joint, &ends, SOFT, 0.5, DOTS);
    }
}

pub(super) fn polygon(outline: &Outline, scale: Scale) -> Vec<Point> {
    outline
        .chords()
        .into_iter()
        .map(|p| scale.place(p))
        .collect()
}

pub(super) fn extent(outline: &Outline, scale: Scale) -> Frame {
    let (low, high) = outline.bounds();
    Frame::around(scale.place(low), scale.place(high))
}

/// The slab as boxes: strips between its corners, thin ones where it slants or bows.
///
/// What is left open in it counts as slab: no dimension and no other slab's name stands there.
pub(super) fn bands(outline: &Outline, scale: Scale) -> Vec<Frame> {
    let outline = outline.without_holes();
    let mut ys: Vec<i64> = outline.chords().iter().map(|p| p.y).collect();
    ys.sort_unstable();
    ys.dedup();
    let mut frames = Vec::new();
    for pair in ys.windows(2) {
        let tall = scale.place(Site::new(0, pair[0] - pair[1])).y;
        let mut pieces = 1;
        while 9.0 * f32::from(u8::try_from(pieces).unwrap_or(u8::MAX)) < tall && pieces < 255 {
            pieces += 1;
        }
        for piece in 0..pieces {
            let at = |n: i64| pair[0] + (pair[1] - pair[0]) / pieces * n;
            let (low, high) = (at(piece), at(piece + 1));
            let spans = outline.spans_at_y(i64::midpoint(low, high));
            frames.extend(spans.into_iter().map(|(west, east)| {
                let (a, b) = (Site::new(west, low), Site::new(east, high));
                Frame::around(scale.place(a), scale.place(b))
            }));
        }
    }
    frames
}

/// A face of something that stands: a solid line.
pub(super) fn face(sheet: &mut Sheet, ends: &[Point], width: f32) {
    sheet.line(Layer::Ground, ends, INK, width, SOLID);
}

/// Whether the polygon has room around all corners of a box.
pub(super) fn holds(polygon: &[Point], frame: &Frame) -> bool {
    let corners = sheet::corners(&frame.grown(2.5));
    corners.iter().all(|&p| is_within(p, polygon))
}

/// Even-odd rule on the polygon.
fn is_within(p: Point, polygon: &[Point]) -> bool {
    let next = polygon.iter().cycle().skip(1);
    let crossings = polygon.iter().zip(next).filter(|(a, b)| {
        (a.y <= p.y) != (b.y <= p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)
    });
    crossings.count() % 2 == 1
}
