//! Straight lines through the whole slab both ways, as a finisher snaps them: through the places that
//! need a joint, and evenly between.

use super::cuts;
use super::ground::{CLEAR, Ground, REACH};
use super::plan::Plan;
use super::score::{CORNER, PASSED, Score, Sides};
use super::seam::Seam;
use super::shape::Frame;
use super::way::Way;
use crate::geometry::point::Point;

/// Of so many places every choice is tried; of more the choices that leave out or take one or two.
const ALL: usize = 5;
/// So many ways to cut one direction are weighed.
const WAYS: usize = 72;
/// So many layouts are cut to be judged, those first that look best as rectangles.
const TRIES: usize = 40;
/// So many sets of rows are tried across a fan.
const ROWS: usize = 8;

/// The cuts of one direction.
struct Cuts {
    at: Vec<i64>,
    parts: Vec<(i64, i64)>,
    /// Which places that need a joint have one, by their numbers.
    met: u64,
    /// What it is charged for passing too near.
    passed: i64,
}

/// The best of them, with what it does not need left out.
pub(super) fn best(ground: &Ground<'_>) -> Option<Plan> {
    let mut tried: Vec<(Score, Vec<Seam>)> = Vec::new();
    for way in &ground.frames {
        let frame = Frame::of(&ground.whole, *way);
        let (low, wide, tall) = (frame.low, frame.wide(), frame.tall());
        let columns = ways(ground, *way, low.x, wide, tall);
        let rows = ways(ground, way.left(), low.y, tall, wide);
        for column in &columns {
            for row in &rows {
                let score = looks(ground, column, row, frame);
                tried.push((score, frame.lines(&column.at, &row.at)));
            }
        }
    }
    // Within a hair they are as good as each other, and stand as they were found.
    tried.sort_by_key(|(score, _)| (score.long, score.hard, score.cracks, score.cost / 20));
    tried.truncate(TRIES);
    let mut best: Option<Plan> = None;
    for seams in tried.into_iter().map(|one| one.1).chain(fans(ground)) {
        let most = best.as_ref().map_or(Score::WORST, |best| best.score);
        best = Plan::under(ground, &seams, most).or(best);
    }
    best.map(|plan| plan.trimmed(ground, TRIES))
}

/// Lines between sides that draw nearer to each other, and joints square to one of them.
fn fans(ground: &Ground<'_>) -> Vec<Vec<Seam>> {
    let mut found = Vec::new();
    for taper in &ground.tapers {
        let least = (taper.wide() - 20_000).div_euclid(ground.longest) + 1;
        for side in [taper.one, taper.other] {
            let frame = Frame::of(&ground.whole, side.way);
            let across = ways(ground, side.way, frame.low.x, frame.wide(), frame.tall());
            for parts in (least..=least + 1).filter(|parts| 1 < *parts) {
                let lines = taper.lines(usize::try_from(parts).unwrap_or(1));
                found.extend(across.iter().take(ROWS).map(|cuts| {
                    let mut seams = lines.clone();
                    seams.extend(frame.lines(&cuts.at, &[]));
                    seams
                }));
            }
        }
    }
    found
}

