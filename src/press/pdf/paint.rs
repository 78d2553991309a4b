//! The marks of one page to printpdf's operations.

use printpdf::{
    Codepoint, CurTransMat, Op, Point as Spot, Pt, TextItem, TextMatrix, XObjectId,
    XObjectTransform,
};

use super::{fonts::Fonts, marking, pen::Pen, pictures::Pictures, shapes};
use crate::press::page::{Ink, Mark, Node, NodeId, Owner, Page, Run};

/// A page in printpdf's operations.
pub struct Painted {
    pub ops: Vec<Op>,
    /// Whom each marked content belongs to, by its number on the page.
    pub owners: Vec<NodeId>,
}

/// Paints a page; glyphs and pictures in use are noted on the way.
pub fn page(
    page: &Page,
    structure: &[Node],
    fonts: &mut Fonts,
    pictures: &mut Pictures,
) -> Painted {
    let mut painter = Painter {
        height: page.size.height,
        fonts,
        pictures,
        pen: Pen::default(),
        painted: Painted {
            ops: Vec::new(),
            owners: Vec::new(),
        },
    };
    let marks: Vec<&Mark> = page.marks.iter().filter(|mark| shows(&mark.ink)).collect();
    // Neighbours of one owner share one marked content.
    for marks in marks.chunk_by(|one, next| one.owner == next.owner) {
        painter.begin(marks[0].owner, structure);
        for mark in marks {
            painter.ink(&mark.ink);
        }
        painter.painted.ops.push(Op::EndMarkedContent);
    }
    painter.painted
}

/// Marked content must not be empty, or an element would claim to say something.
fn shows(ink: &Ink) -> bool {
    match ink {
        Ink::Path(path) => path.fill.is_some() || path.stroke.is_some(),
        Ink::Glyphs(run) => !run.glyphs.is_empty(),
        Ink::Clipped { inks, .. } => inks.iter().any(shows),
        Ink::Picture { .. } => true,
    }
}

struct Painter<'a> {
    height: f32,
    fonts: &'a mut Fonts,
    pictures: &'a mut Pictures,
    pen: Pen,
    painted: Painted,
}

impl Painter<'_> {
    fn begin(&mut self, owner: Owner, structure: &[Node]) {
        let op = match owner {
            Owner::Node(node) => {
                self.painted.owners.push(node);
                marking::element(structure[node.0].role, self.painted.owners.len() - 1)
            }
            Owner::Layout => marking::decoration(),
            Owner::Header => marking::running_head(),
            Owner::Footer => marking::running_foot(),
        };
        self.painted.ops.push(op);
    }

    fn ink(&mut self, ink: &Ink) {
        match ink {
            Ink::Path(path) => {
                shapes::draw(path, self.height, &mut self.pen, &mut self.painted.ops);
            }
            Ink::Glyphs(run) => self.run(run),
            Ink::Clipped { outline, inks } => {
                if let Some(clip) = shapes::clip(outline, self.height) {
                    let pen = self.pen.clone();
                    self.painted.ops.extend([Op::SaveGraphicsState, clip]);
                    for ink in inks {
                        self.ink(ink);
                    }
                    self.painted.ops.push(Op::RestoreGraphicsState);
                    self.pen = pen;
                }
            }
            Ink::Picture {
                at,
                size,
                bytes,
                kind,
            } => {
                let id = XObjectId(self.pictures.take(bytes, *kind));
                // A picture is one unit wide and high, so its size is the scale.
                let bottom = self.height - at.y - size.height;
                let matrix = CurTransMat::Raw([size.width, 0.0, 0.0, size.height, at.x, bottom]);
                let transform = XObjectTransform {
                    no_auto_scale: true,
                    ..XObjectTransform::default()
                };
                self.painted.ops.extend([
                    Op::SaveGraphicsState,
                    Op::SetTransformationMatrix { matrix },
                    Op::UseXobject { id, transform },
                    Op::RestoreGraphicsState,
                ]);
            }
        }
    }

    fn run(&mut self, run: &Run) {
        if run.glyphs.is_empty() {
            return;
        }
        let glyphs: Vec<Codepoint> = run
            .glyphs
            .iter()
            .map(|glyph| self.fonts.take(run.face, glyph))
            .collect();
        let (x, y) = (run.at.x, self.height - run.at.y);
        let ops = &mut self.painted.ops;
        ops.push(Op::StartTextSection);
        self.pen.font(run.face, run.size, ops);
        self.pen.fill(run.color, ops);
        ops.push(if run.upward {
            Op::SetTextMatrix {
                matrix: TextMatrix::Raw([0.0, 1.0, -1.0, 0.0, x, y]),
            }
        } else {
            Op::SetTextCursor {
                pos: Spot { x: Pt(x), y: Pt(y) },
            }
        });
        ops.push(Op::ShowText {
            items: vec![TextItem::GlyphIds(glyphs)],
        });
        ops.push(Op::EndTextSection);
    }
}
