//! The key: one line below the bars, with only the signs that were used.

use super::CureView;
use super::band;
use super::frame::{Frame, LEFT, WIDTH, waits_for_strength};
use super::pen::{self, Box4, DOT, INK, SMALL, WHITE};
use super::words::fill;
use crate::press::drawing::{Face, Shape};

/// From one entry to the next, and from a sign to its words.
const GAP: f32 = 18.0;
const SIGN_GAP: f32 = 5.0;

enum Sign {
    Dot(crate::press::drawing::Rgb),
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
pub fn key(view: &CureView, frame: &Frame) -> Vec<Shape> {
    let words = view.words;
    let depends = frame.bars.iter().any(super::bars::Bar::depends);
    let dots = frame
        .bars
        .iter()
        .any(|bar| waits_for_strength(bar.milestone.use_));
    let mut entries: Vec<(Sign, String)> = Vec::new();
    if depends {
        entries.push((Sign::Dot(WHITE), words.key_warm.to_owned()));
        entries.push((Sign::Dot(INK), words.key_cool.to_owned()));
        entries.push((Sign::Hatched, words.key_between.to_owned()));
    } else if dots {
        entries.push((Sign::Dot(INK), words.key_day.to_owned()));
    }
    if band::ordered(view, frame).is_none() {
        let text = fill(words.ordered, &[("strength", view.ordered)]);
        entries.push((Sign::Line, text));
    }
    let length = |entry: &(Sign, String)| {
        entry.0.width() + SIGN_GAP + pen::width(&entry.1, Face::Regular, SMALL)
    };
    let total: f32 = entries.iter().map(|entry| length(entry) + GAP).sum();
    let mut x = if LEFT + total - GAP <= WIDTH {
        LEFT
    } else {
        0.0
    };
    let mut shapes = Vec::new();
    for entry in &entries {
        shapes.extend(sign(&entry.0, x, frame.key(), view));
        let start = x + entry.0.width() + SIGN_GAP;
        let text = pen::words(entry.1.clone(), pen::at(start, frame.key()), SMALL);
        shapes.push(Shape::Words(text));
        x += length(entry) + GAP;
    }
    shapes
}

fn sign(sign: &Sign, x: f32, baseline: f32, view: &CureView) -> Vec<Shape> {
    let middle = baseline - 3.0;
    match sign {
        Sign::Dot(fill) => vec![pen::dot(pen::at(x + DOT, middle), *fill)],
        Sign::Line => {
            let ink = pen::stroke(INK, 1.0, &[]);
            vec![pen::line(
                pen::at(x, middle),
                pen::at(x + 14.0, middle),
                ink,
            )]
        }
        Sign::Hatched => Box4 {
            left: x,
            top: middle - 3.5,
            right: x + 14.0,
            bottom: middle + 3.5,
        }
        .hatched(view.accent),
    }
}