/// Ways to cut what is `long` along `way` from `low` on, and `across` square to it.
fn ways(ground: &Ground<'_>, way: Way, low: i64, long: i64, across: i64) -> Vec<Cuts> {
    let far = |at: Point| way.along(at) - low;
    let needs: Vec<Vec<i64>> = ground
        .needs
        .iter()
        .map(|need| {
            // A joint to the middle of a short side meets both of its corners.
            let sides = need
                .beside
                .iter()
                .filter(|side| side.way.sine(way).abs() < side.way.cosine(way).abs());
            let middles = sides.map(|side| i64::midpoint(far(side.from), far(side.to)));
            let own = (need.beside.len() < 2).then(|| far(need.at));
            middles.chain(own).collect()
        })
        .collect();
    let round = ground.things.iter().filter(|thing| thing.is_round);
    let round = round.map(|thing| far(thing.middle()));
    let named = ground.asked.meet.iter().map(|meet| far(meet.at));
    let mut places: Vec<i64> = needs.iter().flatten().copied().collect();
    places.extend(round.chain(named));
    places.retain(|far| REACH < *far && *far < long - REACH);
    places.sort_unstable();
    places.dedup_by(|a, b| *a - *b <= REACH);
    let least = (long - 20_000).div_euclid(ground.longest) + 1;
    let square = (long + across / 2) / across.max(1);
    let counts = (least..=least + 2).chain((least + 2 < square).then_some(square));
    let counts: Vec<i64> = counts.collect();
    let mut sets: Vec<Vec<i64>> = Vec::new();
    for kept in kept(&places) {
        for parts in &counts {
            let set = cuts::between(long, &kept, long / parts);
            if !sets.contains(&set) {
                sets.push(set);
            }
        }
        let loosest = cuts::between(long, &kept, ground.longest);
        if !sets.contains(&loosest) {
            sets.push(loosest);
        }
    }
    sets.sort_by_key(Vec::len);
    sets.truncate(WAYS);
    let cuts = sets.into_iter().map(|at| {
        let is_at = |place: &i64| at.iter().any(|cut| (cut - place).abs() <= REACH);
        let mut met = 0;
        for (number, places) in needs.iter().enumerate().take(64) {
            if places.iter().any(is_at) {
                met |= 1 << number;
            }
        }
        let passes = |(number, need): (usize, &super::ground::Need)| {
            let near = |cut: &i64| (cut - far(need.at)).abs() < CLEAR - REACH;
            let same = |other: usize| {
                other == number || need.thing.is_some() && need.thing == ground.needs[other].thing
            };
            let is_met =
                (0..needs.len()).any(|other| same(other) && needs[other].iter().any(is_at));
            at.iter().any(near) && !is_met
        };
        let passed = ground.needs.iter().enumerate();
        let passed = passed.filter(|one| passes(*one)).count();
        Cuts {
            parts: cuts::parts(long, &at),
            met,
            passed: PASSED * i64::try_from(passed).unwrap_or(0),
            at,
        }
    });
    cuts.collect()
}

/// Which of the places are cut through.
fn kept(places: &[i64]) -> Vec<Vec<i64>> {
    let many = places.len();
    let few = |set: u64| {
        let taken = set.count_ones() as usize;
        many <= ALL || taken <= 2 || many - 1 <= taken
    };
    if 16 < many {
        return vec![Vec::new(), places.to_vec()];
    }
    let chosen = |set: u64| (0..many).filter(move |place| set >> place & 1 == 1);
    (0..1_u64 << many)
        .filter(|set| few(*set))
        .map(|set| chosen(set).map(|place| places[place]).collect())
        .collect()
}

/// What it would be charged if the slab filled its bounds.
fn looks(ground: &Ground<'_>, columns: &Cuts, rows: &Cuts, frame: Frame) -> Score {
    let many = |cuts: &Cuts| i64::try_from(cuts.at.len()).unwrap_or(0);
    let needs = ground.needs.len().min(64);
    let met = (columns.met | rows.met).count_ones() as usize;
    let mut score = Score {
        cracks: columns.passed
            + rows.passed
            + CORNER * i64::try_from(needs - met.min(needs)).unwrap_or(0),
        cost: (many(columns) * frame.tall() + many(rows) * frame.wide()) / 1_000_000,
        ..Score::default()
    };
    for &(wide, along) in &columns.parts {
        for &(deep, up) in &rows.parts {
            let size = [wide.max(deep), wide.min(deep)];
            let each = ground.of_sides(&Sides {
                size,
                mean: size,
                cut_wide: Some(size[1]),
                is_strip: false,
                sharp: 0,
                doubled: 2 * i128::from(wide) * i128::from(deep),
            });
            score += each.times(along * up);
        }
    }
    score
}
