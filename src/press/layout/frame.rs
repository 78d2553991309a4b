//! What stands on every page: the accent mark or a band, the running head, the foot.

use super::block::{Band, Flow, Inking};
use super::build::Builder;
use super::error::LayoutError;
use super::mark::{layout, rectangle};
use super::style::{Style, grid};
use crate::press::drawing::{Path, Point, Rgb};
use crate::press::page::{Ink, Mark, Owner};
use crate::press::text::Rich;

/// Baseline of the running head and of the foot.
const HEAD_BASELINE: f32 = grid::TOP + 9.0;
const FOOT_BASELINE: f32 = grid::FOOT + 9.0;
/// The running words never reach into the page number.
const FOOT_WIDTH: f32 = 420.0;

/// The marks before and after a page's own.
pub(super) fn frame(
    builder: &Builder<'_>,
    flow: &Flow,
    page: usize,
    count: usize,
) -> Result<(Vec<Mark>, Vec<Mark>), LayoutError> {
    let mut before = match &flow.band {
        Some(words) => band(builder, words)?,
        None => vec![block(32.0, 4.0, builder.look.accent)],
    };
    let mut after = Vec::new();
    let words = if page == 0 {
        &flow.first_foot
    } else {
        &flow.foot
    };
    if let (Some(head), true) = (&flow.running_head, 0 < page) {
        let at = Point {
            x: grid::LEFT,
            y: HEAD_BASELINE,
        };
        let width = grid::RIGHT - grid::LEFT;
        before.extend(running(
            builder,
            head,
            at,
            width,
            Owner::Header,
            Inking::Ink,
        )?);
    }
    if let Some(words) = words {
        let at = Point {
            x: grid::LEFT,
            y: FOOT_BASELINE,
        };
        // Under a band the foot is a warning too.
        let ink = if flow.band.is_some() {
            Inking::Ink
        } else {
            Inking::Soft
        };
        after.extend(running(builder, words, at, FOOT_WIDTH, Owner::Footer, ink)?);
    }
    if let Some(number) = &flow.page_number {
        let words = number
            .replace("{n}", &(page + 1).to_string())
            .replace("{m}", &count.to_string());
        let manner = builder.manner(Style::Note, Inking::Soft);
        let set = builder.lines(&Rich::plain(words), manner, f32::INFINITY)?;
        for line in set.into_iter().take(1) {
            let at = Point {
                x: grid::RIGHT - line.width,
                y: FOOT_BASELINE,
            };
            after.extend(builder.line(line, manner, at, Owner::Footer));
        }
    }
    Ok((before, after))
}

/// A block of colour at the head of the page.
fn block(width: f32, height: f32, color: Rgb) -> Mark {
    let corner = Point {
        x: grid::LEFT,
        y: 33.0,
    };
    layout(Ink::Path(Path {
        steps: rectangle(corner, width, height),
        stroke: None,
        fill: Some(color),
    }))
}

/// White words on ink, at either end of the band.
fn band(builder: &Builder<'_>, band: &Band) -> Result<Vec<Mark>, LayoutError> {
    const HEIGHT: f32 = 18.0;
    const INSIDE: f32 = 8.0;
    let width = grid::RIGHT - grid::LEFT;
    let mut marks = vec![block(width, HEIGHT, builder.look.ink)];
    let mut manner = builder.manner(Style::Body, Inking::Ink).bold();
    manner.color = Rgb(255, 255, 255);
    let mut room = width - 2.0 * INSIDE;
    for (words, at_right) in [(&band.words, false), (&band.beside, true)] {
        let set = builder.lines(words, manner, room)?;
        for line in set.into_iter().take(1) {
            room -= line.width + grid::GUTTER;
            let x = if at_right {
                grid::RIGHT - INSIDE - line.width
            } else {
                grid::LEFT + INSIDE
            };
            let at = Point { x, y: 45.3 };
            marks.extend(builder.line(line, manner, at, Owner::Header));
        }
    }
    Ok(marks)
}

/// The first line of running words; what does not fit on it is left off.
fn running(
    builder: &Builder<'_>,
    words: &Rich,
    at: Point,
    width: f32,
    owner: Owner,
    ink: Inking,
) -> Result<Vec<Mark>, LayoutError> {
    let manner = builder.manner(Style::Note, ink);
    let set = builder.lines(words, manner, width)?;
    Ok(set
        .into_iter()
        .take(1)
        .flat_map(|line| builder.line(line, manner, at, owner))
        .collect())
}
