//! The faces cut down to the glyphs a document uses.

use std::collections::BTreeMap;

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary};
use sha2::{Digest, Sha256};
use subsetter::GlyphRemapper;

use super::{deflate, metrics::Metrics, numbers::integer, to_unicode};
use crate::press::{drawing::Face, faces, page::Glyph};

#[derive(Default)]
pub struct Fonts(BTreeMap<Face, Cut>);

impl Fonts {
    /// The name under which pages ask for a face.
    pub fn name(face: Face) -> &'static str {
        match face {
            Face::Regular => "Regular",
            Face::Bold => "Bold",
        }
    }

    /// The glyph's number in the cut face, and the gap that shaping wants after it.
    pub fn take(&mut self, face: Face, glyph: &Glyph) -> (u16, i32) {
        self.0
            .entry(face)
            .or_insert_with(|| Cut::of(face))
            .take(glyph)
    }

    /// Adds every face in use; gives what the pages list under `Font`.
    pub fn add(&self, objects: &mut Objects) -> Dictionary {
        let mut listed = Dictionary::new();
        for (face, cut) in &self.0 {
            listed.set(Self::name(*face), cut.add(*face, objects));
        }
        listed
    }
}

/// One face: which glyphs were asked for, in order of first use, and what they say.
struct Cut {
    metrics: Metrics,
    ids: GlyphRemapper,
    texts: BTreeMap<u16, String>,
}

impl Cut {
    fn of(face: Face) -> Self {
        Self {
            metrics: Metrics::of(face),
            ids: GlyphRemapper::new(),
            texts: BTreeMap::new(),
        }
    }

    fn take(&mut self, glyph: &Glyph) -> (u16, i32) {
        let id = self.ids.remap(glyph.id);
        let text = self.texts.entry(id).or_default();
        if to_unicode::is_plainer(&glyph.text, text) {
            text.clone_from(&glyph.text);
        }
        // A viewer steps on by the face's own width; a positive gap steps back from it.
        (id, i32::from(self.metrics.width(glyph.id)) - glyph.advance)
    }

    /// A composite font (ISO 32000-1, 9.7): glyph numbers of the cut face stand in the text.
    fn add(&self, face: Face, objects: &mut Objects) -> ObjectId {
        let program = subsetter::subset(faces::bytes(face), 0, &self.ids)
            .expect("the bundled faces are sound TrueType files");
        let name = format!("{}+{}", tag(&program), family(face));
        let file = dictionary! { "Length1" => integer(program.len()) };
        let file = objects.add_object(deflate::stream(file, &program));
        let descriptor = objects.add_object(self.descriptor(&name, file));
        let widths = self
            .ids
            .remapped_gids()
            .map(|glyph| self.metrics.width(glyph).into())
            .collect();
        let descendant = objects.add_object(dictionary! {
            "Type" => "Font",
            "Subtype" => "CIDFontType2",
            "BaseFont" => name.as_str(),
            "CIDSystemInfo" => dictionary! {
                "Registry" => Object::string_literal("Adobe"),
                "Ordering" => Object::string_literal("Identity"),
                "Supplement" => 0,
            },
            "FontDescriptor" => descriptor,
            "CIDToGIDMap" => "Identity",
            "W" => vec![0.into(), Object::Array(widths)],
        });
        let texts = deflate::stream(Dictionary::new(), to_unicode::map(&self.texts).as_bytes());
        let texts = objects.add_object(texts);
        objects.add_object(dictionary! {
            "Type" => "Font",
            "Subtype" => "Type0",
            "BaseFont" => name,
            "Encoding" => "Identity-H",
            "DescendantFonts" => vec![descendant.into()],
            "ToUnicode" => texts,
        })
    }

    fn descriptor(&self, name: &str, file: ObjectId) -> Dictionary {
        let metrics = &self.metrics;
        dictionary! {
            "Type" => "FontDescriptor",
            "FontName" => name,
            // Symbolic: the cut face has no character table, glyph numbers are all it knows.
            "Flags" => 4,
            "FontBBox" => metrics.bounds.map(Object::from).to_vec(),
            "ItalicAngle" => 0,
            "Ascent" => metrics.ascent,
            "Descent" => metrics.descent,
            "CapHeight" => metrics.capital_height,
            // Only used to imitate a missing face; tenths of the weight are near enough (from memory).
            "StemV" => metrics.weight / 5,
            "FontFile2" => file,
        }
    }
}

/// Six letters that tell this cut from every other cut of the face.
fn tag(program: &[u8]) -> String {
    let digest = Sha256::digest(program);
    digest
        .iter()
        .take(6)
        .map(|byte| char::from(b'A' + byte % 26))
        .collect()
}

fn family(face: Face) -> &'static str {
    match face {
        Face::Regular => "IBMPlexSans",
        Face::Bold => "IBMPlexSans-Bold",
    }
}
