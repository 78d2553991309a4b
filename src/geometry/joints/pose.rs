//! One position for a slab and all that are it turned, mirrored or moved: laid out there, they are laid
//! out alike.

use super::layout::{Asked, Break, Layout, Meet, Panel};
use crate::geometry::line::Line;
use crate::geometry::outline::Outline;
use crate::geometry::point::Point;
use crate::geometry::side::Side;
use crate::values::Length;

/// What is nearer than a tenth of a millimetre is the same to a position: corners were rounded.
const GRAIN: i64 = 100_000;
/// Whole eighths of an inch lie off the bounds between grains.
const OFF: i64 = 37_000;

/// Mirrored or not, then turned by so many quarters, then moved.
#[derive(Clone, Copy, Debug)]
struct Pose {
    is_mirrored: bool,
    quarters: usize,
    low: Point,
}

/// The slab in its position.
#[derive(Debug)]
pub(super) struct Posed {
    pose: Pose,
    outline: Outline,
    longest: Length,
    boxes: Vec<(Point, Point)>,
    isolated: Vec<(Point, Point)>,
    solid: Vec<Outline>,
    meet: Vec<Meet>,
}

impl Posed {
    /// The first of its positions, by where its sides lie and all that is in it.
    pub fn of(asked: &Asked<'_>) -> Self {
        let turns = [false, true].into_iter().flat_map(|is_mirrored| {
            (0..4).map(move |quarters| Pose {
                is_mirrored,
                quarters,
                low: Point::default(),
            })
        });
        let poses = turns.map(|pose| {
            let ring = pose.ring(asked.outline);
            let of = |part: fn(&Point) -> i64| ring.iter().map(|line| part(&line.from)).min();
            let low = of(|at| at.x).zip(of(|at| at.y)).unwrap_or_default();
            Pose {
                low: Point::new(low.0, low.1),
                ..pose
            }
        });
        let pose = poses.min_by_key(|pose| pose.key(asked));
        let pose = pose.expect("there are eight");
        let turned = |boxes: &[(Point, Point)]| {
            let mut boxes: Vec<_> = boxes.iter().map(|one| pose.bounds(*one)).collect();
            boxes.sort_unstable();
            boxes
        };
        let mut meet: Vec<Meet> = asked.meet.iter().map(|meet| pose.meet(meet)).collect();
        meet.sort_unstable_by_key(|meet| (meet.at, meet.must));
        Self {
            pose,
            outline: pose.outline(asked.outline),
            longest: asked.longest,
            boxes: turned(asked.boxes),
            isolated: turned(asked.isolated),
            solid: pose.sorted(asked.solid),
            meet,
        }
    }

    pub fn asked(&self) -> Asked<'_> {
        Asked {
            outline: &self.outline,
            longest: self.longest,
            boxes: &self.boxes,
            isolated: &self.isolated,
            solid: &self.solid,
            meet: &self.meet,
            drawn: None,
        }
    }

    /// The layout of the slab where it truly lies.
    pub fn back(&self, layout: Layout) -> Layout {
        let pose = &self.pose;
        let panel = |panel: Panel| Panel {
            sides: pose.ring_back(&panel.sides),
            holes: panel
                .holes
                .iter()
                .map(|hole| pose.ring_back(hole))
                .collect(),
            ..panel
        };
        let found = |one: Break| Break {
            at: pose.back(one.at),
            ..one
        };
        let mut lines: Vec<Line> = pose.ring_back(&layout.lines);
        lines.sort_unstable();
        let mut breaks: Vec<Break> = layout.breaks.into_iter().map(found).collect();
        breaks.sort_by_key(|one| (one.what.weight(), one.at));
        Layout {
            lines,
            breaks,
            panels: layout.panels.into_iter().map(panel).collect(),
            ..layout
        }
    }
}

impl Pose {
    fn place(&self, at: Point) -> Point {
        let at = if self.is_mirrored { mirrored(at) } else { at };
        turned(at, self.quarters) - self.low
    }

    fn back(&self, at: Point) -> Point {
        let at = turned(at + self.low, (4 - self.quarters) % 4);
        if self.is_mirrored { mirrored(at) } else { at }
    }

    /// Sides in order, from the first corner on; the left stays the left.
    fn ring(&self, outline: &Outline) -> Vec<Line> {
        let line = |side: &Side| self.line(side.from, side.to, side.bulge);
        let mut ring: Vec<Line> = match outline.is_circle() {
            // Where a circle begins tells nothing: it is moved and not turned.
            Some(_) => {
                let bounds = outline.bounds();
                let by = self.bounds(bounds).0 - bounds.0;
                let sides = outline.sides().iter();
                sides.map(|side| moved(side, by)).collect()
            }
            None => outline.sides().iter().map(line).collect(),
        };
        if self.is_mirrored && outline.is_circle().is_none() {
            ring.reverse();
        }
        let first = (0..ring.len()).min_by_key(|number| rough(&ring[*number]));
        ring.rotate_left(first.unwrap_or(0));
        ring
    }

