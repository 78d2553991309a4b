//! The key, the scale bar and the north arrow, as blocks that look for a free corner.

use super::edges::{self, Lean};
use super::kinds::{Crossed, EdgeMark};
use super::scale::Scale;
use super::sheet::{BULKHEAD, JOINT, Layer, SAWN, STRIP, Sheet};
use super::view::PlanView;
use super::widths::width_of;
use super::{boxes, openings, pins};
use crate::documents::figures::pen::{
    INK, PALE, SOLID, TINT, WHITE, arrow, centered, outlined, words,
};
use crate::press::drawing::{Face, Shape, point};
use crate::press::frame::Frame;

const ROW: f32 = 15.0;
const SWATCH: f32 = 32.0;
/// Where the words begin: one column and its gutter.
const WORDS: f32 = 44.0;
const SIZE: f32 = 8.0;

/// The longest list of openings the key takes.
const LONGEST_ROW: f32 = 200.0;

/// From the end of the scale bar to its unit: half of the last number, and a space.
const BESIDE: f32 = 13.0;

/// What a row of the key explains.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sample {
    Slab,
    Joint,
    SawnJoint,
    Strip,
    Bulkhead,
    Fall,
    House,
    Existing,
    Curb,
    Open,
    Box(usize),
    Dowels,
    Ties,
    Nothing,
}

/// The key's rows: only what this plan shows.
pub(super) struct Key {
    rows: Vec<(Sample, String)>,
}

impl Key {
    pub fn of(view: &PlanView, sheet: &Sheet) -> Self {
        let words = view.words;
        let has = |kind: EdgeMark| {
            let mut edges = view.slabs.iter().flat_map(|slab| &slab.edges);
            edges.any(|edge| edge.kind == kind)
        };
        let around = |kind: EdgeMark| {
            let mut openings = view.slabs.iter().flat_map(|slab| &slab.openings);
            openings.any(|opening| opening.kind == kind)
        };
        let said = |first: &str, then: &str| {
            if then.is_empty() {
                first.to_owned()
            } else {
                format!("{first}, {then}")
            }
        };
        let strips = [
            EdgeMark::House,
            EdgeMark::Existing,
            EdgeMark::Curb,
            EdgeMark::Isolated,
        ];
        let crossed = |by: Crossed| {
            let mut edges = view.slabs.iter().flat_map(|slab| &slab.edges);
            edges.any(|edge| edge.crossed == by)
        };
        let strip = |kind: EdgeMark| {
            let mut edges = view.slabs.iter().flat_map(|slab| &slab.edges);
            edges.any(|edge| edge.kind == kind && edge.crossed != Crossed::Ties)
        };
        let jointed = |is_sawn: bool| {
            let mut slabs = view.slabs.iter();
            slabs.any(|slab| !slab.joints.is_empty() && slab.is_sawn == is_sawn)
        };
        let rows = [
            (
                true,
                Sample::Slab,
                said(words.new_concrete, &view.thickness),
            ),
            (jointed(false), Sample::Joint, words.joint.to_owned()),
            (
                jointed(true),
                Sample::SawnJoint,
                words.sawn_joint.to_owned(),
            ),
            (
                strips.into_iter().any(|kind| strip(kind) || around(kind)),
                Sample::Strip,
                words.strip.to_owned(),
            ),
            (
                has(EdgeMark::Bulkhead),
                Sample::Bulkhead,
                words.between_pours.to_owned(),
            ),
            (
                sheet.has(Layer::Fall),
                Sample::Fall,
                said(words.fall, &view.slope),
            ),
            (has(EdgeMark::House), Sample::House, words.wall.to_owned()),
            (
                has(EdgeMark::Existing) || around(EdgeMark::Existing),
                Sample::Existing,
                words.existing.to_owned(),
            ),
            (has(EdgeMark::Curb), Sample::Curb, words.curb.to_owned()),
            (
                view.slabs.iter().any(|slab| !slab.openings.is_empty()),
                Sample::Open,
                left_open(view, sheet),
            ),
            (
                crossed(Crossed::Dowels),
                Sample::Dowels,
                words.doweled.to_owned(),
            ),
            (crossed(Crossed::Ties), Sample::Ties, words.tied.to_owned()),
            (view.unplaced, Sample::Nothing, words.unplaced.to_owned()),
        ];
        let shown = rows.into_iter().filter(|(shown, _, _)| *shown);
        let mut rows: Vec<(Sample, String)> =
            shown.map(|(_, sample, text)| (sample, text)).collect();
        let boxes = boxes::numbered(view).into_iter();
        rows.extend(boxes.map(|(number, name)| (Sample::Box(number), name)));
        Self { rows }
    }

