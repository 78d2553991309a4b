//! Where an outline lies on the paper, and what has room in it.

use super::scale::Scale;
use crate::geometry::{Outline, Point as Site};
use crate::press::drawing::{PagePoint, point};
use crate::press::frame::Frame;

pub(super) fn polygon(outline: &Outline, scale: Scale) -> Vec<PagePoint> {
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

/// A box with room for words in the middle of a polygon; one that is a box itself is all room.
pub(super) fn room(polygon: &[PagePoint]) -> Frame {
    let whole = Frame::around_all(polygon.iter().copied());
    let next = polygon.iter().cycle().skip(1);
    let (mut doubled, mut x, mut y) = (0.0_f32, 0.0_f32, 0.0_f32);
    let start = whole.middle();
    for (a, b) in polygon.iter().zip(next) {
        let (ax, ay, bx, by) = (a.x - start.x, a.y - start.y, b.x - start.x, b.y - start.y);
        let turn = ax * by - bx * ay;
        doubled += turn;
        x += turn * (ax + bx) / 3.0;
        y += turn * (ay + by) / 3.0;
    }
    let area = libm::fabsf(doubled) / 2.0;
    if 0.98 * whole.width() * whole.height() < area {
        return whole;
    }
    let middle = point(start.x + x / doubled, start.y + y / doubled);
    let scaled = |part: u8| {
        let part = f32::from(part) / 10.0;
        let (wide, tall) = (whole.width() * part, whole.height() * part);
        Frame::at(middle.x - wide / 2.0, middle.y - tall / 2.0, wide, tall)
    };
    let fits = |frame: &Frame| frame.corners().iter().all(|&p| is_within(p, polygon));
    let mut smaller = (1..10).rev().map(scaled);
    smaller.find(fits).unwrap_or_else(|| scaled(0))
}

/// Whether the polygon has room around all corners of a box.
pub(super) fn holds(polygon: &[PagePoint], frame: &Frame) -> bool {
    let corners = frame.grown(2.5).corners();
    corners.iter().all(|&p| is_within(p, polygon))
}

/// Even-odd rule on the polygon.
fn is_within(p: PagePoint, polygon: &[PagePoint]) -> bool {
    let next = polygon.iter().cycle().skip(1);
    let crossings = polygon.iter().zip(next).filter(|(a, b)| {
        (a.y <= p.y) != (b.y <= p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)
    });
    crossings.count() % 2 == 1
}
