//! What stands at the edges: strips, the house, concrete that stays, construction joints.

use super::kinds::{Crossed, EdgeMark};
use super::scale::Scale;
use super::sheet::{BULKHEAD, DOTS, Layer, STRIP, Sheet};
use super::view::{EdgeView, SlabView};
use super::{ground, pins};
use crate::documents::figures::pen::{INK, PALE, SOFT, SOLID, WHITE, outlined};
use crate::geometry::Side;
use crate::press::drawing::{PagePoint, Path, Rgb, Shape, Stroke, line, point};
use crate::press::frame::Frame;

/// How deep a wall or a neighbouring slab is drawn.
pub(super) const DEPTH: f32 = 14.0;

pub(super) fn draw(sheet: &mut Sheet, slab: &SlabView, accent: Rgb, scale: Scale) {
    let solid = |e: &EdgeView| !matches!(e.kind, EdgeMark::Joined | EdgeMark::Bulkhead);
    let whole = slab.edges.iter().all(solid);
    if whole && !slab.is_step {
        let places = ground::polygon(&slab.outline, scale);
        sheet.draw(Layer::Outline, outlined(&places, None, 1.3));
    }
    for (index, side) in slab.outline.sides().iter().enumerate() {
        let edges: Vec<&EdgeView> = slab.edges.iter().filter(|e| e.side == index).collect();
        let along = SideLine::of(side, slab, scale);
        if !whole && !slab.is_step {
            for (from, to) in plain(&edges, along.long, scale) {
                sheet.line(Layer::Outline, &along.part(from, to), INK, 1.3, SOLID);
            }
        }
        for edge in edges {
            let part = along.part(scale.length(edge.from), scale.length(edge.to));
            match edge.kind {
                EdgeMark::Open => {}
                EdgeMark::House | EdgeMark::Existing | EdgeMark::Curb => {
                    // Where ties hold both sides together there is no strip.
                    if edge.crossed != Crossed::Ties {
                        strip(sheet, &part, accent);
                    }
                    beyond(sheet, &part, edge.kind, meets(slab, index));
                }
                EdgeMark::Isolated => strip(sheet, &part, accent),
                EdgeMark::Joined => sheet.line(Layer::Joint, &part, SOFT, 0.7, DOTS),
                EdgeMark::Bulkhead => sheet.line(Layer::Joint, &part, INK, 1.0, BULKHEAD),
            }
            let over_strip = edge.kind != EdgeMark::Bulkhead && edge.crossed == Crossed::Dowels;
            pins::draw(sheet, Layer::Strip, &part, edge.crossed, over_strip);
        }
    }
}

/// The strips of a side that keep the slab's own outline.
fn plain(edges: &[&EdgeView], long: f32, scale: Scale) -> Vec<(f32, f32)> {
    let mut gone: Vec<(f32, f32)> = edges
        .iter()
        .filter(|e| matches!(e.kind, EdgeMark::Joined | EdgeMark::Bulkhead))
        .map(|e| (scale.length(e.from), scale.length(e.to)))
        .collect();
    gone.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut kept = Vec::new();
    let mut at = 0.0_f32;
    for (from, to) in gone {
        if at + 0.1 < from {
            kept.push((at, from));
        }
        at = at.max(to);
    }
    if at + 0.1 < long {
        kept.push((at, long));
    }
    kept
}

pub(super) fn strip(sheet: &mut Sheet, part: &[PagePoint], accent: Rgb) {
    sheet.line(Layer::Strip, part, WHITE, 3.2, SOLID);
    sheet.line(Layer::Strip, part, accent, 3.2, STRIP);
}

/// What stands on the far side of a strip.
///
/// `inside` says at which ends another wall stands, so that this one has no face beyond the corner.
fn beyond(sheet: &mut Sheet, part: &[PagePoint], kind: EdgeMark, inside: [bool; 2]) {
    let (Some(&from), Some(&to)) = (part.first(), part.last()) else {
        return;
    };
    let further = if kind == EdgeMark::House { DEPTH } else { 0.0 };
    let depth = if kind == EdgeMark::Curb { 4.5 } else { DEPTH };
    // A wall goes on beyond the ends of the side, the way it came there.
    let mut face = part.to_vec();
    if let [first, second, ..] = part {
        face[0] = beside(*second, *first, further, 0.0);
    }
    if let [.., before, last] = part {
        face[part.len() - 1] = beside(*before, *last, further, 0.0);
    }
    let far = outward(&face, depth);
    let ends = [face[0], face[face.len() - 1]];
    let band: Vec<PagePoint> = face
        .iter()
        .copied()
        .chain(far.iter().rev().copied())
        .collect();
    // Along a curve the room it takes is that of its pieces.
    for (near, far) in part.windows(2).zip(outward(part, depth).windows(2)) {
        let corners = [near[0], near[1], far[0], far[1]];
        sheet.ground.push(Frame::around_all(corners));
    }
    if further != 0.0 {
        for (near, far) in face.windows(2).zip(far.windows(2)) {
            let corners = [near[0], near[1], far[0], far[1]];
            sheet.lines.push(Frame::around_all(corners));
        }
    }
    match kind {
        EdgeMark::House => {
            sheet.draw(Layer::Ground, hatch(&band, 4.0, &[Lean::Rising]));
            let mut seen = part.to_vec();
            seen[0] = if inside[0] { from } else { ends[0] };
            seen[part.len() - 1] = if inside[1] { to } else { ends[1] };
            sheet.line(Layer::Ground, &seen, INK, 1.1, SOLID);
        }
        EdgeMark::Existing => {
            let both = [Lean::Rising, Lean::Falling];
            sheet.draw(Layer::Ground, hatch(&band, 6.0, &both));
        }
        _ => sheet.draw(Layer::Ground, outlined(&band, Some(PALE), 0.5)),
    }
}

