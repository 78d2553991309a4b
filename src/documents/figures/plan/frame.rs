//! Boxes around what is drawn, so that nothing is written over anything else.

use crate::press::drawing::{Anchor, Face, Point, Turn, Words};

/// A box in points, y downward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Frame {
    pub left: f32,
    pub top: f32,
    pub right: f32,
    pub bottom: f32,
}

impl Frame {
    pub fn at(left: f32, top: f32, width: f32, height: f32) -> Self {
        Self {
            left,
            top,
            right: left + width,
            bottom: top + height,
        }
    }

    /// Around two points, in any order.
    pub fn around(a: Point, b: Point) -> Self {
        Self {
            left: a.x.min(b.x),
            top: a.y.min(b.y),
            right: a.x.max(b.x),
            bottom: a.y.max(b.y),
        }
    }

    pub fn width(&self) -> f32 {
        self.right - self.left
    }

    pub fn height(&self) -> f32 {
        self.bottom - self.top
    }

    pub fn middle(&self) -> Point {
        Point {
            x: f32::midpoint(self.left, self.right),
            y: f32::midpoint(self.top, self.bottom),
        }
    }

    pub fn grown(&self, by: f32) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    pub fn moved(&self, x: f32, y: f32) -> Self {
        Self::at(self.left + x, self.top + y, self.width(), self.height())
    }

    pub fn union(&self, other: &Self) -> Self {
        Self {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }

    /// Touching is not overlapping.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// How far apart two boxes are along x or y, whichever is more; zero when they overlap.
    pub fn gap(&self, other: &Self) -> f32 {
        let x = (other.left - self.right).max(self.left - other.right);
        let y = (other.top - self.bottom).max(self.top - other.bottom);
        x.max(y).max(0.0)
    }

    pub fn overlaps_any(&self, others: &[Self]) -> bool {
        others.iter().any(|other| self.overlaps(other))
    }

    pub fn contains(&self, other: &Self) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }

    /// Around a line of words, by approximate widths.
    pub fn of(words: &Words) -> Self {
        let width = width_of(&words.text, words.face, words.size);
        let (up, down) = (words.size * 0.76, words.size * 0.22);
        let back = match words.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        let at = words.at;
        match words.turn {
            Turn::None => Self::at(at.x - back, at.y - up, width, up + down),
            Turn::Up => Self::at(at.x - up, at.y + back - width, up + down, width),
        }
    }
}

/// Width in points; a little over what IBM Plex Sans needs, kerning left out.
pub(super) fn width_of(text: &str, face: Face, size: f32) -> f32 {
    let units: u32 = text.chars().map(|c| advance(c, face)).sum();
    // Units are thousandths of the size; sums stay far below what f32 holds exactly.
    #[expect(clippy::cast_precision_loss, reason = "a line of words is short")]
    let units = units as f32;
    units * size / 1000.0
}

fn advance(c: char, face: Face) -> u32 {
    let bold = u32::from(face == Face::Bold);
    let regular = match c {
        ' ' | '\u{a0}' => 236,
        '.' | ',' | '\'' | '\u{2032}' => 272,
        'i' | 'j' | 'l' | '|' | ':' | ';' | '!' => 292,
        'f' | 't' | 'r' | '(' | ')' | '-' | '/' => 385,
        '\u{2033}' | '"' => 420,
        'm' | 'w' | 'M' | 'W' | '@' | '½' | '¼' | '¾' | '⅛' | '⅜' | '⅝' | '⅞' => 900,
        '%' => 930,
        'I' => 410,
        'A'..='Z' | '&' | '#' => 715,
        _ => 600,
    };
    regular + 30 * bold
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_cover_what_the_face_needs() {
        // Advances read from the font files by hand: "22′-0″", "Patio".
        let needs = |units: u32| f32::from(u16::try_from(units).unwrap()) / 100.0;
        assert!(needs(600 * 3 + 242 + 399 + 419) <= width_of("22′-0″", Face::Regular, 10.0));
        assert!(needs(656 + 569 + 383 + 286 + 564) <= width_of("Patio", Face::Bold, 10.0));
    }

    #[test]
    fn upward_words_stand_left_of_their_baseline() {
        let words = Words {
            text: "1234".into(),
            at: Point { x: 100.0, y: 50.0 },
            anchor: Anchor::Middle,
            face: Face::Regular,
            size: 10.0,
            color: crate::press::drawing::Rgb(0, 0, 0),
            halo: true,
            turn: Turn::Up,
        };
        let frame = Frame::of(&words);
        assert!((frame.top - 38.0).abs() < 0.01 && (frame.bottom - 62.0).abs() < 0.01);
        assert!(frame.left < 93.0 && 100.0 < frame.right);
    }
}
