//! The marks of a page to the bytes of its content (ISO 32000-1, 8, 9 and 14.6).
//!
//! The only translation between what is drawn and what the file says. printpdf's own
//! serialiser is never called: it would put a colour profile under its maker's licence
//! terms into the program.

use std::collections::BTreeMap;

use lopdf::{
    Dictionary, Object, StringFormat,
    content::{Content, Operation},
    dictionary,
};
use printpdf::{Line, LinePoint};

use super::numbers::{integer, number, numbers};
use super::{fonts::Fonts, pictures::Pictures, roles};
use crate::press::drawing::{Path, Picture, Rgb};
use crate::press::page::{Ink, Mark, Node, NodeId, Owner, Page, Run};

/// A page as the file holds it.
pub struct WrittenPage {
    pub content: Vec<u8>,
    /// Whom each marked content belongs to, by its number on the page.
    pub owners: Vec<NodeId>,
}

/// Writes a page; glyphs and pictures in use are noted on the way.
pub fn write(
    page: &Page,
    structure: &[Node],
    fonts: &mut Fonts,
    pictures: &mut Pictures,
) -> WrittenPage {
    let mut writer = Writer {
        height: page.size.height,
        fonts,
        pictures,
        operations: Vec::new(),
        // A page begins with solid lines, and with a grey that we never use.
        set: BTreeMap::from([("d", dash(&[]))]),
    };
    let mut owners = Vec::new();
    let marks: Vec<&Mark> = page.marks.iter().filter(|mark| mark.ink.shows()).collect();
    // Neighbours of one owner share one marked content.
    for marks in marks.chunk_by(|one, next| one.owner == next.owner) {
        if let Owner::Node(node) = marks[0].owner {
            owners.push(node);
        }
        let (tag, properties) = owned(marks[0].owner, structure, owners.len());
        writer.put("BDC", [tag.into(), properties.into()]);
        for mark in marks {
            match &mark.ink {
                Ink::Path(path) => writer.path(path),
                Ink::Glyphs(run) => writer.run(run),
                Ink::Picture(picture) => writer.picture(picture),
            }
        }
        writer.put("EMC", []);
    }
    let content = Content {
        operations: writer.operations,
    };
    WrittenPage {
        content: content.encode().expect("memory takes every byte"),
        owners,
    }
}

/// The tag of marked content and what it says of itself: its number on the page, from 0,
/// or why a screen reader passes over it.
fn owned(owner: Owner, structure: &[Node], count: usize) -> (&'static str, Dictionary) {
    let running =
        |kind: &str| dictionary! { "Subtype" => Object::from(kind), "Type" => "Pagination" };
    match owner {
        Owner::Node(node) => (
            roles::name(structure[node.0].role),
            dictionary! { "MCID" => integer(count - 1) },
        ),
        Owner::Layout => ("Artifact", dictionary! { "Type" => "Layout" }),
        Owner::Header => ("Artifact", running("Header")),
        Owner::Footer => ("Artifact", running("Footer")),
    }
}

struct Writer<'a> {
    height: f32,
    fonts: &'a mut Fonts,
    pictures: &'a mut Pictures,
    operations: Vec<Operation>,
    /// What colour, width, dash and font were set to last.
    set: BTreeMap<&'static str, Vec<Object>>,
}

