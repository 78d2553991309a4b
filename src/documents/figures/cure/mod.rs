//! The cure figure: a band of strength above, a bar for each use below, one axis of days.
//!
//! 516 points wide, at most 288 high. The band runs from cool (dashed) to warm
//! (solid); a bar is open while the slab must wait, hatched where it depends on
//! the weather, solid once it may be used. Dotted drops join the two.

mod alternative;
mod axes;
mod band;
mod bars;
mod key;
#[cfg(test)]
mod laws;
mod view;
mod words;

pub use view::CureView;
pub use words::CureWords;

use crate::press::drawing::{Drawing, Size};

/// Draws the figure.
pub fn cure(view: &CureView) -> Drawing {
    let (axes, bars) = bars::fitted(view);
    let mut shapes = band::grid(view, &axes);
    shapes.extend(band::band(view, &axes));
    shapes.extend(band::drops(view, &axes, &bars));
    shapes.extend(band::labels(view, &axes));
    shapes.extend(bars::draw(view, &axes, &bars));
    shapes.extend(key::key(view, &axes, &bars));
    Drawing {
        size: Size::new(axes::WIDTH, axes.height()),
        shapes,
        alternative: alternative::alternative(view, &axes, &bars),
    }
}
