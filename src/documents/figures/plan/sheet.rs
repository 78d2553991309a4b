//! The sheet a plan is drawn on: layers of shapes, and what room they take.

use super::widths::frame_of;
use crate::documents::figures::pen::stroked;
use crate::press::drawing::{Drawing, PagePoint, Rgb, Shape, Size, Words};
use crate::press::frame::Frame;

pub(super) const JOINT: &[f32] = &[5.0, 2.6];
pub(super) const SAWN: &[f32] = &[9.0, 1.8];
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

    pub fn line(&mut self, layer: Layer, path: &[PagePoint], color: Rgb, width: f32, dash: &[f32]) {
        self.draw(layer, stroked(path, color, width, dash));
    }

    /// Writes words and keeps their place.
    pub fn write(&mut self, layer: Layer, words: Words) {
        self.marks.push(frame_of(&words).grown(1.0));
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
            Shape::Path(_) | Shape::Picture(_) => None,
        })
    }

    /// The box around everything that takes room.
    pub fn extent(&self) -> Frame {
        let all = [&self.ground, &self.marks, &self.lines];
        all.into_iter()
            .flatten()
            .copied()
            .reduce(|a, b| a.union(&b))
            .unwrap_or(Frame::new(0.0, 0.0, 0.0, 0.0))
    }

    /// Everything at another place.
    pub fn moved(mut self, x: f32, y: f32) -> Self {
        for (_, shape) in &mut self.shapes {
            shape.shift(x, y);
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
