//! Walks, rings and strips of even width: cut square across, evenly along the middle line.
//!
//! A run goes on through legs that meet smoothly. A bend without radius is cut from the inside corner
//! to the outside one; where that would leave sharp corners, square across both legs from the inside.

use super::curve::Curve;
use super::ground::Ground;
use super::plan::Plan;
use super::seam::Seam;
use super::way::{self, Way, distance, is_near, narrow, rounded};
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;
use crate::geometry::side::Side;

/// A leg of even width, both edges along its way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leg {
    right: Seam,
    left: Seam,
}

#[derive(Clone, Debug)]
pub(super) struct Ribbon {
    legs: Vec<Leg>,
    wide: i64,
    /// Whether the last leg runs on into the first.
    is_closed: bool,
}

/// Legs that are cut evenly together, each from and to so far along its middle line.
#[derive(Debug, Default)]
pub(super) struct Run {
    parts: Vec<(usize, i64, i64)>,
}

/// How legs meet.
enum Bend {
    Smooth,
    Mitre(Seam),
    /// From the inside corner, across the leg before and across the leg after.
    Square([i64; 2]),
}

/// Widths may differ by a twentieth, as outlines walked with a tape do.
const EVEN: i64 = 20;
/// The cosine of 10 degrees: legs that meet at less go on.
const SMOOTH: i64 = way::ONE / 1000 * 985;

/// The best plan by cuts across, when the slab is of even width.
pub(super) fn best(ground: &Ground<'_>) -> Option<Plan> {
    let ribbon = Ribbon::of(ground.asked.outline)?;
    let least = (ribbon.wide - 20_000).div_euclid(ground.longest) + 1;
    let plans = [least, least + 1].map(|rows| ribbon.laid_out(ground, rows));
    plans.into_iter().flatten().min_by_key(|plan| plan.score)
}

impl Leg {
    fn long(&self) -> i64 {
        i64::midpoint(self.right.length(), self.left.length())
    }

    /// How much longer its outer edge is than its middle line, in thousandths.
    fn outer(&self) -> i64 {
        let long = self.right.length().max(self.left.length());
        match self.right.curve {
            None => 1000,
            Some(_) => 1000 * long / self.long().max(1),
        }
    }

    fn start(&self) -> Point {
        middle(self.right.from, self.left.from, 1, 2)
    }

    /// The cut square across, so far along the middle line.
    fn across(&self, far: i64) -> Option<Seam> {
        let (right, left) = (&self.right, &self.left);
        if let (Some(outer), Some(inner)) = (&right.curve, &left.curve) {
            let long = i128::from(right.length()) * i128::from(far);
            let at = outer.place(right.from, narrow(rounded(long, self.long().into())))?;
            let out = Way::between(inner.center, at)?;
            return Some(Seam::straight(at, out.from(inner.center, inner.radius)));
        }
        let at = right.way.from(self.start(), far);
        let foot = |edge: &Seam| edge.way.from(edge.from, edge.way.along(at - edge.from));
        Some(Seam::straight(foot(right), foot(left)))
    }

    /// How far along its middle line a place on it lies.
    fn place(&self, at: Point, wide: i64) -> Option<i64> {
        let reach = wide + super::ground::REACH;
        match &self.right.curve {
            None => {
                let step = at - self.start();
                let far = self.right.way.along(step);
                let aside = 2 * self.right.way.aside(step).abs();
                (0 <= far && far <= self.long() && aside <= reach).then_some(far)
            }
            Some(curve) => {
                let out = Way::between(curve.center, at)?;
                let on = out.from(curve.center, curve.radius);
                if !curve.holds(self.right.from, self.right.to, on) || reach < distance(on, at) {
                    return None;
                }
                let far = i128::from(curve.length(self.right.from, on)) * i128::from(self.long());
                Some(narrow(rounded(far, self.right.length().max(1).into())))
            }
        }
    }

    /// A joint along it, so many of so many parts from its right edge.
    fn along(&self, part: i64, of: i64) -> Seam {
        let from = middle(self.right.from, self.left.from, part, of);
        let to = middle(self.right.to, self.left.to, part, of);
        let (right, left) = (self.right.bulge(), self.left.bulge());
        let bulge = right * (of - part) + left * part;
        let bulge = crate::values::Length::nanometres(bulge.as_nanometres() / of);
        Seam::new(from, to, Curve::of(from, to, bulge))
    }

