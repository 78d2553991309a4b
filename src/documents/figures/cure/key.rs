//! The key: one line below the bars, with only the signs that were used.

use super::axes::{Axes, LEFT, WIDTH, waits_for_strength};
use super::band;
use super::bars::UseBar;
use super::view::CureView;
use super::words::fill;
use crate::documents::figures::pen::{
    DOT, INK, SMALL, SOLID, WHITE, dot, hatched, stroked, width, words,
};
use crate::press::drawing::{Face, Rgb, Shape, point};
use crate::press::frame::Frame;

/// From one entry to the next, and from a sign to its words.
const GAP: f32 = 18.0;
const SIGN_GAP: f32 = 5.0;

enum Sign {
    Dot(Rgb),
    Hatched,
    Line,
}

impl Sign {
    fn width(&self) -> f32 {
        match self {
            Self::Dot(_) => 2.0 * DOT,
            Self::Hatched | Self::Line => 14.0,
        }
    }
}

/// The signs used in the figure, with their words.
pub fn key(view: &CureView, axes: &Axes, bars: &[UseBar]) -> Vec<Shape> {
    let say = view.words;
    let depends = bars.iter().any(UseBar::depends);
    let dots = bars
        .iter()
        .any(|bar| waits_for_strength(bar.milestone.use_));
    let mut entries: Vec<(Sign, String)> = Vec::new();
    if depends {
        entries.push((Sign::Dot(WHITE), say.key_warm.to_owned()));
        entries.push((Sign::Dot(INK), say.key_cool.to_owned()));
        entries.push((Sign::Hatched, say.key_between.to_owned()));
    } else if dots {
        entries.push((Sign::Dot(INK), say.key_day.to_owned()));
    }
    if band::ordered(view, axes).is_none() {
        let text = fill(say.ordered, &[("strength", view.ordered)]);
        entries.push((Sign::Line, text));
    }
    let length =
        |entry: &(Sign, String)| entry.0.width() + SIGN_GAP + width(&entry.1, Face::Regular, SMALL);
    let total: f32 = entries.iter().map(|entry| length(entry) + GAP).sum();
    let mut x = if LEFT + total - GAP <= WIDTH {
        LEFT
    } else {
        0.0
    };
    let mut shapes = Vec::new();
    for entry in &entries {
        shapes.extend(sign(&entry.0, x, axes.key(), view));
        let start = x + entry.0.width() + SIGN_GAP;
        let text = words(entry.1.clone(), point(start, axes.key()), SMALL);
        shapes.push(Shape::Words(text));
        x += length(entry) + GAP;
    }
    shapes
}

fn sign(sign: &Sign, x: f32, baseline: f32, view: &CureView) -> Vec<Shape> {
    let middle = baseline - 3.0;
    match sign {
        Sign::Dot(fill) => vec![dot(point(x + DOT, middle), *fill)],
        Sign::Line => {
            let ends = [point(x, middle), point(x + 14.0, middle)];
            vec![stroked(&ends, INK, 1.0, SOLID)]
        }
        Sign::Hatched => {
            let sample = Frame::new(x, middle - 3.5, x + 14.0, middle + 3.5);
            hatched(&sample, view.accent)
        }
    }
}