/// `on` farther along the way from `from` to `at`, and `out` to the right of it, which is outward on paper.
fn beside(from: PagePoint, at: PagePoint, on: f32, out: f32) -> PagePoint {
    let (dx, dy) = (at.x - from.x, at.y - from.y);
    let long = libm::sqrtf(dx * dx + dy * dy).max(0.001);
    let (ux, uy) = (dx / long, dy / long);
    point(at.x + ux * on - uy * out, at.y + uy * on + ux * out)
}

/// The same line so far outward: at each point square to the way from the one before to the one after.
fn outward(line: &[PagePoint], by: f32) -> Vec<PagePoint> {
    let last = line.len() - 1;
    let out = |i: usize| {
        let (before, after) = (line[i.saturating_sub(1)], line[(i + 1).min(last)]);
        let way = beside(before, after, 0.0, by);
        point(line[i].x + way.x - after.x, line[i].y + way.y - after.y)
    };
    (0..line.len()).map(out).collect()
}

/// Whether the house also stands along the side before and the side after this one.
fn meets(slab: &SlabView, side: usize) -> [bool; 2] {
    let many = slab.outline.sides().len();
    [(side + many - 1) % many, (side + 1) % many].map(|neighbor| {
        let mut edges = slab.edges.iter();
        edges.any(|e| e.side == neighbor && e.kind == EdgeMark::House)
    })
}

#[derive(Clone, Copy)]
pub(super) enum Lean {
    Rising,
    Falling,
}

/// Lines at 45 degrees, `apart` from each other, seen only inside `outline`.
///
/// All hatching of a plan is in step, so two walls that meet show one hatch.
pub(super) fn hatch(outline: &[PagePoint], apart: f32, slopes: &[Lean]) -> Shape {
    let frame = Frame::around_all(outline.iter().copied());
    let step = apart * core::f32::consts::SQRT_2;
    let mut lines = Vec::new();
    for slope in slopes {
        let tall = frame.height();
        let (start, end) = match slope {
            Lean::Rising => (frame.left + frame.top, frame.right + frame.bottom),
            Lean::Falling => (frame.left - frame.bottom, frame.right - frame.top),
        };
        let mut at = libm::floorf(start / step) * step;
        while at <= end {
            // Rising: x + y is constant; falling: x - y is.
            let (top, bottom) = match slope {
                Lean::Rising => (at - frame.top, at - frame.top - tall),
                Lean::Falling => (at + frame.top, at + frame.top + tall),
            };
            let ends = [point(top, frame.top), point(bottom, frame.bottom)];
            lines.push(line(&ends, false));
            at += step;
        }
    }
    let mut path = Path::new(lines, Some(Stroke::solid(INK, 0.5)), None);
    path.within = vec![line(outline, true)];
    Shape::Path(path)
}

/// A side as a line of points that can be cut by length.
struct SideLine {
    points: Vec<PagePoint>,
    long: f32,
}

impl SideLine {
    fn of(side: &Side, slab: &SlabView, scale: Scale) -> Self {
        let chords = slab.outline.chords();
        let start = chords.iter().position(|&p| p == side.from).unwrap_or(0);
        let mut points = vec![scale.place(side.from)];
        for p in chords.iter().cycle().skip(start + 1).take(chords.len()) {
            points.push(scale.place(*p));
            if *p == side.to {
                break;
            }
        }
        let long = points.windows(2).map(|p| distance(p[0], p[1])).sum();
        Self { points, long }
    }

    fn part(&self, from: f32, to: f32) -> Vec<PagePoint> {
        let (from, to) = (from.max(0.0), to.min(self.long));
        let mut part = vec![self.at(from)];
        let mut walked = 0.0;
        for pair in self.points.windows(2) {
            walked += distance(pair[0], pair[1]);
            if from < walked && walked < to {
                part.push(pair[1]);
            }
        }
        part.push(self.at(to));
        part
    }

    fn at(&self, length: f32) -> PagePoint {
        let mut left = length;
        for pair in self.points.windows(2) {
            let long = distance(pair[0], pair[1]);
            if left <= long && 0.0 < long {
                let share = left / long;
                return point(
                    pair[0].x + (pair[1].x - pair[0].x) * share,
                    pair[0].y + (pair[1].y - pair[0].y) * share,
                );
            }
            left -= long;
        }
        self.points.last().copied().unwrap_or(point(0.0, 0.0))
    }
}

fn distance(a: PagePoint, b: PagePoint) -> f32 {
    let (x, y) = (b.x - a.x, b.y - a.y);
    libm::sqrtf(x * x + y * y)
}
