//! Puts the drawn site, the key, the scale bar and the north arrow on one figure.

use super::ground;
use super::key::{self, Key, NORTH};
use super::scale::Scale;
use super::sheet::Sheet;
use super::view::PlanView;
use crate::press::drawing::Size;
use crate::press::frame::Frame;

pub(super) const WIDTH: f32 = 516.0;
pub(super) const HEIGHT: f32 = 252.0;
/// The page's axis, where the largest slab begins if it can.
const AXIS: f32 = 264.0;
const GAP: f32 = 10.0;

/// Where everything goes.
struct Places {
    key: Frame,
    bar: Frame,
    north: Frame,
}

/// The whole figure at this scale, as low as it can be; nothing when it does not fit.
pub(super) fn arranged(
    sheet: Sheet,
    key: &Key,
    view: &PlanView,
    scale: Scale,
) -> Result<(Sheet, Size), Sheet> {
    let extent = sheet.extent();
    if WIDTH < extent.width() || HEIGHT < extent.height() {
        return Err(sheet);
    }
    let lefts = lefts(&extent, view, scale);
    let mut sheet = sheet.moved(-extent.left, -extent.top);
    let mut at = 0.0;
    let mut height = extent.height();
    while height <= HEIGHT {
        for &left in &lefts {
            sheet = sheet.moved(left - at, 0.0);
            at = left;
            if let Some(places) = placed(&sheet, key, view, scale, height) {
                key.draw(&mut sheet, &places.key, view);
                key::draw_bar(&mut sheet, &places.bar, scale, view.words.feet);
                key::draw_north(&mut sheet, &places.north, view.words.north);
                return Ok((sheet, Size::new(WIDTH, libm::ceilf(height))));
            }
        }
        height += 3.0;
    }
    Err(sheet.moved(extent.left - at, extent.top))
}

/// Where the site's left edge may lie, best first.
fn lefts(extent: &Frame, view: &PlanView, scale: Scale) -> Vec<f32> {
    let right = WIDTH - extent.width();
    let slabs = view.slabs.iter().filter(|slab| !slab.is_step);
    let main = slabs.max_by_key(|slab| slab.outline.area());
    let on_axis = main.map(|slab| {
        let edge = ground::extent(&slab.outline, scale).left - extent.left;
        AXIS - edge
    });
    let mut lefts: Vec<f32> = on_axis
        .into_iter()
        .filter(|x| (0.0..=right).contains(x))
        .collect();
    lefts.extend([0.0, right]);
    lefts
}

/// Key above scale bar at a margin, or side by side; then north.
fn placed(sheet: &Sheet, key: &Key, view: &PlanView, scale: Scale, height: f32) -> Option<Places> {
    let (key_wide, key_tall) = key.size();
    let (bar_wide, bar_tall) = key::bar_size(scale, view.words.feet);
    let free = |frame: &Frame| {
        0.0 <= frame.left
            && frame.right <= WIDTH
            && 0.0 <= frame.top
            && frame.bottom <= height
            && sheet.is_free(&frame.grown(GAP / 2.0))
    };
    let stacked = |left: f32, bottom: f32| {
        let bar = Frame::at(left, bottom - bar_tall, bar_wide, bar_tall);
        (
            Frame::at(left, bar.top - 16.0 - key_tall, key_wide, key_tall),
            bar,
        )
    };
    let below = |left: f32| {
        let key = Frame::at(left, height - key_tall, key_wide, key_tall);
        let beside = (key.right + 24.0).max(AXIS);
        (
            key,
            Frame::at(beside, height - bar_tall, bar_wide, bar_tall),
        )
    };
    let wide = key_wide.max(bar_wide);
    let tall = key_tall + bar_tall + 16.0;
    let options = [
        stacked(0.0, height),
        stacked(0.0, tall),
        below(0.0),
        stacked(WIDTH - wide, height),
        stacked(WIDTH - wide, tall),
        (
            Frame::at(0.0, height - key_tall, key_wide, key_tall),
            Frame::at(0.0, height - key_tall - 16.0 - bar_tall, bar_wide, bar_tall),
        ),
    ];
    options
        .into_iter()
        .filter(|(key, bar)| free(key) && free(bar))
        .find_map(|(key, bar)| {
            let clear = |frame: &Frame| {
                let room = frame.grown(8.0);
                free(frame) && !room.overlaps(&key) && !room.overlaps(&bar)
            };
            let north = north_places(&key, &bar, height).find(clear)?;
            Some(Places { key, bar, north })
        })
}

/// Above the key first, then along the margins, then wherever there is room.
fn north_places(key: &Frame, bar: &Frame, height: f32) -> impl Iterator<Item = Frame> {
    let (wide, tall) = NORTH;
    let at = move |x: f32, y: f32| Frame::at(x, y, wide, tall);
    let near = [
        at(key.left, key.top.min(bar.top) - 18.0 - tall),
        at(key.right.max(bar.right) + 18.0, height - tall),
        at(key.right + 18.0, key.top),
        at(key.left, 0.0),
    ];
    let steps = (0_u8..=100).map(|n| f32::from(n) * 5.0);
    let margins = [0.0, WIDTH - wide];
    let along = steps
        .clone()
        .flat_map(move |y| margins.map(|x| at(x, height - tall - y)));
    let anywhere = steps.flat_map(move |x| [at(x, height - tall), at(x, 0.0)]);
    near.into_iter().chain(along).chain(anywhere)
}
