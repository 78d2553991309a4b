//! Names and panel sizes inside the slabs, each in a panel of its own where there is room.

use super::block::Block;
use super::scale::Scale;
use super::sheet::{Layer, Sheet};
use super::view::{PanelView, PlanView, SlabView};
use super::widths::frame_of;
use super::{falls, ground};
use crate::documents::figures::pen::{PALE, SOFT, TINT, centered};
use crate::press::drawing::{PagePoint, point};
use crate::press::frame::Frame;

/// Steps first: slabs write around them.
pub(super) fn draw_inside(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    let (steps, slabs): (Vec<&SlabView>, Vec<&SlabView>) =
        view.slabs.iter().partition(|slab| slab.is_step);
    for step in steps {
        let frame = ground::extent(&step.outline, scale);
        let block = Block::of(step, 8.5, 8.0);
        if let Some(kept) = [block.clone(), block.name_only()]
            .into_iter()
            .find(|b| b.wide + 4.0 < frame.width() && b.tall + 2.0 < frame.height())
        {
            let over_treads = (!step.treads.is_empty()).then_some(PALE);
            kept.write(sheet, frame.middle(), over_treads);
        }
    }
    for slab in slabs {
        let all: Vec<Frame> = slab.panels.iter().map(|p| panel_frame(p, scale)).collect();
        let mut taken: Vec<usize> = Vec::new();
        if let Some((block, at)) = inside(sheet, slab, &all, scale) {
            let frame = block.frame(at);
            taken.extend((0..all.len()).filter(|&i| all[i].overlaps(&frame)));
            block.write(sheet, at, Some(TINT));
        }
        falls::draw(sheet, view, slab, scale, &all, &mut taken);
        sizes(sheet, slab, &all, &taken, scale);
    }
}

/// Names that found no room inside stand beside their slab.
pub(super) fn draw_beside(sheet: &mut Sheet, view: &PlanView, scale: Scale) {
    for slab in &view.slabs {
        let block = Block::of(slab, 9.5, 8.5);
        let frame = ground::extent(&slab.outline, scale);
        if block.is_written(sheet, &frame) {
            continue;
        }
        let (x, y) = (frame.middle().x, frame.middle().y);
        let (wide, tall) = (block.wide / 2.0 + 4.0, block.tall / 2.0 + 4.0);
        let around = (0_u8..16).flat_map(|n| {
            let far = f32::from(n) * 4.0;
            [
                point(x, frame.top - tall - far),
                point(x, frame.bottom + tall + far),
                point(frame.right + wide + far, y),
                point(frame.left - wide - far, y),
                point(frame.left + wide, frame.bottom + tall + far),
                point(frame.left + wide, frame.top - tall - far),
                point(frame.right + wide + far, frame.top + tall),
                point(frame.right + wide + far, frame.bottom - tall),
            ]
        });
        let blocks = [block.clone(), block.name_only()];
        let free = |(block, at): &(&Block, PagePoint)| {
            let wanted = block.frame(*at);
            // A step lies on a slab, so it may be named on the slab; a flight lies beside one.
            if slab.is_step && slab.treads.is_empty() {
                !wanted.overlaps_any(&sheet.marks) && !wanted.overlaps_any(&sheet.lines)
            } else {
                sheet.is_free(&wanted)
            }
        };
        // Best where no other slab is as near.
        let own = |(block, at): &(&Block, PagePoint)| {
            let wanted = block.frame(*at);
            let mut others = sheet.ground.iter().filter(|g| !g.overlaps(&frame));
            slab.is_step || others.all(|other| frame.gap(&wanted) < other.gap(&wanted))
        };
        let places: Vec<(&Block, PagePoint)> = around
            .flat_map(|at| blocks.iter().map(move |b| (b, at)))
            .filter(free)
            .collect();
        let place = places
            .iter()
            .find(|place| own(place))
            .or(places.first())
            .copied();
        if let Some((block, at)) = place {
            block.clone().write(
                sheet,
                at,
                (slab.is_step && slab.treads.is_empty()).then_some(TINT),
            );
        }
    }
}

/// Where the name goes inside the slab, and how much of it.
fn inside(
    sheet: &Sheet,
    slab: &SlabView,
    panels: &[Frame],
    scale: Scale,
) -> Option<(Block, PagePoint)> {
    let whole = ground::extent(&slab.outline, scale);
    let block = Block::of(slab, 9.5, 8.5);
    let center = whole.middle();
    let mut at: Vec<PagePoint> = panels.iter().map(Frame::middle).collect();
    at.sort_by(|a, b| distance(*a, center).total_cmp(&distance(*b, center)));
    let ground = ground::polygon(&slab.outline, scale);
    let fits = |block: &Block, at: PagePoint, home: &Frame| {
        let frame = block.frame(at);
        home.grown(-3.0).contains(&frame)
            && !frame.overlaps_any(&sheet.marks)
            && ground::holds(&ground, &frame)
    };
    for block in [block.clone(), block.name_only()] {
        for &middle in &at {
            let home = panels.iter().find(|p| distance(p.middle(), middle) < 0.01);
            let places = home.map(|home| (home, [middle, block.nudged(home, center)]));
            let place = places.and_then(|(home, places)| {
                let mut places = places.into_iter();
                places.find(|&at| fits(&block, at, home))
            });
            if let Some(at) = place {
                return Some((block, at));
            }
        }
    }
    // Over the joints, as long as the slab itself has room.
    for block in [block.clone(), block.name_only()] {
        for &at in [center].iter().chain(&at) {
            let frame = block.frame(at);
            if ground::holds(&ground, &frame) && !frame.overlaps_any(&sheet.marks) {
                return Some((block, at));
            }
        }
    }
    None
}

/// Each panel size once, in the first panel with room.
fn sizes(sheet: &mut Sheet, slab: &SlabView, panels: &[Frame], taken: &[usize], scale: Scale) {
    let ground = ground::polygon(&slab.outline, scale);
    let mut said: Vec<&str> = Vec::new();
    for (i, panel) in slab.panels.iter().enumerate() {
        if panel.size.is_empty() || taken.contains(&i) || said.contains(&panel.size.as_str()) {
            continue;
        }
        let middle = panels[i].middle();
        let mut label = centered(panel.size.clone(), point(middle.x, middle.y + 3.0), 8.5);
        label.color = SOFT;
        let frame = frame_of(&label).grown(3.0);
        let fits = panels[i].contains(&frame) && ground::holds(&ground, &frame);
        if fits && !frame.overlaps_any(&sheet.marks) {
            said.push(&panel.size);
            sheet.write(Layer::Name, label);
        }
    }
}

fn panel_frame(panel: &PanelView, scale: Scale) -> Frame {
    let corners: Vec<PagePoint> = panel.corners.iter().map(|at| scale.place(*at)).collect();
    ground::room(&corners)
}

fn distance(a: PagePoint, b: PagePoint) -> f32 {
    libm::fabsf(a.x - b.x) + libm::fabsf(a.y - b.y)
}
