//! Where a strip of even width is cut, by how far along it.

use super::cuts;
use super::ground::{CLEAR, Ground, REACH};
use super::score::{Score, Sides};
use crate::geometry::point::Point;

/// A strip, straight or not, by its middle line.
pub(super) struct Strip {
    pub long: i64,
    pub wide: i64,
    /// How many panels lie side by side across it.
    pub rows: i64,
    /// How much longer its outer edge is than its middle line, in thousandths.
    pub outer: i64,
    pub is_closed: bool,
}

/// More parts than needed that are tried.
const FINER: i64 = 24;

/// `place` tells how far along the strip a place on it lies.
pub(super) fn cuts(
    ground: &Ground<'_>,
    strip: &Strip,
    place: &dyn Fn(Point) -> Option<i64>,
) -> Vec<i64> {
    let mut marks: Vec<(i64, bool)> = Vec::new();
    for meet in ground.asked.meet {
        marks.extend(place(meet.at).map(|far| (far, meet.must)));
    }
    // What lies in it is cut through its middle when it is small, else along both its ends.
    let mut things: Vec<(i64, i64)> = Vec::new();
    for thing in &ground.things {
        let middle = Point::new(
            i64::midpoint(thing.low.x, thing.high.x),
            i64::midpoint(thing.low.y, thing.high.y),
        );
        let Some(middle) = place(middle) else {
            continue;
        };
        let ends = thing.ring.iter().filter_map(|edge| place(edge.at));
        let half = ends.map(|far| (far - middle).abs()).max().unwrap_or(0);
        things.push((
            middle,
            if thing.is_small || thing.is_round {
                0
            } else {
                half
            },
        ));
    }
    let mut places: Vec<i64> = marks.iter().map(|mark| mark.0).collect();
    places.extend(
        things
            .iter()
            .flat_map(|&(middle, half)| [middle - half, middle + half]),
    );
    // A ring begins at the first of them.
    let origin = if strip.is_closed {
        places.first().copied().unwrap_or(0)
    } else {
        0
    };
    let around = |far: i64| {
        if strip.is_closed {
            (far - origin).rem_euclid(strip.long)
        } else {
            far
        }
    };
    let mut inner: Vec<i64> = places.iter().map(|far| around(*far)).collect();
    inner.retain(|far| REACH < *far && *far < strip.long - REACH);
    inner.sort_unstable();
    inner.dedup_by(|a, b| *a - *b <= REACH);
    let longest = ground.longest * 1000 / strip.outer;
    let least = (strip.long - 20_000).div_euclid(longest) + 1;
    let wide = strip.wide / strip.rows;
    let finer = if strip.wide < ground.narrow {
        0
    } else {
        (3 * strip.long / (2 * wide).max(1) - least).clamp(1, FINER)
    };
    let sets = cuts::candidates(
        strip.long,
        &inner,
        longest,
        (
            least.max(if strip.is_closed { 2 } else { 1 }),
            least + finer,
        ),
    );
    let judged = sets.into_iter().map(|mut set| {
        if strip.is_closed {
            set.insert(0, 0);
        }
        let mut score = Score::default();
        let mut cost = i64::try_from(set.len()).unwrap_or(0) * strip.wide;
        let nearest = |far: i64| {
            set.iter()
                .map(|cut| (cut - around(far)).abs())
                .min()
                .unwrap_or(i64::MAX)
        };
        for &(far, must) in &marks {
            if REACH < nearest(far) {
                if must {
                    score.hard += 1
                } else {
                    cost += ground.spacing / 2
                }
            }
        }
        for &(middle, half) in &things {
            for end in [middle - half, middle + half] {
                if REACH < nearest(end) {
                    score.cracks += if nearest(end) < CLEAR { 1000 } else { 600 };
                }
            }
        }
        score.cost = cost / 1_000_000;
        let whole = (strip.long, set.clone());
        let inner = if strip.is_closed { &set[1..] } else { &set[..] };
        for (part, many) in cuts::parts(whole.0, inner) {
            let sizes = |long: i64| [long.max(wide), long.min(wide)];
            let mut each = ground.of_sides(&Sides {
                size: sizes(part * strip.outer / 1000),
                mean: sizes(part),
                cut_wide: Some(if strip.rows == 1 {
                    part
                } else {
                    part.min(wide)
                }),
                is_strip: strip.rows == 1 && wide <= part,
                sharp: 0,
                doubled: 2 * i128::from(part) * i128::from(wide),
            });
            each.long *= many * strip.rows;
            each.cracks *= many * strip.rows;
            each.cost *= many * strip.rows;
            each.uneven *= many * strip.rows;
            score += each;
        }
        (score, set)
    });
    let best = judged.min().map(|best| best.1).unwrap_or_default();
    best.into_iter()
        .map(|far| (far + origin) % strip.long.max(1))
        .collect()
}
