//! printpdf's page operations to the bytes of a page's content.
//!
//! Only the operations that `paint` makes are known; any other is a slip in this
//! program and stops it. printpdf's own serialiser is never called: it would put a
//! colour profile under its maker's licence terms into the program.

use lopdf::{
    Object, StringFormat,
    content::{Content, Operation},
};
use printpdf::{
    Color, Line, LinePoint, Op, PaintMode, PdfFontHandle, Polygon, TextItem, WindingOrder,
};

use super::numbers::{number, numbers};

pub fn content(ops: &[Op]) -> Vec<u8> {
    let mut operations = Vec::with_capacity(ops.len() * 2);
    for op in ops {
        emit(op, &mut operations);
    }
    Content { operations }
        .encode()
        .expect("memory takes every byte written to it")
}

fn emit(op: &Op, out: &mut Vec<Operation>) {
    let mut put =
        |operator: &str, operands: Vec<Object>| out.push(Operation::new(operator, operands));
    match op {
        Op::SaveGraphicsState => put("q", vec![]),
        Op::RestoreGraphicsState => put("Q", vec![]),
        Op::BeginMarkedContentWithProperties { tag, properties } => {
            put("BDC", vec![name(tag), properties.to_lopdf()]);
        }
        Op::EndMarkedContent => put("EMC", vec![]),
        Op::SetFillColor { col } => put("rg", color(col)),
        Op::SetOutlineColor { col } => put("RG", color(col)),
        Op::SetOutlineThickness { pt } => put("w", vec![number(pt.0)]),
        Op::SetLineDashPattern { dash } => {
            let lengths = dash.pattern.iter().copied().map(number).collect();
            put("d", vec![Object::Array(lengths), number(dash.offset)]);
        }
        Op::DrawLine { line } => draw_line(line, &mut put),
        Op::DrawPolygon { polygon } => draw_polygon(polygon, &mut put),
        Op::SetTransformationMatrix { matrix } => put("cm", numbers(matrix.as_array())),
        Op::UseXobject { id, transform } if transform.no_auto_scale => put("Do", vec![name(&id.0)]),
        Op::StartTextSection => put("BT", vec![]),
        Op::EndTextSection => put("ET", vec![]),
        Op::SetFont {
            font: PdfFontHandle::External(id),
            size,
        } => put("Tf", vec![name(&id.0), number(size.0)]),
        Op::SetTextCursor { pos } => put("Td", numbers([pos.x.0, pos.y.0])),
        Op::SetTextMatrix { matrix } => put("Tm", numbers(matrix.as_array())),
        Op::ShowText { items } => put("TJ", vec![Object::Array(shown(items))]),
        other => unreachable!("`paint` makes no such operation: {other:?}"),
    }
}

fn draw_line(line: &Line, put: &mut impl FnMut(&str, Vec<Object>)) {
    trace(&line.points, put);
    put(if line.is_closed { "s" } else { "S" }, vec![]);
}

/// Every ring is closed, the last one as well as the others.
fn draw_polygon(polygon: &Polygon, put: &mut impl FnMut(&str, Vec<Object>)) {
    for ring in &polygon.rings {
        trace(&ring.points, put);
        put("h", vec![]);
    }
    match (polygon.mode, polygon.winding_order) {
        (PaintMode::Stroke, _) => put("S", vec![]),
        (PaintMode::Fill, WindingOrder::NonZero) => put("f", vec![]),
        (PaintMode::Fill, WindingOrder::EvenOdd) => put("f*", vec![]),
        (PaintMode::FillStroke, WindingOrder::NonZero) => put("B", vec![]),
        (PaintMode::FillStroke, WindingOrder::EvenOdd) => put("B*", vec![]),
        (PaintMode::Clip, winding) => {
            put(
                if winding == WindingOrder::NonZero {
                    "W"
                } else {
                    "W*"
                },
                vec![],
            );
            put("n", vec![]);
        }
    }
}

/// Two control points and an end make a curve; a point alone is a corner.
fn trace(points: &[LinePoint], put: &mut impl FnMut(&str, Vec<Object>)) {
    let mut rest = points;
    let mut operator = "m";
    while let Some((point, after)) = rest.split_first() {
        rest = match after {
            [second, end, after @ ..] if point.bezier => {
                let curve = [
                    point.p.x.0,
                    point.p.y.0,
                    second.p.x.0,
                    second.p.y.0,
                    end.p.x.0,
                    end.p.y.0,
                ];
                put("c", numbers(curve));
                after
            }
            after => {
                put(operator, numbers([point.p.x.0, point.p.y.0]));
                after
            }
        };
        operator = "l";
    }
}

/// Glyphs joined into one string as long as nothing moves between them.
fn shown(items: &[TextItem]) -> Vec<Object> {
    let mut shown = Vec::new();
    let mut string = Vec::new();
    for item in items {
        let TextItem::GlyphIds(glyphs) = item else {
            unreachable!("`paint` shows glyphs only: {item:?}")
        };
        for glyph in glyphs {
            string.extend(glyph.gid.to_be_bytes());
            if glyph.offset != 0.0 {
                shown.push(hexadecimal(std::mem::take(&mut string)));
                shown.push(number(glyph.offset));
            }
        }
    }
    if !string.is_empty() {
        shown.push(hexadecimal(string));
    }
    shown
}

/// The output intent is RGB, so the page knows no other colour.
fn color(color: &Color) -> Vec<Object> {
    let Color::Rgb(rgb) = color else {
        unreachable!("`paint` uses RGB only: {color:?}")
    };
    numbers([rgb.r, rgb.g, rgb.b])
}

fn name(text: &str) -> Object {
    Object::Name(text.as_bytes().to_vec())
}

fn hexadecimal(bytes: Vec<u8>) -> Object {
    Object::String(bytes, StringFormat::Hexadecimal)
}
