//! The few strokes of the cure figure: lines, boxes, dots, hatching, words.

use crate::press::drawing::{Anchor, Face, Path, Point, Rgb, Shape, Step, Stroke, Turn, Words};
use crate::press::text;

pub const INK: Rgb = Rgb(0x1f, 0x1d, 0x1a);
pub const RULE: Rgb = Rgb(0xa9, 0xa3, 0x9a);
pub const WHITE: Rgb = Rgb(0xff, 0xff, 0xff);

pub const HAIRLINE: f32 = 0.4;
pub const OUTLINE: f32 = 0.7;
/// Words in and beside the bars.
pub const SMALL: f32 = 8.5;
/// Names of the uses.
pub const NAME: f32 = 9.5;
/// Radius of a dot on a curve.
pub const DOT: f32 = 2.6;

/// The pale version of a colour for the band: 22 parts of it in 100, the rest white.
pub fn pale(color: Rgb) -> Rgb {
    let mix = |part: u8| {
        let mixed = (u16::from(part) * 22 + 255 * 78) / 100;
        u8::try_from(mixed).expect("a mean of two bytes is a byte")
    };
    Rgb(mix(color.0), mix(color.1), mix(color.2))
}

pub const fn at(x: f32, y: f32) -> Point {
    Point { x, y }
}

pub fn stroke(color: Rgb, width: f32, dash: &[f32]) -> Stroke {
    Stroke {
        color,
        width,
        dash: dash.to_vec(),
    }
}

pub fn line(from: Point, to: Point, stroke: Stroke) -> Shape {
    Shape::Path(Path {
        steps: vec![Step::Move(from), Step::Line(to)],
        stroke: Some(stroke),
        fill: None,
    })
}

/// An open line through points, or a closed area.
pub fn through(points: &[Point], closed: bool) -> Vec<Step> {
    let mut steps: Vec<Step> = points.iter().copied().map(Step::Line).collect();
    if let Some(first) = points.first() {
        steps[0] = Step::Move(*first);
    }
    if closed {
        steps.push(Step::Close);
    }
    steps
}

/// A rectangle by its left, top, right and bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Box4 {
    pub left: f32,
    pub top: f32,
    pub right: f32,
    pub bottom: f32,
}

impl Box4 {
    pub fn width(self) -> f32 {
        self.right - self.left
    }

    fn steps(self) -> Vec<Step> {
        let corners = [
            at(self.left, self.top),
            at(self.right, self.top),
            at(self.right, self.bottom),
            at(self.left, self.bottom),
        ];
        through(&corners, true)
    }

    pub fn shape(self, fill: Rgb, edge: Rgb) -> Shape {
        Shape::Path(Path {
            steps: self.steps(),
            stroke: Some(stroke(edge, OUTLINE, &[])),
            fill: Some(fill),
        })
    }

    /// Pale, with rising lines 4 points apart, and an ink outline.
    pub fn hatched(self, color: Rgb) -> Vec<Shape> {
        let height = self.bottom - self.top;
        let mut lines = Vec::new();
        let mut x = self.left - height + 2.0;
        while x < self.right {
            let (foot, head) = (at(x, self.bottom), at(x + height, self.top));
            lines.push(line(foot, head, stroke(color, 0.7, &[])));
            x += 4.0;
        }
        vec![
            self.shape(pale(color), INK),
            Shape::Clipped {
                outline: self.steps(),
                shapes: lines,
            },
            Shape::Path(Path {
                steps: self.steps(),
                stroke: Some(stroke(INK, OUTLINE, &[])),
                fill: None,
            }),
        ]
    }
}

/// A dot on a curve: open for warm, full for cool.
pub fn dot(center: Point, fill: Rgb) -> Shape {
    // Four cubic curves stand for a circle when their handles are 0.5523 of its radius.
    let (r, h) = (DOT, DOT * 0.5523);
    let Point { x, y } = center;
    let steps = vec![
        Step::Move(at(x + r, y)),
        Step::Curve(at(x + r, y + h), at(x + h, y + r), at(x, y + r)),
        Step::Curve(at(x - h, y + r), at(x - r, y + h), at(x - r, y)),
        Step::Curve(at(x - r, y - h), at(x - h, y - r), at(x, y - r)),
        Step::Curve(at(x + h, y - r), at(x + r, y - h), at(x + r, y)),
        Step::Close,
    ];
    Shape::Path(Path {
        steps,
        stroke: Some(stroke(INK, 1.1, &[])),
        fill: Some(fill),
    })
}

/// Words in ink, regular, from the left, without a halo; the rest is said by the caller.
pub fn words(text: impl Into<String>, at: Point, size: f32) -> Words {
    Words {
        text: text.into(),
        at,
        anchor: Anchor::Start,
        face: Face::Regular,
        size,
        color: INK,
        halo: false,
        turn: Turn::None,
    }
}

/// Width of words in points, as the page will set them.
///
/// A sign the face cannot show counts half its size; the page itself refuses it.
pub fn width(text: &str, face: Face, size: f32) -> f32 {
    text::shape(face, text, 0).map_or_else(
        |_| text.chars().map(|_| size * 0.5).sum(),
        |glyphs| text::width(&glyphs, size),
    )
}
