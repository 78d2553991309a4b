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

/// What lies along a strip, by how far: places to meet, and whether the takeoff names them; what lies
/// in it, its middle and half of it.
struct Along {
    meets: Vec<(i64, bool)>,
    things: Vec<(i64, i64)>,
}

/// `place` tells how far along the strip a place on it lies.
pub(super) fn cuts(
    ground: &Ground<'_>,
    strip: &Strip,
    place: &dyn Fn(Point) -> Option<i64>,
) -> Vec<i64> {
    let mut along = Along::of(ground, place);
    // A ring begins at the first place there is.
    let origin = if strip.is_closed {
        along.places().first().copied().unwrap_or(0)
    } else {
        0
    };
    if strip.is_closed {
        along.turn(origin, strip.long);
    }
    let mut places = along.places();
    places.retain(|far| REACH < *far && *far < strip.long - REACH);
    places.sort_unstable();
    places.dedup_by(|a, b| *a - *b <= REACH);
    let longest = ground.longest * 1000 / strip.outer;
    let least = (strip.long - 20_000).div_euclid(longest) + 1;
    let wide = strip.wide / strip.rows;
    let finer = if strip.wide < ground.narrow {
        0
    } else {
        (3 * strip.long / (2 * wide).max(1) - least).clamp(1, FINER)
    };
    let fewest = least.max(if strip.is_closed { 2 } else { 1 });
    let sets = cuts::candidates(strip.long, &places, longest, (fewest, least + finer));
    let judged = sets.into_iter().map(|mut set| {
        if strip.is_closed {
            set.insert(0, 0);
        }
        (judged(ground, strip, &along, &set), set)
    });
    let best = judged.min().map(|best| best.1).unwrap_or_default();
    best.into_iter()
        .map(|far| (far + origin) % strip.long.max(1))
        .collect()
}

impl Along {
    fn of(ground: &Ground<'_>, place: &dyn Fn(Point) -> Option<i64>) -> Self {
        let meets = ground.asked.meet.iter();
        let meets = meets.filter_map(|meet| Some((place(meet.at)?, meet.must)));
        // What lies in it is cut through its middle when it is small, else along both its ends.
        let things = ground.things.iter().filter_map(|thing| {
            let middle = place(thing.middle())?;
            let ends = thing.ring.iter().filter_map(|edge| place(edge.at));
            let half = ends.map(|far| (far - middle).abs()).max().unwrap_or(0);
            let is_point = thing.is_small || thing.is_round;
            Some((middle, if is_point { 0 } else { half }))
        });
        Self {
            meets: meets.collect(),
            things: things.collect(),
        }
    }

    fn turn(&mut self, origin: i64, long: i64) {
        for meet in &mut self.meets {
            meet.0 = (meet.0 - origin).rem_euclid(long);
        }
        for thing in &mut self.things {
            thing.0 = (thing.0 - origin).rem_euclid(long);
        }
    }

    fn places(&self) -> Vec<i64> {
        let things = self.things.iter();
        let ends = things.flat_map(|&(middle, half)| [middle - half, middle + half]);
        self.meets.iter().map(|meet| meet.0).chain(ends).collect()
    }
}

fn judged(ground: &Ground<'_>, strip: &Strip, along: &Along, set: &[i64]) -> Score {
    let mut score = Score::default();
    let mut cost = i64::try_from(set.len()).unwrap_or(0) * strip.wide;
    let nearest = |far: i64| {
        let off = set.iter().map(|cut| (cut - far).abs());
        off.min().unwrap_or(i64::MAX)
    };
    for &(far, must) in &along.meets {
        if nearest(far) <= REACH {
            continue;
        }
        if must {
            score.hard += 1;
        } else {
            cost += ground.loose_end();
        }
    }
    for &(middle, half) in &along.things {
        for end in [middle - half, middle + half] {
            if REACH < nearest(end) {
                score.cracks += if nearest(end) < CLEAR { 1000 } else { 600 };
            }
        }
    }
    score.cost = cost / 1_000_000;
    let wide = strip.wide / strip.rows;
    let inner = if strip.is_closed { &set[1..] } else { set };
    for (part, many) in cuts::parts(strip.long, inner) {
        let sizes = |long: i64| [long.max(wide), long.min(wide)];
        let narrowest = if strip.rows == 1 {
            part
        } else {
            part.min(wide)
        };
        let each = ground.of_sides(&Sides {
            size: sizes(part * strip.outer / 1000),
            mean: sizes(part),
            cut_wide: Some(narrowest),
            is_strip: strip.rows == 1 && wide <= part,
            sharp: 0,
            doubled: 2 * i128::from(part) * i128::from(wide),
        });
        score += each.times(many * strip.rows);
    }
    score
}