    /// Whether both edges are parallel, or arcs about one centre, as far apart as this.
    fn is_even(&self, wide: i64) -> bool {
        let close = |off: i64| (off - wide).abs() <= wide / EVEN;
        match (&self.right.curve, &self.left.curve) {
            (None, None) => {
                let parallel = self.right.way.sine(self.left.way).abs() < way::ONE / 500;
                let off = self.right.way.aside(self.start() - self.right.from) * 2;
                parallel && 0 < self.right.way.cosine(self.left.way) && close(off)
            }
            (Some(right), Some(left)) => {
                let apart = distance(right.center, left.center);
                let off = if right.right {
                    right.radius - left.radius
                } else {
                    left.radius - right.radius
                };
                right.right == left.right
                    && apart <= wide / 4
                    && (off - wide).abs() <= wide / 4
                    && {
                        let top = |seam: &Seam| {
                            let far = seam.bulge().as_nanometres();
                            seam.way.left().from(middle(seam.from, seam.to, 1, 2), -far)
                        };
                        close(distance(top(&self.right), top(&self.left)))
                    }
            }
            _ => false,
        }
    }
}

/// So many of so many parts of the way from one place to another.
fn middle(from: Point, to: Point, part: i64, of: i64) -> Point {
    let share = |a: i64, b: i64| {
        narrow(rounded(
            i128::from(a) * i128::from(of) + i128::from(b - a) * i128::from(part),
            of.into(),
        ))
    };
    Point::new(share(from.x, to.x), share(from.y, to.y))
}

impl Ribbon {
    pub fn of(outline: &Outline) -> Option<Self> {
        let seam = |side: &Side| {
            Seam::new(
                side.from,
                side.to,
                Curve::of(side.from, side.to, side.bulge),
            )
        };
        if let (Some(outer), [hole]) = (outline.is_circle(), outline.holes())
            && let Some(inner) = hole.is_circle()
        {
            let legs = outline.sides().iter().zip(hole.sides());
            let legs: Vec<Leg> = legs
                .map(|(right, left)| Leg {
                    right: seam(right),
                    left: seam(left),
                })
                .collect();
            let wide = (outer - inner).half().as_nanometres();
            let even = legs.iter().all(|leg| leg.is_even(wide));
            return even.then_some(Self {
                legs,
                wide,
                is_closed: true,
            });
        }
        let sides = outline.sides();
        let many = sides.len();
        let straight = sides.iter().all(Side::is_straight);
        if many < 4 || !many.is_multiple_of(2) || many == 4 && straight {
            return None;
        }
        let of = |end: usize| {
            let side = |number: usize| seam(&sides[(end + number) % many]);
            let half = many / 2;
            let (start, stop) = (side(0), side(half));
            if start.curve.is_some() || stop.curve.is_some() {
                return None;
            }
            let wide = start.length().max(stop.length());
            let leg = |number: usize| Leg {
                right: side(number),
                left: side(many - number).reversed(),
            };
            let legs: Vec<Leg> = (1..half).map(leg).collect();
            let wide = wide.min(i64::midpoint(start.length(), stop.length()));
            let even = legs.iter().all(|leg| leg.is_even(wide));
            let long: i64 = legs.iter().map(Leg::long).sum();
            (even && wide < long).then_some((
                long,
                Self {
                    legs,
                    wide,
                    is_closed: false,
                },
            ))
        };
        let found = (0..many / 2).filter_map(of);
        found.max_by_key(|ribbon| ribbon.0).map(|ribbon| ribbon.1)
    }

    fn bend(&self, before: usize, after: usize) -> Option<Bend> {
        let (one, other) = (&self.legs[before], &self.legs[after]);
        let (into, out) = (
            one.right.heading(one.right.to)?,
            other.right.heading(other.right.from)?,
        );
        let cosine = into.cosine(out);
        if SMOOTH <= cosine {
            return Some(Bend::Smooth);
        }
        if way::ONE / 2 <= cosine + way::ONE / 500
            || one.right.curve.is_some()
            || other.right.curve.is_some()
        {
            return Some(Bend::Mitre(Seam::straight(one.right.to, one.left.to)));
        }
        let inside = if 0 < into.sine(out) {
            one.left.to
        } else {
            one.right.to
        };
        let far = |leg: &Leg| leg.right.way.along(inside - leg.start());
        Some(Bend::Square([far(one), far(other)]))
    }

