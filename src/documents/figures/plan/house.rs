//! The word for the house, once, on the longest wall.

use super::edges::DEPTH;
use super::kinds::EdgeMark;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::PlanView;
use super::widths::{frame_of, width_of};
use crate::documents::figures::pen::centered;
use crate::geometry::Compass;
use crate::press::drawing::{Face, Turn, point};

pub(super) fn draw(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    let walls = view.slabs.iter().flat_map(|slab| {
        slab.edges
            .iter()
            .filter(|edge| edge.kind == EdgeMark::House)
            .map(move |edge| (slab, edge))
    });
    let Some((slab, edge)) = walls.max_by_key(|(slab, e)| (!slab.is_step, e.to - e.from)) else {
        return;
    };
    let Some(side) = slab.outline.sides().get(edge.side) else {
        return;
    };
    let (from, to) = (scale.place(side.from), scale.place(side.to));
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = libm::sqrtf(dx * dx + dy * dy).max(0.001);
    let room = scale.length(edge.to - edge.from) + DEPTH;
    let text = view.words.house;
    if room < width_of(text, Face::Bold, 8.5) + 4.0 {
        return;
    }
    let along = f32::midpoint(scale.length(edge.from), scale.length(edge.to)) / long;
    let out = DEPTH / 2.0;
    let (x, y) = (
        from.x + dx * along - dy / long * out,
        from.y + dy * along + dx / long * out,
    );
    let mut label = centered(text, point(x, y + 3.0), 8.5);
    label.face = Face::Bold;
    label.halo = true;
    if matches!(side.facing(), Some(Compass::East | Compass::West)) {
        label.turn = Turn::Up;
        label.at = point(x + 3.0, y);
    }
    if !frame_of(&label).overlaps_any(&sheet.marks) {
        sheet.write(Layer::Dimension, label);
    }
}
