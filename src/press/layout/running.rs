//! What stands on every page: the accent mark or a band, the running head, the foot.

use super::block::{Band, Flow, Inking};
use super::compose::Composer;
use super::error::LayoutError;
use super::style::{Style, grid};
use crate::press::drawing::{Path, Rgb, point};
use crate::press::frame::Frame;
use crate::press::page::{Mark, Owner};
use crate::press::text::Rich;

/// Baseline of the running head and of the foot.
const HEAD_BASELINE: f32 = grid::TOP + 9.0;
const FOOT_BASELINE: f32 = grid::FOOT + 9.0;
/// The running words never reach into the page number.
const FOOT_WIDTH: f32 = 420.0;

/// The marks before and after a page's own.
///
/// What does not fit on the first line of running words is left off.
pub(super) fn running(
    composer: &Composer<'_>,
    flow: &Flow,
    page: usize,
    count: usize,
) -> Result<(Vec<Mark>, Vec<Mark>), LayoutError> {
    let mut before = match &flow.band {
        Some(words) => band(composer, words)?,
        None => vec![block(32.0, 4.0, composer.look.accent)],
    };
    let mut after = Vec::new();
    if let (Some(words), true) = (&flow.running_head, 0 < page) {
        let manner = composer.manner(Style::Note, Inking::Ink);
        if let Some(line) = composer.first_line(words, manner, grid::RIGHT - grid::LEFT)? {
            let at = point(grid::LEFT, HEAD_BASELINE);
            before.extend(composer.line(line, manner, at, Owner::Header));
        }
    }
    let foot = if page == 0 {
        &flow.first_foot
    } else {
        &flow.foot
    };
    if let Some(words) = foot {
        // Under a band the foot is a warning too.
        let ink = if flow.band.is_some() {
            Inking::Ink
        } else {
            Inking::Soft
        };
        let manner = composer.manner(Style::Note, ink);
        if let Some(line) = composer.first_line(words, manner, FOOT_WIDTH)? {
            let at = point(grid::LEFT, FOOT_BASELINE);
            after.extend(composer.line(line, manner, at, Owner::Footer));
        }
    }
    if let Some(number) = &flow.page_number {
        let words = number
            .replace("{n}", &(page + 1).to_string())
            .replace("{m}", &count.to_string());
        let manner = composer.manner(Style::Note, Inking::Soft);
        if let Some(line) = composer.first_line(&Rich::plain(words), manner, f32::INFINITY)? {
            let at = point(grid::RIGHT - line.width, FOOT_BASELINE);
            after.extend(composer.line(line, manner, at, Owner::Footer));
        }
    }
    Ok((before, after))
}

/// A block of colour at the head of the page.
fn block(width: f32, height: f32, color: Rgb) -> Mark {
    let place = Frame::at(grid::LEFT, 33.0, width, height);
    Mark::layout(Path::closed(&place.corners(), None, Some(color)))
}

/// White words on ink, at either end of the band.
fn band(composer: &Composer<'_>, band: &Band) -> Result<Vec<Mark>, LayoutError> {
    const HEIGHT: f32 = 18.0;
    const INSIDE: f32 = 8.0;
    let width = grid::RIGHT - grid::LEFT;
    let mut marks = vec![block(width, HEIGHT, composer.look.ink)];
    let mut manner = composer.manner(Style::Body, Inking::Ink).bold();
    manner.color = Rgb::WHITE;
    let mut room = width - 2.0 * INSIDE;
    for (words, at_right) in [(&band.words, false), (&band.beside, true)] {
        if let Some(line) = composer.first_line(words, manner, room)? {
            room -= line.width + grid::GUTTER;
            let x = if at_right {
                grid::RIGHT - INSIDE - line.width
            } else {
                grid::LEFT + INSIDE
            };
            marks.extend(composer.line(line, manner, point(x, 45.3), Owner::Header));
        }
    }
    Ok(marks)
}
