//! What a PDF says about a face beside its outlines, read from the face's own tables.

use harfrust::{FontRef, Tag};

use crate::press::{drawing::Face, faces};

/// Lengths in 1/1000 of the size, which are also the bundled faces' own units.
#[derive(Debug, PartialEq, Eq)]
pub struct Metrics {
    /// Left, bottom, right, top of all glyphs together.
    pub bounds: [i16; 4],
    pub ascent: i16,
    pub descent: i16,
    /// Height of a capital, as the face says it; not the ascent.
    pub capital_height: i16,
    /// 400 for regular, 700 for bold.
    pub weight: u16,
    /// Advance of every glyph, by glyph id.
    widths: Vec<u16>,
}

impl Metrics {
    pub fn of(face: Face) -> Self {
        let tables = FontRef::new(faces::bytes(face)).expect(SOUND);
        let signed =
            |tag: [u8; 4], offset| i16::from_be_bytes(unsigned(&tables, tag, offset).to_be_bytes());
        // Offsets are those of the OpenType specification's tables head, hhea and OS/2.
        let glyphs_with_width = usize::from(unsigned(&tables, *b"hhea", 34));
        Self {
            bounds: [36, 38, 40, 42].map(|offset| signed(*b"head", offset)),
            ascent: signed(*b"hhea", 4),
            descent: signed(*b"hhea", 6),
            capital_height: signed(*b"OS/2", 88),
            weight: unsigned(&tables, *b"OS/2", 4),
            widths: (0..glyphs_with_width)
                .map(|glyph| unsigned(&tables, *b"hmtx", 4 * glyph))
                .collect(),
        }
    }

    /// Glyphs after the last one listed share its width.
    pub fn width(&self, glyph: u16) -> u16 {
        let listed = self.widths.get(usize::from(glyph)).or(self.widths.last());
        *listed.expect("a face has at least one width")
    }
}

const SOUND: &str = "the bundled faces are sound TrueType files";

fn unsigned(tables: &FontRef, tag: [u8; 4], offset: usize) -> u16 {
    let table = tables.table_data(Tag::new(&tag)).expect(SOUND);
    table.read_at(offset).expect(SOUND)
}

#[cfg(test)]
mod tests {
    use harfrust::FontRef;

    use super::{Metrics, unsigned};
    use crate::press::{drawing::Face, faces};

    /// Widths are handed on as 1/1000 of the size without scaling.
    #[test]
    fn the_bundled_faces_have_a_thousand_units() {
        for face in [Face::Regular, Face::Bold] {
            let tables = FontRef::new(faces::bytes(face)).unwrap();
            assert_eq!(unsigned(&tables, *b"head", 18), 1000, "{face:?}");
        }
    }

    /// The box must hold what is drawn: the deepest and highest glyph, read by hand from `head`.
    #[test]
    fn the_box_holds_the_face() {
        assert_eq!(Metrics::of(Face::Regular).bounds, [-260, -245, 1241, 1119]);
    }

    #[test]
    fn a_bold_face_is_heavier_and_as_tall() {
        let (regular, bold) = (Metrics::of(Face::Regular), Metrics::of(Face::Bold));
        assert_eq!((regular.weight, bold.weight), (400, 700));
        assert_eq!((regular.capital_height, bold.capital_height), (698, 698));
        assert!(
            regular.descent < 0 && regular.capital_height < regular.ascent,
            "{regular:?}"
        );
    }
}
