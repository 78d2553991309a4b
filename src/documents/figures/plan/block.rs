//! A name and its note as one block of words.

use super::sheet::{Layer, Sheet};
use super::view::SlabView;
use super::widths::{frame_of, width_of};
use crate::documents::figures::pen::{centered, filled};
use crate::press::drawing::{Face, PagePoint, Rgb, Words, point};
use crate::press::frame::Frame;

/// A name and its note, one above the other.
#[derive(Clone)]
pub(super) struct Block {
    lines: Vec<(String, Face, f32)>,
    pub wide: f32,
    pub tall: f32,
}

impl Block {
    pub fn of(slab: &SlabView, name: f32, note: f32) -> Self {
        let mut lines = vec![(slab.name.clone(), Face::Bold, name)];
        if !slab.note.is_empty() {
            lines.push((slab.note.clone(), Face::Regular, note));
        }
        Self::sized(lines)
    }

    fn sized(lines: Vec<(String, Face, f32)>) -> Self {
        let wide = lines
            .iter()
            .map(|(text, face, size)| width_of(text, *face, *size))
            .fold(0.0, f32::max);
        let tall = lines.iter().map(|(_, _, size)| size * 1.2).sum();
        Self { lines, wide, tall }
    }

    pub fn name_only(&self) -> Self {
        Self::sized(self.lines[..1].to_vec())
    }

    pub fn frame(&self, middle: PagePoint) -> Frame {
        Frame::at(
            middle.x - self.wide / 2.0,
            middle.y - self.tall / 2.0,
            self.wide,
            self.tall,
        )
    }

    /// Half way from the middle of its panel toward `center`, where a round slab is wider.
    pub fn nudged(&self, home: &Frame, center: PagePoint) -> PagePoint {
        let middle = home.middle();
        let toward = |from: f32, to: f32, slack: f32| {
            let slack = slack.max(0.0);
            from + ((to - from) / 2.0).clamp(-slack, slack)
        };
        let (wide, tall) = (
            home.width() - self.wide - 6.5,
            home.height() - self.tall - 6.5,
        );
        point(
            toward(middle.x, center.x, wide / 2.0),
            toward(middle.y, center.y, tall / 2.0),
        )
    }

    /// `ground` is painted behind, so that a joint does not run through the words.
    pub fn write(self, sheet: &mut Sheet, middle: PagePoint, ground: Option<Rgb>) {
        let frame = self.frame(middle);
        if let Some(color) = ground {
            let behind = frame.grown(1.0).corners();
            sheet.draw(Layer::Strip, filled(&behind, color));
        }
        let mut baseline = frame.top;
        for (text, face, size) in self.lines {
            baseline += size * 1.2;
            let at = point(middle.x, baseline - size * 0.26);
            let line = Words {
                face,
                ..centered(text, at, size)
            };
            sheet.write(Layer::Name, line);
        }
    }

    /// Whether the name already stands on its slab.
    pub fn is_written(&self, sheet: &Sheet, home: &Frame) -> bool {
        sheet
            .names()
            .any(|words| words.text == self.lines[0].0 && home.contains(&frame_of(words)))
    }
}
