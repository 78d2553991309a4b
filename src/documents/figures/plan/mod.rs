//! The plan: slabs, joints, edges, fall and dimensions, to scale.
//!
//! The scale is the largest on an architect's rule at which the site, its
//! dimensions and the key fit in 516 by 252 points. Nothing here computes a
//! quantity: outlines and words arrive finished.

mod alternative;
mod arrange;
mod block;
mod bows;
mod boxes;
mod dimensions;
mod edges;
mod falls;
mod ground;
mod house;
mod key;
mod kinds;
mod labels;
mod lengths;
mod levels;
mod names;
mod openings;
mod pins;
mod rows;
mod scale;
mod sheet;
mod slabs;
mod slants;
#[cfg(test)]
mod tests;
mod view;
mod widths;
mod words;

pub use kinds::{Crossed, EdgeMark};
pub use view::{BoxView, EdgeView, OpeningView, PanelView, PlanView, SlabView};
pub use words::ENGLISH;

use crate::press::drawing::{Drawing, Size};
use scale::{SCALES, Scale};
use sheet::Sheet;

/// Draws the plan as large as it fits.
pub fn plan(view: &PlanView) -> Drawing {
    for scale in SCALES {
        let (site, key) = drawn(view, scale);
        if let Ok((sheet, size)) = arrange::arranged(site, &key, view, scale) {
            return sheet.finished(size, alternative::text(view, scale));
        }
    }
    // More than 1,800 ft of site: shown small at the top left rather than not at all.
    let scale = SCALES[SCALES.len() - 1];
    let (site, _) = drawn(view, scale);
    let extent = site.extent();
    let size = Size::new(arrange::WIDTH, arrange::HEIGHT);
    site.moved(-extent.left, -extent.top)
        .finished(size, alternative::text(view, scale))
}

/// The site alone, with everything said on and around the slabs.
fn drawn(view: &PlanView, scale: Scale) -> (Sheet, key::Key) {
    let mut sheet = Sheet::default();
    slabs::draw(&mut sheet, view, scale);
    openings::draw(&mut sheet, view, scale);
    house::draw(&mut sheet, view, scale);
    bows::draw(&mut sheet, view, scale);
    boxes::draw(&mut sheet, view, scale);
    for slab in &view.slabs {
        levels::draw(&mut sheet, slab, scale);
    }
    names::draw_inside(&mut sheet, view, scale);
    slants::draw(&mut sheet, view, scale);
    dimensions::draw(&mut sheet, view, scale);
    names::draw_beside(&mut sheet, view, scale);
    let key = key::Key::of(view, &sheet);
    (sheet, key)
}
