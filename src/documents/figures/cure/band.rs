//! The upper half: grid, band of strength, drops to the bars, and the words around them.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::axes::{Axes, DAYS, FOOT, LEFT, RIGHT, TOP, WIDTH, float, waits_for_strength};
use super::bars::UseBar;
use super::view::CureView;
use super::words::fill;
use crate::documents::figures::pen::{
    HAIRLINE, INK, OUTLINE, RULE, SMALL, SOLID, WHITE, anchored, bold, centered, dot, filled, pale,
    stroked, width, words,
};
use crate::press::drawing::{Anchor, Face, PagePoint, Shape, Words, point};
use crate::values::Percent;

const QUARTERS: [Decimal; 4] = [dec!(25), dec!(50), dec!(75), dec!(100)];

/// Lines of the grid, down through the bars, and the words over the 100% line.
pub fn grid(view: &CureView, axes: &Axes) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let bottom = axes.last_row().top;
    for day in axes.ticks() {
        let x = axes.x(Decimal::from(day));
        shapes.push(stroked(
            &[point(x, TOP), point(x, bottom)],
            RULE,
            HAIRLINE,
            SOLID,
        ));
    }
    for percent in QUARTERS {
        let y = axes.y(percent);
        shapes.push(stroked(
            &[point(LEFT, y), point(RIGHT, y)],
            RULE,
            HAIRLINE,
            SOLID,
        ));
    }
    if let Some(words) = ordered(view, axes) {
        shapes.push(Shape::Words(words));
    }
    shapes
}

/// The words over the 100% line, unless the warm curve would run through them.
pub fn ordered(view: &CureView, axes: &Axes) -> Option<Words> {
    let text = fill(view.words.ordered, &[("strength", view.ordered)]);
    let start = LEFT + 4.0;
    let end = start + width(&text, Face::Regular, SMALL) + 4.0;
    // The share of the axis that the words take; the curve only rises.
    let share = (end - LEFT) / (RIGHT - LEFT);
    let clear = view
        .timeline
        .band(axes.until)
        .iter()
        .filter(|moment| float(moment.day) <= share * float(Decimal::from(axes.until)))
        .all(|moment| moment.warm.number() < dec!(99));
    clear.then(|| Words {
        halo: true,
        ..words(text, point(start, axes.y(dec!(100)) - 4.0), SMALL)
    })
}

/// The band with its two edges, and the two ink lines at 0 and 100%.
pub fn band(view: &CureView, axes: &Axes) -> Vec<Shape> {
    let moments = view.timeline.band(axes.until);
    let at = |day, percent: Percent| point(axes.x(day), axes.y(percent.number()));
    let warm: Vec<PagePoint> = moments.iter().map(|m| at(m.day, m.warm)).collect();
    let cool: Vec<PagePoint> = moments.iter().map(|m| at(m.day, m.cool)).collect();
    let area: Vec<PagePoint> = warm.iter().chain(cool.iter().rev()).copied().collect();
    let edge = |points: &[PagePoint], dash: &[f32]| stroked(points, view.accent, 1.6, dash);
    let mut shapes = Vec::new();
    if !steady(view) {
        shapes.push(filled(&area, pale(view.accent)));
    }
    for percent in [dec!(0), dec!(100)] {
        let y = axes.y(percent);
        shapes.push(stroked(&[point(LEFT, y), point(RIGHT, y)], INK, 1.0, SOLID));
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
pub fn drops(view: &CureView, axes: &Axes, bars: &[UseBar]) -> Vec<Shape> {
    let mut dots = Vec::new();
    // One line a day, from its highest dot to its lowest bar: two on top of each
    // other would fill each other's gaps.
    let mut lines: BTreeMap<u32, (f32, f32)> = BTreeMap::new();
    for (row, bar) in bars.iter().enumerate() {
        let milestone = bar.milestone;
        if !waits_for_strength(milestone.use_) {
            continue;
        }
        let bottom = Axes::row(row).top;
        let mut drop = |day: u32, percent: Decimal, fill| {
            let center = point(axes.x(Decimal::from(day)), axes.y(percent));
            dots.push(dot(center, fill));
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
    let mut shapes: Vec<Shape> = lines
        .into_iter()
        .map(|(day, (top, bottom))| {
            let x = axes.x(Decimal::from(day));
            stroked(
                &[point(x, top), point(x, bottom)],
                INK,
                OUTLINE,
                &[1.4, 1.6],
            )
        })
        .collect();
    shapes.extend(dots);
    shapes
}

/// Numbers of both axes, and the names of the curves at their right end.
pub fn labels(view: &CureView, axes: &Axes) -> Vec<Shape> {
    let mut all = Vec::new();
    let axis = |text: &str, y| bold(words(text, point(0.0, y), SMALL));
    all.push(axis(view.words.strength, TOP + 7.0));
    all.push(axis(view.words.days, DAYS));
    let end = |text: String, at| anchored(Anchor::End, text, at, SMALL);
    for percent in [dec!(0)].into_iter().chain(QUARTERS) {
        let at = point(LEFT - 6.0, axes.y(percent) + 3.0);
        all.push(end(format!("{percent}%"), at));
    }
    for day in axes.ticks() {
        let at = point(axes.x(Decimal::from(day)), DAYS);
        all.push(Words {
            halo: true,
            ..centered(day.to_string(), at, SMALL)
        });
    }
    if view.deicer {
        all.push(end(view.words.second_winter.to_owned(), point(WIDTH, DAYS)));
    }
    all.extend(ends(view, axes));
    all.into_iter().map(Shape::Words).collect()
}

/// `warm, 80 °F` and `cool, 60 °F`, pushed apart until both can be read.
fn ends(view: &CureView, axes: &Axes) -> Vec<Words> {
    let end = view.timeline.at(Decimal::from(axes.until));
    let conditions = view.timeline.conditions;
    let name = |sentence, degrees: i32, y| {
        let text = fill(sentence, &[("degrees", &degrees.to_string())]);
        words(text, point(RIGHT + 6.0, y), SMALL)
    };
    let (warm, cool) = (
        axes.y(end.warm.number()) + 3.0,
        axes.y(end.cool.number()) + 3.0,
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
