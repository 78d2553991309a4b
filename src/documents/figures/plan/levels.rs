//! How high the corners lie, beside each of them and inside the slab.

use super::ground;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::SlabView;
use super::widths::{frame_of, width_of};
use crate::documents::figures::pen::centered;
use crate::press::drawing::{Face, point};

const SIZE: f32 = 7.0;

/// Where words stand already none is written: the words of the quote say every level too.
pub(super) fn draw(sheet: &mut Sheet, slab: &SlabView, scale: Scale) {
    let polygon = ground::polygon(&slab.outline, scale);
    for (corner, text) in &slab.levels {
        let corner = scale.place(*corner);
        let wide = width_of(text, Face::Regular, SIZE) / 2.0 + 3.0;
        let tall = SIZE / 2.0 + 3.0;
        let places = [(1.0, 1.0), (-1.0, 1.0), (1.0, -1.0), (-1.0, -1.0_f32)];
        let further = [1.0, 1.6, 2.4_f32];
        let inside = further
            .into_iter()
            .flat_map(|far| places.map(|way| (way, far)));
        let words = inside.map(|((x, y), far)| {
            let (x, y) = (corner.x + x * wide * far, corner.y + y * tall * far);
            let mut words = centered(text.clone(), point(x, y + SIZE * 0.3), SIZE);
            words.halo = true;
            words
        });
        let has_room = |words: &_| {
            let frame = frame_of(words);
            ground::holds(&polygon, &frame) && !frame.overlaps_any(&sheet.marks)
        };
        if let Some(words) = words.into_iter().find(has_room) {
            sheet.write(Layer::Fall, words);
        }
    }
}
