//! Which way water runs: one arrow in a row of panels at most, three in a slab at most.

use super::ground;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{PlanView, SlabView};
use crate::documents::figures::pen::arrow;
use crate::geometry::Direction;
use crate::press::drawing::{PagePoint, point};
use crate::press::frame::Frame;

/// Draws arrows in panels that are not `taken`, and takes those.
pub(super) fn draw(
    sheet: &mut Sheet,
    view: &PlanView,
    slab: &SlabView,
    scale: Scale,
    panels: &[Frame],
    taken: &mut Vec<usize>,
) {
    let Some(fall) = slab.fall else { return };
    let ground = ground::polygon(&slab.outline, scale);
    let mut rows: Vec<f32> = Vec::new();
    let mut placed: Vec<usize> = Vec::new();
    for (i, panel) in panels.iter().enumerate() {
        let row_has_one = rows.iter().any(|top| libm::fabsf(top - panel.top) < 0.5);
        let room = panel.width().min(panel.height());
        if row_has_one || taken.contains(&i) || room < 14.0 {
            continue;
        }
        let ends = ends(panel, fall);
        let frame = Frame::around(ends[0], ends[1]);
        if ground::holds(&ground, &frame) && !frame.grown(3.0).overlaps_any(&sheet.marks) {
            rows.push(panel.top);
            placed.push(i);
        }
    }
    // First, middle and last row say enough on a long walk.
    if 3 < placed.len() {
        placed = vec![
            placed[0],
            placed[placed.len() / 2],
            placed[placed.len() - 1],
        ];
    }
    for i in placed {
        let ends = ends(&panels[i], fall);
        for shape in arrow(ends[0], ends[1], view.accent, 0.9, 7.0) {
            sheet.draw(Layer::Fall, shape);
        }
        sheet.marks.push(Frame::around(ends[0], ends[1]).grown(3.0));
        taken.push(i);
    }
}

/// Tail and tip around the middle of a panel.
fn ends(panel: &Frame, fall: Direction) -> [PagePoint; 2] {
    let (ux, uy) = way(fall);
    let along = libm::fabsf(ux) * panel.width() + libm::fabsf(uy) * panel.height();
    let half = (along * 0.33).min(17.0);
    let middle = panel.middle();
    [-half, half].map(|by| point(middle.x + ux * by, middle.y + uy * by))
}

/// On paper, y downward.
fn way(direction: Direction) -> (f32, f32) {
    let slant = core::f32::consts::FRAC_1_SQRT_2;
    match direction {
        Direction::North => (0.0, -1.0),
        Direction::NorthEast => (slant, -slant),
        Direction::East => (1.0, 0.0),
        Direction::SouthEast => (slant, slant),
        Direction::South => (0.0, 1.0),
        Direction::SouthWest => (-slant, slant),
        Direction::West => (-1.0, 0.0),
        Direction::NorthWest => (-slant, -slant),
    }
}
