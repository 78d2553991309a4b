//! The pen as it stands on the page, so that only changes are written.

use printpdf::{Color, FontId, LineDashPattern, Op, PdfFontHandle, Pt, Rgb as Ink};

use crate::press::drawing::{Face, Rgb, Stroke};

/// What the page last set; nothing at its start, since its own start is a grey we never use.
#[derive(Clone, Default)]
pub struct Pen {
    fill: Option<Rgb>,
    outline: Option<Rgb>,
    width: Option<f32>,
    dash: Vec<f32>,
    font: Option<(Face, f32)>,
}

impl Pen {
    pub fn fill(&mut self, color: Rgb, ops: &mut Vec<Op>) {
        if self.fill != Some(color) {
            self.fill = Some(color);
            ops.push(Op::SetFillColor { col: ink(color) });
        }
    }

    pub fn stroke(&mut self, stroke: &Stroke, ops: &mut Vec<Op>) {
        if self.outline != Some(stroke.color) {
            self.outline = Some(stroke.color);
            ops.push(Op::SetOutlineColor {
                col: ink(stroke.color),
            });
        }
        if self.width != Some(stroke.width) {
            self.width = Some(stroke.width);
            ops.push(Op::SetOutlineThickness {
                pt: Pt(stroke.width),
            });
        }
        if self.dash != stroke.dash {
            self.dash.clone_from(&stroke.dash);
            ops.push(Op::SetLineDashPattern {
                dash: LineDashPattern::new(0.0, &stroke.dash),
            });
        }
    }

    pub fn font(&mut self, face: Face, size: f32, ops: &mut Vec<Op>) {
        if self.font != Some((face, size)) {
            self.font = Some((face, size));
            let font = PdfFontHandle::External(FontId(resource_name(face).to_owned()));
            ops.push(Op::SetFont {
                font,
                size: Pt(size),
            });
        }
    }
}

/// The name under which pages ask for a face. Ours, not printpdf's: its names come
/// from a counter of the whole process, and `F1` to `F14` mean built-in faces there.
pub fn resource_name(face: Face) -> &'static str {
    match face {
        Face::Regular => "Regular",
        Face::Bold => "Bold",
    }
}

fn ink(Rgb(red, green, blue): Rgb) -> Color {
    let part = |value: u8| f32::from(value) / 255.0;
    Color::Rgb(Ink {
        r: part(red),
        g: part(green),
        b: part(blue),
        icc_profile: None,
    })
}