impl Writer<'_> {
    fn put(&mut self, operator: &str, operands: impl Into<Vec<Object>>) {
        self.operations
            .push(Operation::new(operator, operands.into()));
    }

    /// Sets what stays set; only a change is written.
    fn set(&mut self, operator: &'static str, operands: Vec<Object>) {
        if self.set.get(operator) != Some(&operands) {
            self.put(operator, operands.clone());
            self.set.insert(operator, operands);
        }
    }

    fn path(&mut self, path: &Path) {
        let (lines, within) = (drawn(&path.lines), drawn(&path.within));
        if lines.is_empty() || within.is_empty() != path.within.is_empty() {
            return;
        }
        let before = (!within.is_empty()).then(|| self.set.clone());
        if before.is_some() {
            self.put("q", []);
            self.rings(&within, &["W*", "n"]);
        }
        if let Some(fill) = path.fill {
            self.set("rg", color(fill));
        }
        if let Some(stroke) = &path.stroke {
            self.set("RG", color(stroke.color));
            self.set("w", vec![number(stroke.width)]);
            self.set("d", dash(&stroke.dash));
        }
        let (fills, strokes) = (path.fill.is_some(), path.stroke.is_some());
        if fills && strokes && lines.iter().all(|line| line.is_closed) {
            self.rings(&lines, &["B*"]);
        } else {
            if fills {
                self.rings(&lines, &["f*"]);
            }
            for line in lines.iter().filter(|_| strokes) {
                self.trace(&line.points);
                self.put(if line.is_closed { "s" } else { "S" }, []);
            }
        }
        if let Some(before) = before {
            self.put("Q", []);
            self.set = before;
        }
    }

    /// Closed lines, and what becomes of the inside by the even-odd rule.
    fn rings(&mut self, lines: &[&Line], operators: &[&str]) {
        for line in lines {
            self.trace(&line.points);
            self.put("h", []);
        }
        for operator in operators {
            self.put(operator, []);
        }
    }

    /// Two control points and an end make a curve; a point alone is a corner.
    fn trace(&mut self, points: &[LinePoint]) {
        let mut rest = points;
        let mut operator = "m";
        while let Some(first) = rest.first() {
            let count = if first.bezier && 2 < rest.len() { 3 } else { 1 };
            let (taken, after) = rest.split_at(count);
            let places = taken
                .iter()
                .flat_map(|at| [at.p.x.0, self.height - at.p.y.0]);
            let places: Vec<Object> = places.map(number).collect();
            self.put(if count == 1 { operator } else { "c" }, places);
            (rest, operator) = (after, "l");
        }
    }

    fn run(&mut self, run: &Run) {
        let (x, y) = (run.at.x, self.height - run.at.y);
        self.put("BT", []);
        let font = Fonts::name(run.face).into();
        self.set("Tf", vec![font, number(run.size)]);
        self.set("rg", color(run.color));
        if run.upward {
            self.put("Tm", numbers([0.0, 1.0, -1.0, 0.0, x, y]));
        } else {
            self.put("Td", numbers([x, y]));
        }
        // Glyphs are joined into one string as long as nothing moves between them.
        let (mut shown, mut string) = (Vec::new(), Vec::new());
        for glyph in &run.glyphs {
            let (id, gap) = self.fonts.take(run.face, glyph);
            string.extend(id.to_be_bytes());
            if gap != 0 {
                shown.push(hexadecimal(std::mem::take(&mut string)));
                shown.push(gap.into());
            }
        }
        if !string.is_empty() {
            shown.push(hexadecimal(string));
        }
        self.put("TJ", [Object::Array(shown)]);
        self.put("ET", []);
    }

    /// A picture is one unit wide and high, so its size is the scale.
    fn picture(&mut self, picture: &Picture) {
        let (at, size) = (picture.at, picture.size);
        let name = self.pictures.take(&picture.bytes);
        let bottom = self.height - at.y - size.height;
        self.put("q", []);
        self.put(
            "cm",
            numbers([size.width, 0.0, 0.0, size.height, at.x, bottom]),
        );
        self.put("Do", [Object::Name(name.into_bytes())]);
        self.put("Q", []);
    }
}

/// A lone point draws nothing, so it is left out.
fn drawn(lines: &[Line]) -> Vec<&Line> {
    lines.iter().filter(|line| 1 < line.points.len()).collect()
}

/// The output intent is RGB, so the page knows no other colour.
fn color(Rgb(red, green, blue): Rgb) -> Vec<Object> {
    numbers([red, green, blue].map(|part| f32::from(part) / 255.0))
}

fn dash(lengths: &[f32]) -> Vec<Object> {
    let lengths = lengths.iter().copied().map(number).collect();
    vec![Object::Array(lengths), number(0.0)]
}

fn hexadecimal(bytes: Vec<u8>) -> Object {
    Object::String(bytes, StringFormat::Hexadecimal)
}