    pub fn size(&self) -> (f32, f32) {
        let wide = self
            .rows
            .iter()
            .map(|(sample, text)| indent(*sample) + width_of(text, Face::Regular, SIZE))
            .fold(0.0, f32::max);
        let rows = f32::from(u8::try_from(self.rows.len()).unwrap_or(u8::MAX));
        (wide, rows * ROW - 4.0)
    }

    pub fn draw(&self, sheet: &mut Sheet, at: &Frame, view: &PlanView) {
        let mut top = at.top;
        for (sample, text) in &self.rows {
            swatch(sheet, *sample, at.left, top, view);
            let baseline = point(at.left + indent(*sample), top + 8.3);
            sheet.write(Layer::Key, words(text.clone(), baseline, SIZE));
            top += ROW;
        }
    }
}

/// `left open: tree well, 3 × 3 ft`; where a row would be too long only the names, or how many.
fn left_open(view: &PlanView, sheet: &Sheet) -> String {
    let unnamed = openings::unnamed(sheet, view);
    if unnamed.is_empty() {
        return view.words.left_open.to_owned();
    }
    let said: Vec<String> = unnamed.iter().map(|opening| opening.said()).collect();
    let names: Vec<&str> = unnamed.iter().map(|one| one.name.as_str()).collect();
    let row = |list: String| format!("{}: {list}", view.words.left_open);
    let rows = [row(said.join("; ")), row(names.join(", "))];
    let fits = |row: &String| width_of(row, Face::Regular, SIZE) <= LONGEST_ROW;
    rows.into_iter().find(fits).unwrap_or_else(|| {
        let many = view.slabs.iter().map(|slab| slab.openings.len());
        format!("{} {}", many.sum::<usize>(), view.words.places_left_open)
    })
}

fn indent(sample: Sample) -> f32 {
    if sample == Sample::Nothing {
        0.0
    } else {
        WORDS
    }
}

