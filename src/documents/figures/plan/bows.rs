//! The rise of a bulged side, measured inside the bow.

use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{PlanView, SlabView};
use super::widths::frame_of;
use super::{ground, lengths};
use crate::documents::figures::pen::{INK, TINT, arrow, filled, words};
use crate::geometry::Side;
use crate::press::drawing::{Anchor, PagePoint, point};
use crate::press::frame::Frame;

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    let round = |slab: &&SlabView| {
        let by_radius = slab.outline.is_circle().or(slab.outline.is_sector());
        by_radius.is_none() && !slab.is_step
    };
    for slab in view.slabs.iter().filter(round) {
        // Both edges of a path bow around the same middle; its right one says it for both.
        let path = slab.outline.is_path();
        let sides = slab.outline.sides().iter();
        let said = sides.filter(|side| path.is_none_or(|right| side.leg < right));
        for side in said.filter(|side| !side.is_straight()) {
            bow(sheet, slab, side, scale);
        }
    }
}

fn bow(sheet: &mut Sheet, slab: &SlabView, side: &Side, scale: Scale) {
    let (from, to) = (scale.place(side.from), scale.place(side.to));
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = libm::sqrtf(dx * dx + dy * dy).max(0.001);
    let rise = scale.length(side.bulge);
    let text = lengths::dimension(side.bulge.abs());
    // Beside the middle, where a joint often runs; the arc hardly falls off there.
    let options = [9.0, -9.0, 18.0, -18.0, 27.0, -27.0, 0.0].map(|off| {
        let share = (0.5 + off / long).clamp(0.05, 0.95);
        let high = height(rise, long, share);
        let foot = point(from.x + dx * share, from.y + dy * share);
        let top = point(foot.x - dy / long * high, foot.y + dx / long * high);
        (foot, top)
    });
    let label = |(foot, top): &(PagePoint, PagePoint)| {
        let at = point(
            f32::midpoint(foot.x, top.x) + 4.0,
            f32::midpoint(foot.y, top.y) + 2.8,
        );
        let mut words = words(text.clone(), at, 8.0);
        // A bow that looks east or west is named on the slab's side, where there is room.
        if libm::fabsf(dx) < libm::fabsf(dy) {
            let y = foot.y + 2.8;
            if 0.0 < dy {
                words.at = point(foot.x.max(top.x) + 3.0, y);
            } else {
                words.anchor = Anchor::End;
                words.at = point(foot.x.min(top.x) - 3.0, y);
            }
        }
        words
    };
    let free = |place: &&(PagePoint, PagePoint)| {
        let frame = frame_of(&label(place)).grown(1.0);
        !frame.overlaps_any(&sheet.marks)
    };
    let clear = |place: &&(PagePoint, PagePoint)| {
        let frame = frame_of(&label(place)).union(&Frame::around(place.0, place.1));
        free(place) && !frame.overlaps_any(&sheet.joints)
    };
    let place = options.iter().find(clear);
    let place = place.or_else(|| options.iter().find(free));
    let place = place.unwrap_or(&options[0]);
    for shape in double_arrow(place.0, place.1) {
        sheet.draw(Layer::Dimension, shape);
    }
    sheet.marks.push(Frame::around(place.0, place.1).grown(2.0));
    let label = label(place);
    let frame = frame_of(&label);
    if ground::holds(&ground::polygon(&slab.outline, scale), &frame) {
        let behind = frame.corners();
        sheet.draw(Layer::Strip, filled(&behind, TINT));
    }
    sheet.write(Layer::Dimension, label);
}

/// Height of an arc over its chord, at a share of the chord.
fn height(rise: f32, long: f32, share: f32) -> f32 {
    let half = long / 2.0;
    let tall = libm::fabsf(rise).max(0.001);
    let radius = (half * half + tall * tall) / (2.0 * tall);
    let off = (share - 0.5) * long;
    let height = libm::sqrtf((radius * radius - off * off).max(0.0)) - (radius - tall);
    libm::copysignf(height, rise)
}

fn double_arrow(a: PagePoint, b: PagePoint) -> Vec<crate::press::drawing::Shape> {
    let middle = point(f32::midpoint(a.x, b.x), f32::midpoint(a.y, b.y));
    let long = libm::fabsf(b.x - a.x) + libm::fabsf(b.y - a.y);
    let head = (long / 3.0).min(4.0);
    let mut shapes = arrow(middle, a, INK, 0.6, head);
    shapes.extend(arrow(middle, b, INK, 0.6, head));
    shapes
}
