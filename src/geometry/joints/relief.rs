//! Which joints run to inside corners, openings and boxes; what is left between them is divided.

use std::collections::BTreeMap;
use std::rc::Rc;

use super::cut::Stretch;
use super::grid;
use super::ground::{Ground, REACH};
use super::marks::{self, Kind, Mark};
use super::plan::{self, Plan};
use super::rays::{self, Ray};
use super::score::Score;
use super::seam::Seam;
use super::sheet::Piece;
use super::way::is_near;
use crate::geometry::point::Point;

/// So many layouts are tried of one slab.
const TRIES: usize = 2400;
/// A part that is no rectangle counts as so many.
const ODD: usize = 8;
/// Of so many joints every choice is tried.
const ALL: usize = 5;
/// The best plan by lines through the slab.
pub(super) fn best(ground: &Ground<'_>) -> Plan {
    let rays = rays::rays(ground);
    let mut search = Search {
        ground,
        rays: &rays,
        tries: TRIES,
        best: None,
        known: Known::new(),
        open: ground.unrelieved(&stretches(&rays, u64::MAX)),
    };
    if rays.len() <= ALL {
        // The fewest first, since tries may end.
        let mut sets: Vec<u64> = (0..1 << rays.len()).collect();
        sets.sort_by_key(|set| set.count_ones());
        for set in sets {
            search.tried(set, search.beat());
            if search.tries == 0 {
                break;
            }
        }
    } else {
        let mut weighed: Vec<(Score, u64)> = Vec::new();
        for set in rays::starts(ground, &rays) {
            weighed.push((search.tried(set, search.beat()), set));
        }
        for set in rays::covers(ground, &rays) {
            if search.tries < TRIES / 4 {
                break;
            }
            weighed.push((search.tried(set, search.beat()), set));
        }
        weighed.sort_unstable();
        weighed.dedup();
        for (score, set) in weighed.into_iter().take(2) {
            search.climb(score, set);
        }
    }
    let plan = search.best.expect("at least one layout was tried").1;
    plan.trimmed(ground, 40)
}

struct Search<'a> {
    ground: &'a Ground<'a>,
    rays: &'a [Ray],
    tries: usize,
    best: Option<(u64, Plan)>,
    known: Known,
    /// How many places are without a joint when all are cut.
    open: i64,
}

/// Parts that were divided before, since one joint more or less leaves most of them alone.
type Known = BTreeMap<(Vec<Point>, Vec<Mark>), Rc<Part>>;

