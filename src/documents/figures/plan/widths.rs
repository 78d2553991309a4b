//! How much room words take, near enough to keep them apart.

use crate::press::drawing::{Anchor, Face, Turn, Words};
use crate::press::frame::Frame;

/// Around a line of words, by approximate widths.
pub(super) fn frame_of(words: &Words) -> Frame {
    let width = width_of(&words.text, words.face, words.size);
    let (up, down) = (words.size * 0.76, words.size * 0.22);
    let back = match words.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => width / 2.0,
        Anchor::End => width,
    };
    let at = words.at;
    match words.turn {
        Turn::None => Frame::at(at.x - back, at.y - up, width, up + down),
        Turn::Up => Frame::at(at.x - up, at.y + back - width, up + down, width),
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
    use crate::documents::figures::pen::centered;
    use crate::press::drawing::point;

    #[test]
    fn widths_cover_what_the_face_needs() {
        // Advances read from the font files by hand: "22′-0″", "Patio".
        let needs = |units: u32| f32::from(u16::try_from(units).unwrap()) / 100.0;
        assert!(needs(600 * 3 + 242 + 399 + 419) <= width_of("22′-0″", Face::Regular, 10.0));
        assert!(needs(656 + 569 + 383 + 286 + 564) <= width_of("Patio", Face::Bold, 10.0));
    }

    #[test]
    fn upward_words_stand_left_of_their_baseline() {
        let mut words = centered("1234", point(100.0, 50.0), 10.0);
        words.turn = Turn::Up;
        let frame = frame_of(&words);
        assert!((frame.top - 38.0).abs() < 0.01 && (frame.bottom - 62.0).abs() < 0.01);
        assert!(frame.left < 93.0 && 100.0 < frame.right);
    }
}
