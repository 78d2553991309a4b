//! The strokes of all figures: lines, areas, hatching, arrows, dots, words.

use crate::press::drawing::{
    Anchor, Face, PagePoint, Path, Rgb, Shape, Stroke, Turn, Words, curve, line, point,
};
use crate::press::frame::Frame;
use crate::press::text;

pub const WHITE: Rgb = Rgb::WHITE;
pub const INK: Rgb = Rgb::INK;
pub const SOFT: Rgb = Rgb::SOFT;
pub const RULE: Rgb = Rgb::RULE;
/// Areas that are not what the figure is about.
pub const PALE: Rgb = Rgb(0xdc, 0xd8, 0xd1);
/// New concrete.
pub const TINT: Rgb = Rgb(0xf3, 0xf0, 0xeb);

pub const SOLID: &[f32] = &[];
pub const HAIRLINE: f32 = 0.4;
pub const OUTLINE: f32 = 0.7;
/// Words in and beside bars.
pub const SMALL: f32 = 8.5;
/// Radius of a dot on a curve.
pub const DOT: f32 = 2.6;

/// The pale version of a colour: 22 parts of it in 100, the rest white.
pub fn pale(color: Rgb) -> Rgb {
    let mix = |part: u8| {
        let mixed = (u16::from(part) * 22 + 255 * 78) / 100;
        u8::try_from(mixed).expect("a mean of two bytes is a byte")
    };
    Rgb(mix(color.0), mix(color.1), mix(color.2))
}

pub fn stroked(points: &[PagePoint], color: Rgb, width: f32, dash: &[f32]) -> Shape {
    Shape::Path(Path::open(points, Stroke::dashed(color, width, dash)))
}

pub fn filled(points: &[PagePoint], fill: Rgb) -> Shape {
    Shape::Path(Path::closed(points, None, Some(fill)))
}

/// In ink all around.
pub fn outlined(points: &[PagePoint], fill: Option<Rgb>, width: f32) -> Shape {
    let stroke = Stroke::solid(INK, width);
    Shape::Path(Path::closed(points, Some(stroke), fill))
}

pub fn boxed(frame: &Frame, fill: Rgb, edge: Rgb) -> Shape {
    let stroke = Stroke::solid(edge, OUTLINE);
    Shape::Path(Path::closed(&frame.corners(), Some(stroke), Some(fill)))
}

/// Pale, with rising lines 4 points apart, and an ink outline.
pub fn hatched(frame: &Frame, color: Rgb) -> Vec<Shape> {
    let height = frame.bottom - frame.top;
    let mut lines = Vec::new();
    let mut x = frame.left - height + 2.0;
    while x < frame.right {
        let ends = [point(x, frame.bottom), point(x + height, frame.top)];
        lines.push(line(&ends, false));
        x += 4.0;
    }
    let mut lines = Path::new(lines, Some(Stroke::solid(color, 0.7)), None);
    lines.within = vec![line(&frame.corners(), true)];
    vec![
        boxed(frame, pale(color), INK),
        Shape::Path(lines),
        outlined(&frame.corners(), None, OUTLINE),
    ]
}

/// A dot on a curve: open for warm, full for cool.
pub fn dot(center: PagePoint, fill: Rgb) -> Shape {
    // Four cubic curves stand for a circle when their handles are 0.5523 of its radius.
    let (r, h) = (DOT, DOT * 0.5523);
    let PagePoint { x, y } = center;
    let quarters = [
        [point(x + r, y + h), point(x + h, y + r), point(x, y + r)],
        [point(x - h, y + r), point(x - r, y + h), point(x - r, y)],
        [point(x - r, y - h), point(x - h, y - r), point(x, y - r)],
        [point(x + h, y - r), point(x + r, y - h), point(x + r, y)],
    ];
    let round = curve(point(x + r, y), &quarters, true);
    let stroke = Some(Stroke::solid(INK, 1.1));
    Shape::Path(Path::new(vec![round], stroke, Some(fill)))
}

/// An arrow with a closed head `head` long, from `tail` to `tip`.
pub fn arrow(tail: PagePoint, tip: PagePoint, color: Rgb, width: f32, head: f32) -> Vec<Shape> {
    let (dx, dy) = (tip.x - tail.x, tip.y - tail.y);
    let long = libm::sqrtf(dx * dx + dy * dy).max(0.001);
    let (ux, uy) = (dx / long, dy / long);
    let neck = point(tip.x - ux * head, tip.y - uy * head);
    let half = head * 0.36;
    let wings = [
        tip,
        point(neck.x - uy * half, neck.y + ux * half),
        point(neck.x + uy * half, neck.y - ux * half),
    ];
    vec![
        stroked(&[tail, neck], color, width, SOLID),
        filled(&wings, color),
    ]
}

/// Plain words in ink, left to right from a baseline point; the rest is said by the caller.
pub fn words(text: impl Into<String>, at: PagePoint, size: f32) -> Words {
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

pub fn anchored(anchor: Anchor, text: impl Into<String>, at: PagePoint, size: f32) -> Words {
    Words {
        anchor,
        ..words(text, at, size)
    }
}

pub fn centered(text: impl Into<String>, at: PagePoint, size: f32) -> Words {
    anchored(Anchor::Middle, text, at, size)
}

pub fn bold(words: Words) -> Words {
    Words {
        face: Face::Bold,
        ..words
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