impl Search<'_> {
    fn beat(&self) -> Score {
        self.best.as_ref().map_or(Score::WORST, |best| best.1.score)
    }

    /// What is sure to be no better than `beat` is left as soon as that shows.
    fn tried(&mut self, set: u64, beat: Score) -> Score {
        let chosen = stretches(self.rays, set);
        if self.open < self.ground.unrelieved(&chosen) {
            return Score::WORST;
        }
        self.tries = self.tries.saturating_sub(1);
        let Some(plan) = self.divided(&chosen, beat) else {
            return Score::WORST;
        };
        let score = plan.score;
        if self.best.as_ref().is_none_or(|best| score < best.1.score) {
            self.best = Some((set, plan));
        }
        score
    }

    /// One joint more, one less, or one for another, as long as that is better.
    fn climb(&mut self, mut score: Score, mut set: u64) {
        let rays = self.rays;
        let many = rays.len();
        loop {
            let one = (0..many).map(|ray| set ^ 1 << ray);
            let swaps = (0..many).flat_map(|out| {
                let swapped = (0..many).filter(move |ray| {
                    set >> out & 1 == 1
                        && set >> ray & 1 == 0
                        && share_a_place(&rays[out].seam, &rays[*ray].seam)
                });
                swapped.map(move |ray| set ^ 1 << out ^ 1 << ray)
            });
            let moves: Vec<u64> = one.chain(swaps).collect();
            let mut better = None;
            for next in moves {
                if self.tries == 0 {
                    return;
                }
                let found = self.tried(next, score);
                if found < score {
                    score = found;
                    better = Some(next);
                }
            }
            match better {
                Some(next) => set = next,
                None => return,
            }
        }
    }

    /// The slab cut by these joints, and each part divided by itself, the largest first.
    fn divided(&mut self, chosen: &[Stretch], beat: Score) -> Option<Plan> {
        let ground = self.ground;
        let mut pieces = vec![ground.whole.clone()];
        let mut made: Vec<Stretch> = Vec::new();
        for line in chosen {
            plan::cut_all(&mut pieces, &line.seam, &mut made);
        }
        // By what is the same however the slab is turned.
        pieces.sort_by_cached_key(|piece| {
            let area = piece.doubled_area() / 1_000_000_000_000_000;
            (std::cmp::Reverse(area), ground.off_middle(&piece.corners()))
        });
        let mut parts: Vec<Rc<Part>> = Vec::with_capacity(pieces.len());
        let length = |lines: &[Stretch]| {
            let long: i64 = lines.iter().map(|line| line.seam.length()).sum();
            long / 1_000_000
        };
        let mut least = Score::default();
        for line in plan::merged(made.clone()) {
            least += ground.least(&line.seam);
        }
        for piece in pieces {
            if beat < least {
                return None;
            }
            let part = self.part(piece, &made, &parts, usize::MAX);
            least += part.score;
            least.cost += length(&part.lines);
            parts.push(part);
        }
        let mut plan = whole(ground, &made, &parts);
        // Once all are divided, each may meet what its neighbours have become.
        for number in 0..parts.len() {
            if ground.loose_ends(&plan.lines) == 0 {
                break;
            }
            let again = self.part(parts[number].piece.clone(), &made, &parts, number);
            if again.lines.len() == parts[number].lines.len() && again.score == parts[number].score
            {
                continue;
            }
            let before = std::mem::replace(&mut parts[number], again);
            let other = whole(ground, &made, &parts);
            if other.score < plan.score {
                plan = other;
            } else {
                parts[number] = before;
            }
        }
        Some(plan)
    }

    /// One part of the slab divided, by what is known of all others.
    fn part(
        &mut self,
        piece: Piece,
        made: &[Stretch],
        others: &[Rc<Part>],
        own: usize,
    ) -> Rc<Part> {
        let ground = self.ground;
        let near = others
            .iter()
            .enumerate()
            .filter(|(number, _)| *number != own);
        let lines = made.iter().chain(near.flat_map(|(_, part)| &part.lines));
        let marks = marks::on(&piece, &known_marks(ground, lines));
        let corners = piece.corners();
        let key = (corners, marks);
        if let Some(known) = self.known.get(&key) {
            return Rc::clone(known);
        }
        // What is no rectangle has to be cut to be judged.
        if ground.measured(&piece).rectangle.is_none() {
            self.tries = self.tries.saturating_sub(ODD);
        }
        let (panels, lines) = grid::divided(ground, &piece, &key.1)
            .unwrap_or_else(|| (vec![piece.clone()], Vec::new()));
        let mut score = Score::default();
        for panel in &panels {
            score += ground.of_panel(&ground.measured(panel));
        }
        let part = Rc::new(Part {
            piece,
            panels,
            lines,
            score,
        });
        self.known.insert(key, Rc::clone(&part));
        part
    }
}

/// A part of the slab between the joints that run to places, and how it is divided.
#[derive(Clone, Debug)]
struct Part {
    piece: Piece,
    panels: Vec<Piece>,
    lines: Vec<Stretch>,
    score: Score,
}

fn whole(ground: &Ground<'_>, made: &[Stretch], parts: &[Rc<Part>]) -> Plan {
    let mut score = Score::default();
    let mut all = made.to_vec();
    for part in parts {
        score += part.score;
        all.extend(&part.lines);
    }
    let lines = plan::merged(all);
    score += ground.of_lines(&lines);
    Plan {
        pieces: parts.iter().flat_map(|part| part.panels.clone()).collect(),
        lines,
        score,
    }
}

fn stretches(rays: &[Ray], set: u64) -> Vec<Stretch> {
    let chosen = (0..rays.len()).filter(|ray| set >> ray & 1 == 1);
    let stretch = |ray: usize| Stretch {
        seam: rays[ray].seam,
        on_joint: [false; 2],
    };
    chosen.map(stretch).collect()
}

/// Whether two joints run to one place, so that one can stand for the other.
fn share_a_place(one: &Seam, other: &Seam) -> bool {
    let near = |a: Point, b: Point| is_near(a, b, REACH);
    near(one.from, other.from)
        || near(one.from, other.to)
        || near(one.to, other.from)
        || near(one.to, other.to)
}

fn known_marks<'a>(ground: &Ground<'_>, made: impl Iterator<Item = &'a Stretch>) -> Vec<Mark> {
    let mark = |at, kind| Mark { at, kind };
    let corners = ground.needs.iter().map(|need| mark(need.at, Kind::Corner));
    let meets = ground
        .asked
        .meet
        .iter()
        .map(|meet| mark(meet.at, if meet.must { Kind::Must } else { Kind::Wish }));
    let ends = made.flat_map(|line| {
        let ends = [
            (line.seam.from, line.on_joint[0]),
            (line.seam.to, line.on_joint[1]),
        ];
        ends.into_iter()
            .filter(|end| end.1)
            .map(|end| mark(end.0, Kind::End))
    });
    corners.chain(meets).chain(ends).collect()
}
