//! Where bars lie: row by row across the slab, clipped to its outline, and ended at joints where they are cut.

use crate::geometry::joints::Line;
use crate::geometry::{Point, Side};
use crate::input::business::OrderPolicy;
use crate::input::job::{Layer, Slab};
use crate::input::phrases::SteelAtJoints;
use crate::values::Length;

/// Shorter pieces are left out.
pub(super) const SHORTEST: Length = Length::inches_whole(6);

/// Where bars lie across a width: spacing is a maximum, so one more than the
/// gaps that fit, evenly spread between the covers.
pub(super) fn lines(low: i64, high: i64, spacing: Length, cover: Length) -> Vec<i64> {
    let usable = high - low - 2 * cover.as_nanometres();
    if usable <= 0 {
        return vec![i64::midpoint(low, high)];
    }
    let spacing = spacing.as_nanometres();
    let gaps = (usable + spacing - 1) / spacing;
    (0..=gaps)
        .map(|i| {
            low + cover.as_nanometres()
                + i64::try_from(i128::from(usable) * i128::from(i) / i128::from(gaps))
                    .expect("a part of the width")
        })
        .collect()
}

/// Bars line by line: where the line lies, and where each bar on it begins and ends.
pub(super) type Lines = Vec<(i64, Vec<(i64, i64)>)>;

/// The bars of both ways, east-west first.
pub(super) fn both_ways(slab: &Slab, joints: &[Line], policy: &OrderPolicy) -> [Option<Lines>; 2] {
    let lines = |layer: &Option<Layer>, level| {
        let layer = layer.as_ref()?;
        let cover = policy.cover.value;
        let lines = laid(slab, layer, level, cover);
        Some(match slab.steel_at_joints {
            SteelAtJoints::Through => lines,
            SteelAtJoints::EveryOther => cut(lines, level, joints, cover, 2),
            SteelAtJoints::Cut => cut(lines, level, joints, cover, 1),
        })
    };
    slab.bars.as_ref().map_or([None, None], |bars| {
        [
            lines(&bars.east_west, true),
            lines(&bars.north_south, false),
        ]
    })
}

fn laid(slab: &Slab, layer: &Layer, level: bool, cover: Length) -> Lines {
    let (low, high) = slab.outline.bounds();
    let (from, to) = if level {
        (low.y, high.y)
    } else {
        (low.x, high.x)
    };
    let inward = cover.as_nanometres();
    lines(from, to, layer.spacing.value, cover)
        .into_iter()
        .map(|at| {
            // Without cover the outermost lie along the edge, and are as long as the slab just inside it.
            let within = at.clamp(from + 1, to - 1);
            let spans = if level {
                slab.outline.spans_at_y(within)
            } else {
                slab.outline.spans_at_x(within)
            };
            let bars = spans
                .into_iter()
                .map(|(from, to)| (from + inward, to - inward))
                .filter(|(from, to)| SHORTEST.as_nanometres() <= to - from);
            (at, bars.collect())
        })
        .collect()
}

/// Bars that cross a joint end beside it, as short of it as of an edge; of `every` so many one.
fn cut(mut lines: Lines, level: bool, joints: &[Line], cover: Length, every: usize) -> Lines {
    let inward = cover.as_nanometres();
    // A curved joint goes by its chords.
    let pieces: Vec<(Point, Point)> = joints.iter().flat_map(|line| chords(*line)).collect();
    for (at, spans) in lines.iter_mut().skip(every - 1).step_by(every) {
        let crossed = pieces
            .iter()
            .filter_map(|joint| crossing(*joint, level, *at));
        let mut crossed: Vec<i64> = crossed.collect();
        crossed.sort_unstable();
        crossed.dedup();
        let parts = spans.iter().flat_map(|&(from, to)| {
            let within = crossed
                .iter()
                .copied()
                .filter(move |x| (from + 1..to).contains(x));
            let ends = within.clone().map(|x| x - inward).chain([to]);
            let starts = std::iter::once(from).chain(within.map(|x| x + inward));
            starts.zip(ends)
        });
        let long = parts.filter(|(from, to)| SHORTEST.as_nanometres() <= to - from);
        *spans = long.collect();
    }
    lines
}

fn chords(line: Line) -> Vec<(Point, Point)> {
    let places = Side::from(line).places();
    places.windows(2).map(|pair| (pair[0], pair[1])).collect()
}

/// Where a joint meets the line of a bar; one that runs along it never does.
fn crossing((a, b): (Point, Point), level: bool, at: i64) -> Option<i64> {
    let ((across, along), (across_end, along_end)) = if level {
        ((a.y, a.x), (b.y, b.x))
    } else {
        ((a.x, a.y), (b.x, b.y))
    };
    let meets =
        across != across_end && across.min(across_end) <= at && at <= across.max(across_end);
    meets.then(|| {
        let run = i128::from(along_end - along) * i128::from(at - across);
        let part = run / i128::from(across_end - across);
        along + i64::try_from(part).expect("a part of a joint")
    })
}
