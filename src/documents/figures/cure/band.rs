//! The upper half: grid, band of strength, drops to the bars, and the words around them.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::CureView;
use super::frame::{DAYS, FOOT, Frame, LEFT, RIGHT, TOP, WIDTH, float, waits_for_strength};
use super::pen::{self, HAIRLINE, INK, OUTLINE, RULE, SMALL, WHITE};
use super::words::fill;
use crate::press::drawing::{Anchor, Face, Path, Point, Shape, Words};

const QUARTERS: [Decimal; 4] = [dec!(25), dec!(50), dec!(75), dec!(100)];

/// Lines of the grid, down through the bars, and the words over the 100% line.
pub fn grid(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let hairline = || pen::stroke(RULE, HAIRLINE, &[]);
    let mut shapes = Vec::new();
    let bottom = frame.last_row().top;
    for day in frame.ticks() {
        let x = frame.x(Decimal::from(day));
        shapes.push(pen::line(pen::at(x, TOP), pen::at(x, bottom), hairline()));
    }
    for percent in QUARTERS {
        let y = frame.y(percent);
        shapes.push(pen::line(pen::at(LEFT, y), pen::at(RIGHT, y), hairline()));
    }
    if let Some(words) = ordered(view, frame) {
        shapes.push(Shape::Words(words));
    }
    shapes
}

/// The words over the 100% line, unless the warm curve would run through them.
pub fn ordered(view: &CureView, frame: &Frame) -> Option<Words> {
    let text = fill(view.words.ordered, &[("strength", view.ordered)]);
    let start = LEFT + 4.0;
    let end = start + pen::width(&text, Face::Regular, SMALL) + 4.0;
    // The share of the axis that the words take; the curve only rises.
    let share = (end - LEFT) / (RIGHT - LEFT);
    let clear = view
        .timeline
        .band(frame.until)
        .iter()
        .filter(|moment| float(moment.day) <= share * float(Decimal::from(frame.until)))
        .all(|moment| moment.warm.number() < dec!(99));
    clear.then(|| Words {
        halo: true,
        ..pen::words(text, pen::at(start, frame.y(dec!(100)) - 4.0), SMALL)
    })
}

/// The band with its two edges, and the two ink lines at 0 and 100%.
pub fn band(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let moments = view.timeline.band(frame.until);
    let warm: Vec<Point> = moments
        .iter()
        .map(|m| pen::at(frame.x(m.day), frame.y(m.warm.number())))
        .collect();
    let cool: Vec<Point> = moments
        .iter()
        .map(|m| pen::at(frame.x(m.day), frame.y(m.cool.number())))
        .collect();
    let area: Vec<Point> = warm.iter().chain(cool.iter().rev()).copied().collect();
    let edge = |points: &[Point], dash: &[f32]| {
        Shape::Path(Path {
            steps: pen::through(points, false),
            stroke: Some(pen::stroke(view.accent, 1.6, dash)),
            fill: None,
        })
    };
    let mut shapes = Vec::new();
    if !steady(view) {
        shapes.push(Shape::Path(Path {
            steps: pen::through(&area, true),
            stroke: None,
            fill: Some(pen::pale(view.accent)),
        }));
    }
    for percent in [dec!(0), dec!(100)] {
        let y = frame.y(percent);
        let ink = pen::stroke(INK, 1.0, &[]);
        shapes.push(pen::line(pen::at(LEFT, y), pen::at(RIGHT, y), ink));
    }
    if !steady(view) {
        shapes.push(edge(&cool, &[4.0, 2.4]));
    }
    shapes.push(edge(&warm, &[]));
    shapes
}

/// Whether warm and cool are one temperature, so that there is no band.
pub fn steady(view: &CureView) -> bool {
    view.timeline.conditions.cool == view.timeline.conditions.warm
}

/// Dotted lines from the curves to the bars, and the dots they start from.
pub fn drops(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let mut dots = Vec::new();
    // One line a day, from its highest dot to its lowest bar: two on top of each
    // other would fill each other's gaps.
    let mut lines: BTreeMap<u32, (f32, f32)> = BTreeMap::new();
    for (row, bar) in frame.bars.iter().enumerate() {
        let milestone = bar.milestone;
        if !waits_for_strength(milestone.use_) {
            continue;
        }
        let bottom = Frame::row(row).top;
        let mut drop = |day: u32, percent: Decimal, fill| {
            let center = pen::at(frame.x(Decimal::from(day)), frame.y(percent));
            dots.push(pen::dot(center, fill));
            let reach = lines.entry(day).or_insert((center.y, bottom));
            *reach = (reach.0.min(center.y), reach.1.max(bottom));
        };
        if bar.depends() {
            let there = view.timeline.at(Decimal::from(milestone.warm));
            drop(milestone.warm, there.warm.number(), WHITE);
        }
        let there = view.timeline.at(Decimal::from(milestone.cool));
        drop(milestone.cool, there.cool.number(), INK);
    }
    let dotted = || pen::stroke(INK, OUTLINE, &[1.4, 1.6]);
    let mut shapes: Vec<Shape> = lines
        .into_iter()
        .map(|(day, (top, bottom))| {
            let x = frame.x(Decimal::from(day));
            pen::line(pen::at(x, top), pen::at(x, bottom), dotted())
        })
        .collect();
    shapes.extend(dots);
    shapes
}

/// Numbers of both axes, and the names of the curves at their right end.
pub fn labels(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let mut all = Vec::new();
    let bold = |text: &str, y| Words {
        face: Face::Bold,
        ..pen::words(text, pen::at(0.0, y), SMALL)
    };
    all.push(bold(view.words.strength, TOP + 7.0));
    all.push(bold(view.words.days, DAYS));
    for percent in [dec!(0)].into_iter().chain(QUARTERS) {
        let at = pen::at(LEFT - 6.0, frame.y(percent) + 3.0);
        all.push(Words {
            anchor: Anchor::End,
            ..pen::words(format!("{percent}%"), at, SMALL)
        });
    }
    for day in frame.ticks() {
        let at = pen::at(frame.x(Decimal::from(day)), DAYS);
        all.push(Words {
            anchor: Anchor::Middle,
            halo: true,
            ..pen::words(day.to_string(), at, SMALL)
        });
    }
    all.push(Words {
        anchor: Anchor::End,
        ..pen::words(view.words.second_winter, pen::at(WIDTH, DAYS), SMALL)
    });
    all.extend(ends(view, frame));
    all.into_iter().map(Shape::Words).collect()
}

/// `warm, 80 °F` and `cool, 60 °F`, pushed apart until both can be read.
fn ends(view: &CureView, frame: &Frame) -> Vec<Words> {
    let end = view.timeline.at(Decimal::from(frame.until));
    let conditions = view.timeline.conditions;
    let name = |sentence, degrees: i32, y| {
        let text = fill(sentence, &[("degrees", &degrees.to_string())]);
        pen::words(text, pen::at(RIGHT + 6.0, y), SMALL)
    };
    let (warm, cool) = (
        frame.y(end.warm.number()) + 3.0,
        frame.y(end.cool.number()) + 3.0,
    );
    if steady(view) {
        return vec![name(view.words.steady, conditions.warm, warm)];
    }
    let apart = (11.0 - (cool - warm)).max(0.0) / 2.0;
    let warm = (warm - apart).clamp(TOP + 5.0, FOOT);
    let cool = (cool + apart).max(warm + 11.0);
    vec![
        name(view.words.warm, conditions.warm, warm),
        name(view.words.cool, conditions.cool, cool),
    ]
}