    /// The cuts at bends, and the runs between them.
    fn runs(&self, break_at_legs: bool) -> Option<(Vec<Seam>, Vec<Run>)> {
        let many = self.legs.len();
        let mut seams = Vec::new();
        let mut runs = vec![Run::default()];
        let mut from = 0;
        for number in 0..many {
            let leg = &self.legs[number];
            let bend = if number + 1 < many {
                Some(self.bend(number, number + 1)?)
            } else {
                None
            };
            let (to, next, ends) = match bend {
                None => (leg.long(), 0, false),
                Some(Bend::Smooth) => {
                    if break_at_legs {
                        seams.push(Seam::straight(leg.right.to, leg.left.to));
                    }
                    (leg.long(), 0, break_at_legs)
                }
                Some(Bend::Mitre(seam)) => {
                    seams.push(seam);
                    (leg.long(), 0, true)
                }
                Some(Bend::Square([to, next])) => {
                    seams.push(leg.across(to)?);
                    seams.push(self.legs[number + 1].across(next)?);
                    (to, next, true)
                }
            };
            let run = runs.last_mut()?;
            // A leg that two bends use up has no run of its own.
            if super::ground::REACH < to - from {
                run.parts.push((number, from, to));
            }
            from = next;
            if ends && number + 1 < many {
                runs.push(Run::default());
            }
        }
        runs.retain(|run| !run.parts.is_empty());
        Some((seams, runs))
    }

    fn laid_out(&self, ground: &Ground<'_>, rows: i64) -> Option<Plan> {
        let (mut seams, mut runs) = self.runs(1 < rows)?;
        let is_one_run = self.is_closed && rows == 1;
        if is_one_run {
            // Both halves of a ring are one run, and its first cut may be anywhere.
            let parts = (0..self.legs.len()).map(|leg| (leg, 0, self.legs[leg].long()));
            runs = vec![Run {
                parts: parts.collect(),
            }];
            seams.clear();
        } else if self.is_closed {
            // Joints along a ring are halves of circles: cuts lie where both meet, and between.
            let last = self.legs.last()?;
            seams.push(Seam::straight(last.right.to, last.left.to));
        }
        for run in &runs {
            for far in self.cuts(ground, run, (rows, is_one_run)) {
                seams.push(self.at(run, far)?);
            }
        }
        for part in 1..rows {
            seams.extend(self.legs.iter().map(|leg| leg.along(part, rows)));
        }
        seams.dedup_by(|a, b| {
            is_near(a.from, b.from, super::ground::REACH)
                && is_near(a.to, b.to, super::ground::REACH)
        });
        Some(Plan::cut(ground, &seams))
    }

    fn at(&self, run: &Run, mut far: i64) -> Option<Seam> {
        for &(leg, from, to) in &run.parts {
            if far <= to - from {
                return self.legs[leg].across(from + far);
            }
            far -= to - from;
        }
        None
    }

    /// Where a run is cut.
    fn cuts(&self, ground: &Ground<'_>, run: &Run, (rows, is_closed): (i64, bool)) -> Vec<i64> {
        let long: i64 = run.parts.iter().map(|(_, from, to)| to - from).sum();
        let outer = run
            .parts
            .iter()
            .map(|part| self.legs[part.0].outer())
            .max()
            .unwrap_or(1000);
        let place = |at: Point| {
            let mut before = 0;
            for &(leg, from, to) in &run.parts {
                if let Some(far) = self.legs[leg]
                    .place(at, self.wide)
                    .filter(|far| (from..=to).contains(far))
                {
                    return Some(before + far - from);
                }
                before += to - from;
            }
            None
        };
        super::strip::cuts(
            ground,
            &super::strip::Strip {
                long,
                wide: self.wide,
                rows,
                outer,
                is_closed,
            },
            &place,
        )
    }
}
