//! The words of a dimension row: on the line where they fit, else beside it.

use super::lengths;
use super::rows::{DimensionRow, RowEnd};
use super::sheet::Sheet;
use super::widths::{frame_of, width_of};
use crate::documents::figures::pen::centered;
use crate::geometry::Compass;
use crate::press::drawing::{Anchor, Face, Turn, Words, point};
use crate::press::frame::Frame;
use crate::values::Length;

const SIZE: f32 = 8.0;
/// From a digit's middle down to its foot.
const DOWN: f32 = SIZE * 0.35;

/// The words of a row at `out`, and whether all keep clear of everything.
pub(super) fn of_row(
    sheet: &Sheet,
    row: DimensionRow,
    stops: &[RowEnd],
    out: f32,
    suffix: &str,
) -> (Vec<Words>, bool) {
    let mut texts: Vec<Words> = Vec::new();
    let mut clear = true;
    for pair in stops.windows(2) {
        let length = Length::nanometres(pair[1].site - pair[0].site);
        let text = format!("{}{suffix}", lengths::dimension(length));
        let mut places = places(row, &text, pair, out);
        let free = |words: &Words| {
            let frame = frame_of(words).grown(1.0);
            let own = texts
                .iter()
                .any(|other| frame_of(other).grown(1.0).overlaps(&frame));
            !own && !on_row(row, stops, pair, out, &frame) && sheet.is_free(&frame)
        };
        let chosen = places.iter().position(free);
        clear &= chosen.is_some();
        texts.push(places.swap_remove(chosen.unwrap_or(0)));
    }
    (texts, clear)
}

/// Whether words stand on a tick or on another part's line.
fn on_row(row: DimensionRow, stops: &[RowEnd], own: &[RowEnd], out: f32, frame: &Frame) -> bool {
    let on_tick = stops.iter().any(|stop| {
        let tick = row.place(stop.along, out);
        Frame::around(tick, tick).grown(2.4).overlaps(frame)
    });
    let others = stops.windows(2).filter(|pair| pair[0].site != own[0].site);
    on_tick
        || others
            .into_iter()
            .any(|pair| row.bar(pair, out, 0.5).overlaps(frame))
}

/// Where the words of one part may stand, best first.
fn places(row: DimensionRow, text: &str, pair: &[RowEnd], out: f32) -> Vec<Words> {
    let wide = width_of(text, Face::Regular, SIZE);
    let middle = f32::midpoint(pair[0].along, pair[1].along);
    if wide + 10.0 < pair[1].along - pair[0].along {
        return vec![on_line(row, text, middle, out)];
    }
    let beyond = wide / 2.0 + 5.0;
    let ends = [pair[1].along + beyond, pair[0].along - beyond];
    let past_ends = ends.map(|along| on_line(row, text, along, out));
    let beside = if row.is_level() {
        [7.5, -7.5].map(|by| on_line(row, text, middle, out + by))
    } else {
        [5.0, -5.0].map(|by| upright(row, text, middle, out, by))
    };
    // Words that read left to right beat words that have to be turned.
    if row.is_level() {
        past_ends.into_iter().chain(beside).collect()
    } else {
        beside.into_iter().chain(past_ends).collect()
    }
}

fn on_line(row: DimensionRow, text: &str, along: f32, out: f32) -> Words {
    let at = row.place(along, out);
    let mut words = centered(text, point(at.x, at.y + DOWN), SIZE);
    words.halo = true;
    if !row.is_level() {
        words.at = point(at.x + DOWN, at.y);
        words.turn = Turn::Up;
    }
    words
}

/// Level words beside an upright line, `by` further out.
fn upright(row: DimensionRow, text: &str, along: f32, out: f32, by: f32) -> Words {
    let at = row.place(along, out + by);
    let mut words = centered(text, point(at.x, at.y + DOWN), SIZE);
    words.halo = true;
    let to_the_right = (row.facing == Compass::East) == (0.0 < by);
    words.anchor = if to_the_right {
        Anchor::Start
    } else {
        Anchor::End
    };
    words
}
