//! Slabs as they lie: fills, outlines, joints, steps, and what stands at their edges.

use super::scale::Scale;
use super::sheet::{DOTS, JOINT, Layer, SAWN, Sheet};
use super::view::{PlanView, SlabView};
use super::{edges, ground};
use crate::documents::figures::pen::{INK, PALE, SOFT, SOLID, TINT, filled, outlined};
use crate::press::drawing::PagePoint;
use crate::press::frame::Frame;

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    for slab in &view.slabs {
        let places: Vec<PagePoint> = ground::polygon(&slab.outline, scale);
        if slab.is_step {
            sheet.draw(Layer::Step, outlined(&places, Some(PALE), 1.3));
            for (from, to) in &slab.treads {
                let ends = [scale.place(*from), scale.place(*to)];
                sheet.line(Layer::Step, &ends, INK, 0.7, SOLID);
            }
            sheet
                .marks
                .push(ground::extent(&slab.outline, scale).grown(1.5));
        } else {
            sheet.draw(Layer::Fill, filled(&places, TINT));
            sheet.ground.extend(ground::bands(&slab.outline, scale));
            let dash = if slab.is_sawn { SAWN } else { JOINT };
            for joint in &slab.joints {
                let path: Vec<PagePoint> = joint.iter().map(|at| scale.place(*at)).collect();
                let pieces = path.windows(2);
                let taken = pieces.map(|ends| Frame::around(ends[0], ends[1]).grown(0.4));
                sheet.joints.extend(taken);
                sheet.line(Layer::Joint, &path, INK, 0.7, dash);
            }
        }
        edges::draw(sheet, slab, view.accent, scale);
        chords(sheet, slab, scale);
    }
}

/// Dots along the chord of a bulged side, where the dimension of the bow begins.
fn chords(sheet: &mut Sheet, slab: &SlabView, scale: Scale) {
    if slab.outline.is_circle().is_some() || slab.outline.is_sector().is_some() {
        return;
    }
    for side in slab.outline.sides().iter().filter(|s| !s.is_straight()) {
        let ends = [scale.place(side.from), scale.place(side.to)];
        sheet.line(Layer::Joint, &ends, SOFT, 0.5, DOTS);
    }
}
