//! Boxes set in the slabs: to scale where that can be seen, each with the number the key explains.

use super::ground;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{BoxView, PlanView, SlabView};
use super::widths::{frame_of, width_of};
use crate::documents::figures::pen::{INK, WHITE, centered, outlined};
use crate::press::drawing::{Face, Words, point};
use crate::press::frame::Frame;

/// Smaller than this a box would be a dot.
const LEAST: f32 = 4.5;
pub(super) const SIZE: f32 = 7.5;

/// Before the names, which keep clear of boxes.
pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    for slab in &view.slabs {
        let frames: Vec<Frame> = slab
            .boxes
            .iter()
            .map(|one| outline(sheet, one, scale))
            .collect();
        sheet
            .marks
            .extend(frames.iter().map(|frame| frame.grown(1.0)));
        for (one, frame) in slab.boxes.iter().zip(frames) {
            let words = number(sheet, slab, one, &frame, scale);
            sheet.write(Layer::Name, words);
        }
    }
}

/// The box itself, and the room it takes.
fn outline(sheet: &mut Sheet, one: &BoxView, scale: Scale) -> Frame {
    let real = ground::extent(&one.outline, scale);
    let small = real.width().min(real.height()) < LEAST;
    let (shape, frame) = if small {
        let middle = real.middle();
        let half = LEAST / 2.0;
        let frame = Frame::at(middle.x - half, middle.y - half, LEAST, LEAST);
        (frame.corners().to_vec(), frame)
    } else {
        (ground::polygon(&one.outline, scale), real)
    };
    sheet.draw(Layer::Step, outlined(&shape, Some(WHITE), 0.9));
    frame
}

/// Beside the box, inside the slab where there is room.
fn number(sheet: &Sheet, slab: &SlabView, one: &BoxView, frame: &Frame, scale: Scale) -> Words {
    let text = one.number.to_string();
    let beside = width_of(&text, Face::Bold, SIZE) / 2.0 + 3.0;
    let (x, y) = (frame.middle().x, frame.middle().y + SIZE * 0.35);
    let places = [
        point(frame.right + beside, y),
        point(frame.left - beside, y),
        point(x, frame.top - 3.0),
        point(x, frame.bottom + SIZE + 1.0),
    ];
    let ground = ground::polygon(&slab.outline, scale);
    let written = |at| {
        let mut words = centered(text.clone(), at, SIZE);
        words.face = Face::Bold;
        words.color = INK;
        words.halo = true;
        words
    };
    let free = |words: &Words| {
        let wanted = frame_of(words).grown(0.5);
        ground::holds(&ground, &wanted) && !wanted.overlaps_any(&sheet.marks)
    };
    let mut all = places.map(written).into_iter();
    all.clone()
        .find(free)
        .or_else(|| all.next())
        .unwrap_or_else(|| written(places[0]))
}

/// Each number once, with what it stands for.
pub(super) fn numbered(view: &PlanView) -> Vec<(usize, String)> {
    let boxes = view.slabs.iter().flat_map(|slab| &slab.boxes);
    let mut rows: Vec<(usize, String)> = boxes.map(|one| (one.number, one.name.clone())).collect();
    rows.sort();
    rows.dedup();
    rows
}
