//! Words to glyphs, without layout: one line, one face.

use flatwork::inside::press::{
    drawing::{Face, point},
    faces,
    page::{Glyph, Ink, Run},
};
use harfrust::{FontRef, ShapeOptions, ShaperData, UnicodeBuffer};

use super::sample::{BLACK, RUST};

pub fn words(face: Face, size: f32, (x, y): (f32, f32), text: &str) -> Ink {
    Ink::Glyphs(Run {
        face,
        size,
        color: BLACK,
        at: point(x, y),
        upward: false,
        glyphs: shape(face, text),
    })
}

pub fn upward((x, y): (f32, f32), text: &str) -> Ink {
    let glyphs = shape(Face::Regular, text);
    Ink::Glyphs(Run {
        face: Face::Regular,
        size: 8.0,
        color: RUST,
        at: point(x, y),
        upward: true,
        glyphs,
    })
}

pub fn shape(face: Face, text: &str) -> Vec<Glyph> {
    let font = FontRef::new(faces::bytes(face)).expect("bundled");
    let data = ShaperData::new(&font);
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.guess_segment_properties();
    let shaped = data
        .shaper(&font)
        .build()
        .shape(buffer, ShapeOptions::default());
    let infos = shaped.glyph_infos();
    let starts: Vec<usize> = infos
        .iter()
        .map(|info| usize::try_from(info.cluster).expect("short"))
        .collect();
    infos
        .iter()
        .zip(shaped.glyph_positions())
        .enumerate()
        .map(|(index, (info, position))| {
            let start = starts[index];
            let end = starts[index..]
                .iter()
                .copied()
                .find(|next| start < *next)
                .unwrap_or(text.len());
            let is_first = index == 0 || starts[index - 1] != start;
            Glyph {
                id: u16::try_from(info.glyph_id).expect("16 bits"),
                advance: position.x_advance,
                text: if is_first {
                    text[start..end].to_owned()
                } else {
                    String::new()
                },
            }
        })
        .collect()
}
