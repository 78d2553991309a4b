//! What stands on every page: the accent mark, the running head, the foot.

use super::block::{Flow, Inking};
use super::build::Builder;
use super::error::LayoutError;
use super::mark::{layout, rectangle};
use super::style::{Style, grid};
use crate::press::drawing::{Path, Point};
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
    let mut before = vec![layout(Ink::Path(Path {
        steps: rectangle(
            Point {
                x: grid::LEFT,
                y: 33.0,
            },
            32.0,
            4.0,
        ),
        stroke: None,
        fill: Some(builder.look.accent),
    }))];
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
        before.extend(running(builder, head, at, width, Owner::Header)?);
    }
    if let Some(words) = words {
        let at = Point {
            x: grid::LEFT,
            y: FOOT_BASELINE,
        };
        after.extend(running(builder, words, at, FOOT_WIDTH, Owner::Footer)?);
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

/// The first line of running words; what does not fit on it is left off.
fn running(
    builder: &Builder<'_>,
    words: &Rich,
    at: Point,
    width: f32,
    owner: Owner,
) -> Result<Vec<Mark>, LayoutError> {
    let ink = match owner {
        Owner::Footer => Inking::Soft,
        Owner::Header | Owner::Layout | Owner::Node(_) => Inking::Ink,
    };
    let manner = builder.manner(Style::Note, ink);
    let set = builder.lines(words, manner, width)?;
    Ok(set
        .into_iter()
        .take(1)
        .flat_map(|line| builder.line(line, manner, at, owner))
        .collect())
}
