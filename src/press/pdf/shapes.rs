//! Paths to printpdf's lines and polygons.

use printpdf::{
    Line, LinePoint, Op, PaintMode, Point as Spot, Polygon, PolygonRing, Pt, WindingOrder,
};

use super::pen::Pen;
use crate::press::drawing::{Path, Point, Step};

/// Fills and strokes a path on a page of this height.
pub fn draw(path: &Path, height: f32, pen: &mut Pen, ops: &mut Vec<Op>) {
    let parts = parts(&path.steps, height);
    if parts.is_empty() {
        return;
    }
    if let Some(color) = path.fill {
        pen.fill(color, ops);
    }
    if let Some(stroke) = &path.stroke {
        pen.stroke(stroke, ops);
    }
    match (path.fill.is_some(), path.stroke.is_some()) {
        (true, true) if parts.iter().all(|part| part.is_closed) => {
            ops.push(polygon(parts, PaintMode::FillStroke));
        }
        (true, true) => {
            ops.push(polygon(parts.clone(), PaintMode::Fill));
            ops.extend(parts.into_iter().map(|line| Op::DrawLine { line }));
        }
        (true, false) => ops.push(polygon(parts, PaintMode::Fill)),
        (false, true) => ops.extend(parts.into_iter().map(|line| Op::DrawLine { line })),
        (false, false) => {}
    }
}

/// Lets what follows be seen inside the outline only; `None` when the outline encloses nothing.
pub fn clip(outline: &[Step], height: f32) -> Option<Op> {
    let parts = parts(outline, height);
    (!parts.is_empty()).then(|| polygon(parts, PaintMode::Clip))
}

/// Even-odd, so that a ring inside a ring is a hole whichever way round either runs.
fn polygon(parts: Vec<Line>, mode: PaintMode) -> Op {
    let rings = parts
        .into_iter()
        .map(|part| PolygonRing {
            points: part.points,
        })
        .collect();
    Op::DrawPolygon {
        polygon: Polygon {
            rings,
            mode,
            winding_order: WindingOrder::EvenOdd,
        },
    }
}

/// The separate pieces of a path, in the page's own upward coordinates.
fn parts(steps: &[Step], height: f32) -> Vec<Line> {
    let mut parts: Vec<Line> = Vec::new();
    let mut part = Line::default();
    for step in steps {
        match *step {
            Step::Move(to) => {
                finish(&mut parts, std::mem::take(&mut part));
                part.points.push(corner(to, height));
            }
            Step::Line(to) => part.points.push(corner(to, height)),
            Step::Curve(first, second, to) => {
                part.points.push(control(first, height));
                part.points.push(control(second, height));
                part.points.push(corner(to, height));
            }
            Step::Close => {
                // What follows without a move goes on from where this piece began.
                let start = part.points.first().cloned();
                part.is_closed = true;
                finish(&mut parts, std::mem::take(&mut part));
                part.points.extend(start);
            }
        }
    }
    finish(&mut parts, part);
    parts
}

/// A lone point draws nothing, so it is left out.
fn finish(parts: &mut Vec<Line>, part: Line) {
    if 1 < part.points.len() {
        parts.push(part);
    }
}

fn corner(point: Point, height: f32) -> LinePoint {
    LinePoint {
        p: Spot {
            x: Pt(point.x),
            y: Pt(height - point.y),
        },
        bezier: false,
    }
}

fn control(point: Point, height: f32) -> LinePoint {
    LinePoint {
        bezier: true,
        ..corner(point, height)
    }
}
