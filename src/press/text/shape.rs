//! Shaping: characters to glyphs with kerning, in one face.

use super::face::{DIRECTION, SCRIPT, opened, unjoined};
use crate::press::drawing::Face;
use crate::press::page::Glyph;
use harfrust::{ShapeOptions, UnicodeBuffer};
use std::collections::BTreeSet;

/// A character the bundled faces cannot show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unshapable {
    pub character: char,
    pub face: Face,
}

impl std::fmt::Display for Unshapable {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "the typeface has no sign for `{}` (U+{:04X})",
            self.character, self.character as u32
        )
    }
}

impl std::error::Error for Unshapable {}

/// Glyphs of a text in reading order.
///
/// `tracking` (thousandths of the size) is added to every glyph's advance.
/// A character without a glyph, and a mark that would have to be moved over
/// another glyph, are refused: they would print as an empty box or in the wrong place.
pub fn shape(face: Face, text: &str, tracking: i32) -> Result<Vec<Glyph>, Unshapable> {
    if text.is_empty() {
        return Ok(Vec::new());
    }
    let opened = opened(face);
    let shaper = opened.tables.shaper(&opened.font).build();
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.set_direction(DIRECTION);
    buffer.set_script(SCRIPT);
    let unjoined = unjoined();
    let options = if tracking == 0 {
        ShapeOptions::new().plan(Some(&opened.joined))
    } else {
        ShapeOptions::new()
            .plan(Some(&opened.apart))
            .features(&unjoined)
    };
    let shaped = shaper.shape(buffer, options);

    let infos = shaped.glyph_infos();
    let positions = shaped.glyph_positions();
    let mut glyphs: Vec<Glyph> = Vec::with_capacity(infos.len());
    let mut before = None;
    for (at, (info, position)) in infos.iter().zip(positions).enumerate() {
        let start = info.cluster as usize;
        let end = infos[at..]
            .iter()
            .map(|next| next.cluster as usize)
            .find(|&next| start < next)
            .unwrap_or(text.len());
        // Clusters that run backward come from scripts written right to left.
        let backward = before.is_some_and(|before| start < before);
        let id = u16::try_from(info.glyph_id).unwrap_or(0);
        if id == 0 || backward || position.x_offset != 0 || position.y_offset != 0 {
            return Err(Unshapable {
                character: text[start..]
                    .chars()
                    .next()
                    .unwrap_or(char::REPLACEMENT_CHARACTER),
                face,
            });
        }
        glyphs.push(Glyph {
            id,
            advance: position.x_advance + tracking,
            text: if before == Some(start) {
                String::new()
            } else {
                text[start..end].to_owned()
            },
        });
        before = Some(start);
    }
    Ok(glyphs)
}

/// Width of shaped glyphs in points.
#[allow(
    clippy::cast_precision_loss,
    reason = "a line is far below 16 million thousandths of its size"
)]
pub fn width(glyphs: &[Glyph], size: f32) -> f32 {
    glyphs.iter().map(|glyph| glyph.advance).sum::<i32>() as f32 * size / 1000.0
}

/// Every character of a document that a face cannot show, so that all can be reported at once.
pub fn uncovered(face: Face, characters: &BTreeSet<char>) -> Vec<Unshapable> {
    let all: String = characters.iter().collect();
    if shape(face, &all, 0).is_ok() {
        return Vec::new();
    }
    characters
        .iter()
        .filter_map(|character| shape(face, &character.to_string(), 0).err())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kerning_draws_pairs_together() {
        let apart = width(&shape(Face::Regular, "A", 0).unwrap(), 1000.0)
            + width(&shape(Face::Regular, "V", 0).unwrap(), 1000.0);
        let pair = width(&shape(Face::Regular, "AV", 0).unwrap(), 1000.0);
        assert!(pair < apart, "{pair} {apart}");
    }

    #[test]
    fn figures_are_equally_wide_in_both_faces() {
        for face in [Face::Regular, Face::Bold] {
            for digit in shape(face, "0123456789", 0).unwrap() {
                assert_eq!(digit.advance, 600, "{face:?} {}", digit.text);
            }
        }
    }

    #[test]
    fn the_texts_of_the_glyphs_make_the_whole_text() {
        let text = "Walk 22′-0″ × 4 ft, ⅜ in, fi ffl, 80 °F, é";
        let shown: String = shape(Face::Bold, text, 0)
            .unwrap()
            .iter()
            .map(|glyph| glyph.text.as_str())
            .collect();
        assert_eq!(shown, text);
    }

    #[test]
    fn a_character_without_a_glyph_is_named() {
        let missing = shape(Face::Regular, "fine 漢", 0).unwrap_err();
        assert_eq!(missing.character, '漢');
        assert!(missing.to_string().contains("U+6F22"));
        let all: BTreeSet<char> = "ab漢字".chars().collect();
        assert_eq!(uncovered(Face::Bold, &all).len(), 2);
    }
}
