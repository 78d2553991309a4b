//! Moving marks, and how far they reach.

use crate::press::drawing::{Path, Point, Rgb, Step, Stroke};
use crate::press::page::{Ink, Mark, Owner, Run};
use crate::press::text;

fn moved(point: Point, by: Point) -> Point {
    Point {
        x: point.x + by.x,
        y: point.y + by.y,
    }
}

pub(super) fn move_steps(steps: &mut [Step], by: Point) {
    for step in steps {
        *step = match *step {
            Step::Move(to) => Step::Move(moved(to, by)),
            Step::Line(to) => Step::Line(moved(to, by)),
            Step::Curve(a, b, to) => Step::Curve(moved(a, by), moved(b, by), moved(to, by)),
            Step::Close => Step::Close,
        };
    }
}

pub(super) fn move_ink(ink: &mut Ink, by: Point) {
    match ink {
        Ink::Path(path) => move_steps(&mut path.steps, by),
        Ink::Glyphs(run) => run.at = moved(run.at, by),
        Ink::Clipped { outline, inks } => {
            move_steps(outline, by);
            for ink in inks {
                move_ink(ink, by);
            }
        }
        Ink::Picture { at, .. } => *at = moved(*at, by),
    }
}

/// A straight line.
pub(super) fn rule(from: Point, to: Point, width: f32, color: Rgb, dash: &[f32]) -> Ink {
    Ink::Path(Path {
        steps: vec![Step::Move(from), Step::Line(to)],
        stroke: Some(Stroke {
            color,
            width,
            dash: dash.to_vec(),
        }),
        fill: None,
    })
}

/// The outline of an upright rectangle.
pub(super) fn rectangle(at: Point, width: f32, height: f32) -> Vec<Step> {
    vec![
        Step::Move(at),
        Step::Line(moved(at, Point { x: width, y: 0.0 })),
        Step::Line(moved(
            at,
            Point {
                x: width,
                y: height,
            },
        )),
        Step::Line(moved(at, Point { x: 0.0, y: height })),
        Step::Close,
    ]
}

pub(super) fn layout(ink: Ink) -> Mark {
    Mark {
        owner: Owner::Layout,
        ink,
    }
}

/// Length of a run along its baseline, in points.
pub(super) fn run_length(run: &Run) -> f32 {
    text::width(&run.glyphs, run.size)
}

/// The leftmost and rightmost ends of the words among these marks.
pub(super) fn words_reach(marks: &[Mark]) -> Option<(f32, f32)> {
    marks
        .iter()
        .filter_map(|mark| match &mark.ink {
            Ink::Glyphs(run) => Some((run.at.x, run.at.x + run_length(run))),
            Ink::Path(_) | Ink::Clipped { .. } | Ink::Picture { .. } => None,
        })
        .reduce(|all, one| (all.0.min(one.0), all.1.max(one.1)))
}