    fn line(&self, from: Point, to: Point, bulge: Length) -> Line {
        let (from, to) = (self.place(from), self.place(to));
        let (from, to) = if self.is_mirrored {
            (to, from)
        } else {
            (from, to)
        };
        Line { from, to, bulge }
    }

    fn circle(&self, outline: &Outline) -> Outline {
        let (low, high) = self.bounds(outline.bounds());
        Outline::circle(Length::nanometres(high.x - low.x)).moved(low)
    }

    fn outline(&self, outline: &Outline) -> Outline {
        let mut moved = if outline.is_circle().is_some() {
            self.circle(outline)
        } else {
            let side = |(leg, line): (usize, &Line)| Side {
                leg,
                ..Side::from(*line)
            };
            let ring = self.ring(outline);
            Outline::of(ring.iter().enumerate().map(side).collect(), None)
        };
        moved.holes = self.sorted(outline.holes());
        moved
    }

    fn sorted(&self, outlines: &[Outline]) -> Vec<Outline> {
        let mut moved: Vec<(Vec<Line>, Outline)> = outlines
            .iter()
            .map(|outline| (roughly(&self.ring(outline)), self.outline(outline)))
            .collect();
        moved.sort_by(|one, other| one.0.cmp(&other.0));
        moved.into_iter().map(|one| one.1).collect()
    }

    fn bounds(&self, (low, high): (Point, Point)) -> (Point, Point) {
        let (a, b) = (self.place(low), self.place(high));
        (
            Point::new(a.x.min(b.x), a.y.min(b.y)),
            Point::new(a.x.max(b.x), a.y.max(b.y)),
        )
    }

    fn meet(&self, meet: &Meet) -> Meet {
        Meet {
            at: self.place(meet.at),
            must: meet.must,
        }
    }

    /// What tells one position from another: the rim, what is left open and set in and solid, what is met.
    fn key(&self, asked: &Asked<'_>) -> [Vec<Line>; 6] {
        let rings = |outlines: &[Outline]| {
            let rings = outlines.iter().map(|one| roughly(&self.ring(one)));
            let mut rings: Vec<Vec<Line>> = rings.collect();
            rings.sort_unstable();
            rings.concat()
        };
        let sorted = |mut lines: Vec<Line>| {
            lines.sort_unstable();
            lines
        };
        let boxes = |boxes: &[(Point, Point)]| {
            let boxes = boxes.iter().map(|one| {
                let (from, to) = self.bounds(*one);
                rough(&straight(from, to))
            });
            sorted(boxes.collect())
        };
        let meets = asked.meet.iter().map(|meet| {
            let at = self.place(meet.at);
            rough(&straight(at, if meet.must { at } else { Point::default() }))
        });
        [
            roughly(&self.ring(asked.outline)),
            rings(asked.outline.holes()),
            boxes(asked.boxes),
            boxes(asked.isolated),
            rings(asked.solid),
            sorted(meets.collect()),
        ]
    }

    fn ring_back(&self, ring: &[Line]) -> Vec<Line> {
        let back = ring.iter().map(|line| {
            let (from, to) = (self.back(line.from), self.back(line.to));
            let (from, to) = if self.is_mirrored {
                (to, from)
            } else {
                (from, to)
            };
            Line { from, to, ..*line }
        });
        let mut back: Vec<Line> = back.collect();
        if self.is_mirrored {
            back.reverse();
        }
        back
    }
}

fn mirrored(at: Point) -> Point {
    Point::new(-at.x, at.y)
}

fn turned(at: Point, quarters: usize) -> Point {
    (0..quarters).fold(at, |at, _| Point::new(-at.y, at.x))
}

fn moved(side: &Side, by: Point) -> Line {
    Line {
        from: side.from + by,
        to: side.to + by,
        bulge: side.bulge,
    }
}

fn straight(from: Point, to: Point) -> Line {
    Line {
        from,
        to,
        bulge: Length::ZERO,
    }
}

fn roughly(ring: &[Line]) -> Vec<Line> {
    ring.iter().map(rough).collect()
}

fn rough(line: &Line) -> Line {
    let grains = |value: i64| (value + OFF).div_euclid(GRAIN);
    let place = |at: Point| Point::new(grains(at.x), grains(at.y));
    Line {
        from: place(line.from),
        to: place(line.to),
        bulge: Length::nanometres(grains(line.bulge.as_nanometres())),
    }
}
