//! What is left open in a slab: white, or hatched where something stands in it, named where there is room.

use super::edges::{self, Lean};
use super::ground;
use super::kinds::EdgeMark;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{OpeningView, PlanView};
use super::widths::width_of;
use crate::documents::figures::pen::{PALE, WHITE, centered, outlined};
use crate::press::drawing::{Face, PagePoint, point};
use crate::press::frame::Frame;

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    let openings = view.slabs.iter().flat_map(|slab| &slab.openings);
    for opening in openings {
        let places = ground::polygon(&opening.outline, scale);
        let fill = match opening.kind {
            EdgeMark::Curb => PALE,
            EdgeMark::Open
            | EdgeMark::House
            | EdgeMark::Existing
            | EdgeMark::Joined
            | EdgeMark::Bulkhead
            | EdgeMark::Isolated => WHITE,
        };
        sheet.draw(Layer::Outline, outlined(&places, Some(fill), 1.0));
        let slopes: &[Lean] = match opening.kind {
            EdgeMark::House => &[Lean::Rising],
            EdgeMark::Existing => &[Lean::Rising, Lean::Falling],
            EdgeMark::Open
            | EdgeMark::Curb
            | EdgeMark::Joined
            | EdgeMark::Bulkhead
            | EdgeMark::Isolated => &[],
        };
        if !slopes.is_empty() {
            sheet.draw(Layer::Outline, edges::hatch(&places, 4.0, slopes));
        }
        if opening.kind != EdgeMark::Open {
            let closed: Vec<PagePoint> = places.iter().chain(places.first()).copied().collect();
            edges::strip(sheet, &closed, view.accent);
        }
        name(sheet, opening, &places, scale);
        // Names of the slab and falls of its panels keep off it.
        let room = ground::bands(&opening.outline, scale).into_iter();
        sheet.marks.extend(room.map(|frame| frame.grown(1.5)));
    }
}

const SIZE: f32 = 8.0;

/// The name over the size, or the name alone, inside the opening; the key names the others.
fn name(sheet: &mut Sheet, opening: &OpeningView, places: &[PagePoint], scale: Scale) {
    if opening.kind != EdgeMark::Open {
        return;
    }
    let middle = ground::extent(&opening.outline, scale).middle();
    let both = [opening.name.as_str(), opening.size.as_str()];
    for lines in [&both[..], &both[..1]] {
        let wide = lines
            .iter()
            .map(|line| width_of(line, Face::Regular, SIZE))
            .fold(0.0, f32::max);
        let many = f32::from(u8::try_from(lines.len()).unwrap_or(1));
        let tall = many * SIZE * 1.2;
        let frame = Frame::at(middle.x - wide / 2.0, middle.y - tall / 2.0, wide, tall);
        if !ground::holds(places, &frame) {
            continue;
        }
        let mut baseline = frame.top;
        for line in lines {
            baseline += SIZE * 1.2;
            let at = point(middle.x, baseline - SIZE * 0.26);
            sheet.write(Layer::Name, centered(*line, at, SIZE));
        }
        return;
    }
}

/// The openings whose names do not stand on the plan.
pub(super) fn unnamed<'a>(sheet: &Sheet, view: &'a PlanView) -> Vec<&'a OpeningView> {
    let openings = view.slabs.iter().flat_map(|slab| &slab.openings);
    openings
        .filter(|opening| !sheet.names().any(|words| words.text == opening.name))
        .collect()
}