fn swatch(sheet: &mut Sheet, sample: Sample, left: f32, top: f32, view: &PlanView) {
    let frame = Frame::at(left, top + 1.0, SWATCH, 9.0);
    let inner = frame.grown(-0.65);
    let line = [frame.left, frame.right].map(|x| point(x, frame.middle().y));
    match sample {
        Sample::Slab => sheet.draw(Layer::Key, outlined(&inner.corners(), Some(TINT), 1.3)),
        Sample::Joint => sheet.line(Layer::Key, &line, INK, 0.7, JOINT),
        Sample::SawnJoint => sheet.line(Layer::Key, &line, INK, 0.7, SAWN),
        Sample::Strip => {
            sheet.line(Layer::Key, &line, WHITE, 3.2, SOLID);
            sheet.line(Layer::Key, &line, view.accent, 3.2, STRIP);
        }
        Sample::Bulkhead => sheet.line(Layer::Key, &line, INK, 1.0, BULKHEAD),
        Sample::Fall => {
            for shape in arrow(line[0], line[1], view.accent, 0.9, 7.0) {
                sheet.draw(Layer::Key, shape);
            }
        }
        Sample::House => {
            sheet.draw(
                Layer::Key,
                edges::hatch(&frame.corners(), 4.0, &[Lean::Rising]),
            );
            let face = [frame.left, frame.right].map(|x| point(x, frame.bottom));
            sheet.line(Layer::Key, &face, INK, 1.1, SOLID);
        }
        Sample::Existing => {
            let both = [Lean::Rising, Lean::Falling];
            sheet.draw(Layer::Key, edges::hatch(&frame.corners(), 6.0, &both));
        }
        Sample::Curb => {
            let band = Frame::at(frame.left, frame.middle().y - 2.25, SWATCH, 4.5);
            sheet.draw(Layer::Key, outlined(&band.corners(), Some(PALE), 0.5));
        }
        Sample::Open => sheet.draw(Layer::Key, outlined(&inner.corners(), Some(WHITE), 1.0)),
        Sample::Box(number) => {
            let middle = frame.middle();
            let small = Frame::at(frame.left, middle.y - 3.0, 6.0, 6.0);
            let shape = outlined(&small.corners(), Some(WHITE), 0.9);
            sheet.draw(Layer::Key, shape);
            let at = point(small.right + 7.0, middle.y + boxes::SIZE * 0.35);
            let mut words = centered(number.to_string(), at, boxes::SIZE);
            words.face = Face::Bold;
            sheet.draw(Layer::Key, Shape::Words(words));
        }
        Sample::Dowels | Sample::Ties => {
            let crossed = if sample == Sample::Dowels {
                Crossed::Dowels
            } else {
                Crossed::Ties
            };
            sheet.line(Layer::Key, &line, INK, 1.3, SOLID);
            pins::draw(
                sheet,
                Layer::Key,
                &line,
                crossed,
                crossed == Crossed::Dowels,
            );
        }
        Sample::Nothing => {}
    }
    sheet.marks.push(frame);
}

/// Width and height of the scale bar with its numbers.
pub(super) fn bar_size(scale: Scale, feet: &str) -> (f32, f32) {
    let long = f32::from(scale.mark) * 4.0 * scale.foot;
    (
        long + 9.0 + width_of(&bar_words(scale, feet), Face::Regular, SIZE),
        16.0,
    )
}

fn bar_words(scale: Scale, feet: &str) -> String {
    format!("{feet} ({})", scale.says).replace(' ', "\u{a0}")
}

pub(super) fn draw_bar(sheet: &mut Sheet, at: &Frame, scale: Scale, feet: &str) {
    let part = f32::from(scale.mark) * scale.foot;
    let (top, bottom) = (at.bottom - 4.3, at.bottom - 0.3);
    for n in 0_u8..4 {
        let left = at.left + part * f32::from(n);
        let frame = Frame::at(left, top, part, bottom - top);
        let fill = if n % 2 == 0 { INK } else { WHITE };
        sheet.draw(Layer::Key, outlined(&frame.corners(), Some(fill), 0.6));
    }
    for n in 0_u16..=4 {
        let x = at.left + part * f32::from(n);
        let number = (u16::from(scale.mark) * n).to_string();
        let label = if n == 0 {
            words(number, point(x, top - 3.5), SIZE)
        } else {
            centered(number, point(x, top - 3.5), SIZE)
        };
        sheet.write(Layer::Key, label);
    }
    let beside = point(at.left + part * 4.0 + BESIDE, top - 3.5);
    sheet.write(Layer::Key, words(bar_words(scale, feet), beside, SIZE));
    sheet
        .marks
        .push(Frame::at(at.left, top, part * 4.0, bottom - top));
}

pub(super) const NORTH: (f32, f32) = (12.0, 62.0);

pub(super) fn draw_north(sheet: &mut Sheet, at: &Frame, letter: &str) {
    let x = at.middle().x;
    let mut label = centered(letter, point(x, at.top + 7.0), 8.5);
    label.face = Face::Bold;
    sheet.write(Layer::Key, label);
    let shaft: Vec<Shape> = arrow(point(x, at.bottom), point(x, at.top + 13.0), INK, 0.9, 9.0);
    for shape in shaft {
        sheet.draw(Layer::Key, shape);
    }
    sheet.marks.push(*at);
}
