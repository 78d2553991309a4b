//! How long slanted sides are: beside them, since no row of dimensions shows it.

use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{PlanView, SlabView};
use super::widths::{frame_of, width_of};
use super::{ground, lengths};
use crate::documents::figures::pen::{TINT, centered, filled};
use crate::geometry::Side;
use crate::press::drawing::{Face, PagePoint, Words, point};

const SIZE: f32 = 8.0;
/// A side shorter than this on paper has no room for words.
const SHORTEST: f32 = 12.0;

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    for slab in view.slabs.iter().filter(|slab| !slab.is_step) {
        for side in slanted(slab) {
            beside(sheet, slab, side, scale);
        }
    }
}

/// The straight sides that run along neither axis.
pub(super) fn slanted(slab: &SlabView) -> impl Iterator<Item = &Side> {
    let sides = slab.outline.sides().iter();
    sides.filter(|side| side.is_straight() && side.facing().is_none())
}

fn beside(sheet: &mut Sheet, slab: &SlabView, side: &Side, scale: Scale) {
    let (from, to) = (scale.place(side.from), scale.place(side.to));
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = libm::sqrtf(dx * dx + dy * dy);
    if long < SHORTEST {
        return;
    }
    let text = lengths::dimension(lengths::of_side(side));
    let (wide, tall) = (width_of(&text, Face::Regular, SIZE), SIZE);
    // On paper y runs downward: with the slab on the left, outward is to the right of the way.
    let (ux, uy) = (-dy / long, dx / long);
    let clear = libm::fabsf(ux) * wide / 2.0 + libm::fabsf(uy) * tall / 2.0 + 2.5;
    let at = |share: f32, out: f32| -> Words {
        let middle = point(
            from.x + dx * share + ux * out,
            from.y + dy * share + uy * out + SIZE * 0.27,
        );
        let mut words = centered(text.clone(), middle, SIZE);
        words.halo = true;
        words
    };
    let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8_f32];
    let outside = [0.0, 3.0, 6.0, 10.0_f32]
        .into_iter()
        .flat_map(|more| shares.map(|share| at(share, clear + more)));
    let free = |words: &Words| sheet.is_free(&frame_of(words));
    if let Some(words) = outside.into_iter().find(free) {
        sheet.write(Layer::Dimension, words);
        return;
    }
    let ground: Vec<PagePoint> = ground::polygon(&slab.outline, scale);
    let inside = shares.map(|share| at(share, -clear - 1.0));
    let fits = |words: &Words| {
        let frame = frame_of(words);
        ground::holds(&ground, &frame) && !frame.overlaps_any(&sheet.marks)
    };
    if let Some(words) = inside.into_iter().find(fits) {
        let behind = frame_of(&words).corners();
        sheet.draw(Layer::Strip, filled(&behind, TINT));
        sheet.write(Layer::Dimension, words);
    }
}
