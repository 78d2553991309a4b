//! The sheet a plan is drawn on: layers of shapes, and what room they take.

use super::frame::Frame;
use crate::press::drawing::{
    Anchor, Drawing, Face, Path, Point, Rgb, Shape, Size, Step, Stroke, Turn, Words,
};

pub(super) const INK: Rgb = Rgb(0x1f, 0x1d, 0x1a);
pub(super) const SOFT: Rgb = Rgb(0x5b, 0x57, 0x51);
pub(super) const RULE: Rgb = Rgb(0xa9, 0xa3, 0x9a);
pub(super) const PALE: Rgb = Rgb(0xdc, 0xd8, 0xd1);
pub(super) const TINT: Rgb = Rgb(0xf3, 0xf0, 0xeb);
pub(super) const WHITE: Rgb = Rgb(255, 255, 255);

pub(super) const SOLID: &[f32] = &[];
pub(super) const JOINT: &[f32] = &[5.0, 2.6];
pub(super) const STRIP: &[f32] = &[2.4, 2.0];
pub(super) const BULKHEAD: &[f32] = &[6.0, 2.0, 1.0, 2.0];
pub(super) const DOTS: &[f32] = &[1.0, 2.0];

/// What is drawn over what, lowest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Layer {
    Ground,
    Fill,
    Outline,
    Joint,
    Step,
    Strip,
    Fall,
    Name,
    Dimension,
    Key,
}

#[derive(Default)]
pub(super) struct Sheet {
    shapes: Vec<(Layer, Shape)>,
    /// Slabs and walls, as boxes.
    pub ground: Vec<Frame>,
    /// Words and steps: nothing is written over these.
    pub marks: Vec<Frame>,
    /// Dimension and extension lines: words keep clear, lines may cross.
    pub lines: Vec<Frame>,
    /// Joints: words may stand over these, but rather not.
    pub joints: Vec<Frame>,
}

impl Sheet {
    pub fn draw(&mut self, layer: Layer, shape: Shape) {
        self.shapes.push((layer, shape));
    }

    pub fn line(&mut self, layer: Layer, points: &[Point], color: Rgb, width: f32, dash: &[f32]) {
        self.draw(layer, stroked(points, color, width, dash));
    }

    /// Writes words and keeps their place.
    pub fn write(&mut self, layer: Layer, words: Words) {
        self.marks.push(Frame::of(&words).grown(1.0));
        self.draw(layer, Shape::Words(words));
    }

    /// Whether anything stands on this layer.
    pub fn has(&self, layer: Layer) -> bool {
        self.shapes.iter().any(|(on, _)| *on == layer)
    }

    /// All words written so far.
    pub fn names(&self) -> impl Iterator<Item = &Words> {
        self.shapes.iter().filter_map(|(_, shape)| match shape {
            Shape::Words(words) => Some(words),
            Shape::Path(_) | Shape::Clipped { .. } | Shape::Picture { .. } => None,
        })
    }

    /// The box around everything that takes room.
    pub fn extent(&self) -> Frame {
        let all = [&self.ground, &self.marks, &self.lines];
        all.into_iter()
            .flatten()
            .copied()
            .reduce(|a, b| a.union(&b))
            .unwrap_or(Frame::at(0.0, 0.0, 0.0, 0.0))
    }

    /// Everything at another place.
    pub fn moved(mut self, x: f32, y: f32) -> Self {
        for (_, shape) in &mut self.shapes {
            shift(shape, x, y);
        }
        for frames in [&mut self.ground, &mut self.marks, &mut self.lines] {
            for frame in frames {
                *frame = frame.moved(x, y);
            }
        }
        self
    }

    /// Whether a block may stand here.
    pub fn is_free(&self, frame: &Frame) -> bool {
        let all = [&self.ground, &self.marks, &self.lines];
        !all.into_iter().any(|frames| frame.overlaps_any(frames))
    }

    pub fn finished(mut self, size: Size, alternative: String) -> Drawing {
        self.shapes.sort_by_key(|(layer, _)| *layer);
        Drawing {
            size,
            shapes: self.shapes.into_iter().map(|(_, shape)| shape).collect(),
            alternative,
        }
    }
}

pub(super) const fn point(x: f32, y: f32) -> Point {
    Point { x, y }
}

pub(super) fn stroked(points: &[Point], color: Rgb, width: f32, dash: &[f32]) -> Shape {
    Shape::Path(Path {
        steps: open(points),
        stroke: Some(Stroke {
            color,
            width,
            dash: dash.to_vec(),
        }),
        fill: None,
    })
}

pub(super) fn filled(points: &[Point], fill: Rgb) -> Shape {
    Shape::Path(Path {
        steps: closed(points),
        stroke: None,
        fill: Some(fill),
    })
}

pub(super) fn outlined(points: &[Point], fill: Option<Rgb>, width: f32) -> Shape {
    Shape::Path(Path {
        steps: closed(points),
        stroke: Some(Stroke {
            color: INK,
            width,
            dash: Vec::new(),
        }),
        fill,
    })
}

pub(super) fn corners(frame: &Frame) -> [Point; 4] {
    [
        point(frame.left, frame.top),
        point(frame.right, frame.top),
        point(frame.right, frame.bottom),
        point(frame.left, frame.bottom),
    ]
}

fn open(points: &[Point]) -> Vec<Step> {
    let step = |(i, &p): (usize, &Point)| if i == 0 { Step::Move(p) } else { Step::Line(p) };
    points.iter().enumerate().map(step).collect()
}

pub(super) fn closed(points: &[Point]) -> Vec<Step> {
    let mut steps = open(points);
    steps.push(Step::Close);
    steps
}

/// Plain words left to right, starting at a baseline point.
pub(super) fn words(text: impl Into<String>, at: Point, size: f32) -> Words {
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

pub(super) fn centered(text: impl Into<String>, at: Point, size: f32) -> Words {
    Words {
        anchor: Anchor::Middle,
        ..words(text, at, size)
    }
}

/// An arrow with a closed head `head` long, from `tail` to `tip`.
pub(super) fn arrow(tail: Point, tip: Point, color: Rgb, width: f32, head: f32) -> Vec<Shape> {
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

fn shift(shape: &mut Shape, x: f32, y: f32) {
    match shape {
        Shape::Path(path) => shift_steps(&mut path.steps, x, y),
        Shape::Words(words) => shift_point(&mut words.at, x, y),
        Shape::Picture { at, .. } => shift_point(at, x, y),
        Shape::Clipped { outline, shapes } => {
            shift_steps(outline, x, y);
            for shape in shapes {
                shift(shape, x, y);
            }
        }
    }
}

fn shift_steps(steps: &mut [Step], x: f32, y: f32) {
    for step in steps {
        match step {
            Step::Move(p) | Step::Line(p) => shift_point(p, x, y),
            Step::Curve(first, second, end) => {
                for p in [first, second, end] {
                    shift_point(p, x, y);
                }
            }
            Step::Close => {}
        }
    }
}

fn shift_point(p: &mut Point, x: f32, y: f32) {
    p.x += x;
    p.y += y;
}
