//! A finished PDF read back: its objects, and what each page marks and says.

use std::collections::BTreeMap;

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, content::Content};

pub struct File(pub Objects);

/// One marked content of a page.
#[derive(Debug)]
pub struct Marked {
    pub tag: String,
    /// `None` for artifacts.
    pub mcid: Option<i64>,
    pub text: String,
    /// Sum of the steps from glyph to glyph, in points.
    pub advance: f32,
}

impl File {
    pub fn read(bytes: &[u8]) -> Self {
        Self(Objects::load_mem(bytes).expect("a PDF"))
    }

    pub fn pages(&self) -> Vec<ObjectId> {
        self.0.get_pages().into_values().collect()
    }

    pub fn catalog(&self) -> &Dictionary {
        self.0.catalog().expect("a catalog")
    }

    /// The value at the end of a reference, or the object itself.
    pub fn follow<'a>(&'a self, object: &'a Object) -> &'a Object {
        self.0.dereference(object).expect("an object").1
    }

    pub fn get<'a>(&'a self, dictionary: &'a Dictionary, key: &str) -> &'a Object {
        let value = dictionary.get(key.as_bytes());
        self.follow(value.unwrap_or_else(|_| panic!("no {key} in {dictionary:?}")))
    }

    pub fn dictionary<'a>(&'a self, dictionary: &'a Dictionary, key: &str) -> &'a Dictionary {
        self.get(dictionary, key)
            .as_dict()
            .unwrap_or_else(|_| panic!("{key} is no dictionary"))
    }

    pub fn text(&self, dictionary: &Dictionary, key: &str) -> String {
        lopdf::decode_text_string(self.get(dictionary, key)).expect("text")
    }

    pub fn stream(&self, object: &Object) -> Vec<u8> {
        self.follow(object)
            .as_stream()
            .expect("a stream")
            .decompressed_content()
            .expect("deflated")
    }

    /// What a page marks; panics when marks do not balance or something is painted outside them.
    pub fn marked(&self, page: ObjectId) -> Vec<Marked> {
        let fonts = self.fonts(page);
        let mut marked: Vec<Marked> = Vec::new();
        let (mut is_open, mut saved, mut font, mut size) = (false, 0, String::new(), 0.0);
        for operation in Content::decode(&self.0.get_page_content(page))
            .expect("content")
            .operations
        {
            let operands = &operation.operands;
            match operation.operator.as_str() {
                "BDC" => {
                    assert!(!is_open, "marked content inside marked content");
                    is_open = true;
                    let properties = operands[1].as_dict().expect("properties");
                    marked.push(Marked {
                        tag: name(&operands[0]),
                        mcid: properties
                            .get(b"MCID")
                            .ok()
                            .map(|mcid| mcid.as_i64().expect("a number")),
                        text: String::new(),
                        advance: 0.0,
                    });
                }
                "EMC" => {
                    assert!(is_open, "an end without a beginning");
                    is_open = false;
                }
                "q" => saved += 1,
                "Q" => saved -= 1,
                "Tf" => {
                    (font, size) = (name(&operands[0]), operands[1].as_float().expect("a size"));
                }
                "TJ" => {
                    assert!(is_open, "text outside marks");
                    let last = marked.last_mut().expect("open");
                    fonts[&font].show(&operands[0], size, last);
                }
                "S" | "s" | "f" | "f*" | "B" | "B*" | "Do" => {
                    assert!(is_open, "painted outside marks");
                }
                _ => {}
            }
            assert!(0 <= saved, "more states restored than saved");
        }
        assert!(!is_open && saved == 0, "a mark or a state is left open");
        marked
    }

    fn fonts(&self, page: ObjectId) -> BTreeMap<String, Font> {
        let page = self.0.get_dictionary(page).expect("a page");
        let fonts = self.dictionary(self.dictionary(page, "Resources"), "Font");
        let read = |(key, font): (&Vec<u8>, _)| {
            let font = self.follow(font).as_dict().expect("a font");
            (
                String::from_utf8_lossy(key).into_owned(),
                Font::read(self, font),
            )
        };
        fonts.iter().map(read).collect()
    }
}

/// What a viewer knows of a font: texts and widths by glyph.
struct Font {
    texts: BTreeMap<u16, String>,
    widths: Vec<f32>,
}

impl Font {
    fn read(file: &File, font: &Dictionary) -> Self {
        let map = file.stream(font.get(b"ToUnicode").expect("texts"));
        let entry = |line: &str| {
            let (glyph, text) = line
                .strip_prefix('<')?
                .strip_suffix('>')?
                .split_once("> <")?;
            let units: Vec<u16> = text.as_bytes().chunks(4).map(hexadecimal).collect();
            Some((
                hexadecimal(glyph.as_bytes()),
                String::from_utf16(&units).expect("UTF-16"),
            ))
        };
        let texts = String::from_utf8(map)
            .expect("text")
            .lines()
            .filter_map(entry)
            .collect();
        let descendants = file.get(font, "DescendantFonts").as_array().expect("one");
        let descendant = file.follow(&descendants[0]).as_dict().expect("a font");
        let widths = file.get(descendant, "W").as_array().expect("widths")[1]
            .as_array()
            .expect("from glyph 0");
        Self {
            texts,
            widths: widths
                .iter()
                .map(|width| width.as_float().expect("a width"))
                .collect(),
        }
    }

    fn show(&self, shown: &Object, size: f32, to: &mut Marked) {
        for item in shown.as_array().expect("an array") {
            let Ok(glyphs) = item.as_str() else {
                to.advance -= item.as_float().expect("a gap") / 1000.0 * size;
                continue;
            };
            for glyph in glyphs.chunks(2) {
                let glyph = u16::from_be_bytes(glyph.try_into().expect("two bytes a glyph"));
                assert_ne!(glyph, 0, "the empty box must not be drawn");
                to.text.push_str(&self.texts[&glyph]);
                to.advance += self.widths[usize::from(glyph)] / 1000.0 * size;
            }
        }
    }
}

pub fn name(object: &Object) -> String {
    String::from_utf8_lossy(object.as_name().expect("a name")).into_owned()
}

fn hexadecimal(digits: &[u8]) -> u16 {
    u16::from_str_radix(std::str::from_utf8(digits).expect("ASCII"), 16).expect("digits")
}
