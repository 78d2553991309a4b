//! Forty outlines as finishers meet them, for tests and to be looked at.

use super::super::{Asked, Layout, Meet, lay_out};
use crate::geometry::walks::{legs, walked};
use crate::geometry::{Angle, Direction, Outline, PathLeg, Point};
use crate::values::Length;

/// A slab of the gallery.
pub struct Slab {
    pub name: &'static str,
    pub outline: Outline,
    pub longest: Length,
    pub boxes: Vec<(Point, Point)>,
    pub isolated: Vec<(Point, Point)>,
    pub solid: Vec<Outline>,
    pub meet: Vec<Meet>,
}

impl Slab {
    pub fn laid_out(&self) -> Layout {
        lay_out(&Asked {
            outline: &self.outline,
            longest: self.longest,
            boxes: &self.boxes,
            isolated: &self.isolated,
            solid: &self.solid,
            meet: &self.meet,
            drawn: None,
        })
    }

    fn boxed(mut self, wide: &str, tall: &str, east: &str, north: &str) -> Self {
        let low = at(east, north);
        let size = at(wide, tall);
        self.boxes.push((low, low + size));
        self
    }

    fn isolated(mut self) -> Self {
        self.isolated = std::mem::take(&mut self.boxes);
        self
    }

    fn meeting(mut self, east: &str, north: &str, must: bool) -> Self {
        self.meet.push(Meet {
            at: at(east, north),
            must,
        });
        self
    }

    fn solid(mut self, solid: Outline) -> Self {
        self.solid.push(solid);
        self
    }
}

pub fn long(text: &str) -> Length {
    match text.strip_prefix('-') {
        Some(text) => -text.parse::<Length>().unwrap(),
        None => text.parse().unwrap(),
    }
}

pub fn at(east: &str, north: &str) -> Point {
    Point::new(long(east).as_nanometres(), long(north).as_nanometres())
}

pub fn slab(name: &'static str, longest: &str, outline: Outline) -> Slab {
    Slab {
        name,
        outline,
        longest: long(longest),
        boxes: Vec::new(),
        isolated: Vec::new(),
        solid: Vec::new(),
        meet: Vec::new(),
    }
}

pub fn rectangle(wide: &str, tall: &str) -> Outline {
    Outline::rectangle(long(wide), long(tall))
}

fn opening(outline: Outline, hole: &Outline, east: &str, north: &str) -> Outline {
    outline.with_hole(hole.moved(at(east, north))).unwrap()
}

pub fn path(text: &str, width: &str) -> Outline {
    let legs: Vec<PathLeg> = text
        .split(", ")
        .map(|leg| {
            let (leg, bend) = leg.split_once(" bend ").unwrap_or((leg, "0 in"));
            let one = legs(leg)[0];
            PathLeg {
                direction: one.direction,
                length: one.length,
                bulge: one.bulge,
                bend: long(bend),
            }
        })
        .collect();
    Outline::path(&legs, long(width)).unwrap()
}

fn cornered(corners: &[(&str, &str, &str)]) -> Outline {
    let corners: Vec<(Point, Length)> = corners
        .iter()
        .map(|(x, y, bulge)| (at(x, y), long(bulge)))
        .collect();
    Outline::cornered(&corners).unwrap()
}

fn angle(text: &str) -> Angle {
    text.parse().unwrap()
}

#[expect(clippy::too_many_lines, reason = "forty slabs, one after another")]
pub fn gallery() -> Vec<Slab> {
    let u = "east 30 ft, north 20 ft, west 10 ft, south 12 ft, west 10 ft, north 12 ft, west 10 ft, south 20 ft";
    let tee = "east 8 ft, north 16 ft, east 8 ft, north 8 ft, west 24 ft, south 8 ft, east 8 ft, south 16 ft";
    let ell = "east 24 ft, north 12 ft, west 12 ft, north 12 ft, west 12 ft, south 24 ft";
    let patio = "east 24 ft, south 20 ft, west 16 ft, north 8 ft, west 8 ft, north 12 ft";
    vec![
        slab("driveway 36 x 20", "10 ft", rectangle("36 ft", "20 ft")),
        slab("drive 10 ft wide", "10 ft", rectangle("10 ft", "60 ft")),
        slab("walk 3 ft wide", "10 ft", rectangle("3 ft", "30 ft")),
        slab("pad 3 x 4", "10 ft", rectangle("3 ft", "4 ft")),
        slab("curb", "10 ft", rectangle("6 in", "50 ft")),
        slab(
            "mow strip 12 in",
            "5 ft",
            path("east 20 ft bend 4 ft, north 12 ft", "12 in"),
        ),
        slab("garage 24 x 24", "12 ft", rectangle("24 ft", "24 ft")),
        slab("patio 12 x 15", "10 ft", rectangle("12 ft", "15 ft")),
        slab("L patio", "10 ft", walked(ell)),
        slab("notched patio", "8 ft", walked(patio)),
        slab(
            "bowed patio",
            "10 ft",
            walked(&patio.replace("west 16 ft", "west 16 ft bulge 18 in")),
        ),
        slab(
            "bowed patio with a step",
            "10 ft",
            walked(&patio.replace("west 16 ft", "west 16 ft bulge 18 in")),
        )
        .solid(rectangle("6 ft", "3 ft").moved(at("10 ft", "-3 ft"))),
        slab("T", "10 ft", walked(tee)),
        slab("U", "10 ft", walked(u)),
        slab(
            "patio with a walk",
            "10 ft",
            walked(
                "east 20 ft, north 20 ft, west 8 ft, north 24 ft, west 4 ft, south 24 ft, west 8 ft, south 20 ft",
            ),
        ),
        slab(
            "walk round a house corner",
            "10 ft",
            walked("east 30 ft, south 25 ft, east 4 ft, north 29 ft, west 34 ft, south 4 ft"),
        ),
        slab(
            "long L walk",
            "8 ft",
            path("north 40 ft, east 30 ft", "4 ft"),
        ),
        slab(
            "S-walk",
            "8 ft",
            path("north 16 ft bulge 2 ft, north 16 ft bulge -2 ft", "4 ft"),
        ),
        slab(
            "bent walk",
            "8 ft",
            path("north 20 ft, northeast 20 ft, east 12 ft", "4 ft"),
        ),
        slab(
            "walk with round bends",
            "8 ft",
            path(
                "north 20 ft bend 8 ft, east 24 ft bend 8 ft, south 12 ft",
                "4 ft",
            ),
        ),
        slab(
            "pool ring",
            "10 ft",
            Outline::ring(long("28 ft"), long("20 ft")).unwrap(),
        ),
        slab(
            "wide ring",
            "8 ft",
            Outline::ring(long("50 ft"), long("24 ft")).unwrap(),
        ),
        slab(
            "wide ring of small panels",
            "4 ft",
            Outline::ring(long("24 ft"), long("11 ft")).unwrap(),
        ),
        slab(
            "quarter ring",
            "8 ft",
            Outline::ring_sector(
                long("20 ft"),
                long("15 ft"),
                angle("90 degrees"),
                Direction::NorthEast,
            )
            .unwrap(),
        ),
        slab("circle 18", "10 ft", Outline::circle(long("18 ft"))),
        slab("circle 8", "10 ft", Outline::circle(long("8 ft"))),
        slab("circle 30", "10 ft", Outline::circle(long("30 ft"))),
        slab(
            "half circle",
            "10 ft",
            Outline::sector(long("10 ft"), angle("180 degrees"), Direction::North).unwrap(),
        ),
        slab(
            "quarter circle",
            "10 ft",
            Outline::sector(long("15 ft"), angle("90 degrees"), Direction::NorthEast).unwrap(),
        ),
        slab(
            "triangle",
            "8 ft",
            Outline::triangle([long("16 ft"), long("14 ft"), long("14 ft")]).unwrap(),
        ),
        slab(
            "right triangle",
            "10 ft",
            Outline::right_triangle(long("16 ft"), long("12 ft"), Direction::SouthWest).unwrap(),
        ),
        slab(
            "wedge",
            "8 ft",
            Outline::trapezoid(long("14 ft"), long("7 ft"), long("24 ft"), None).unwrap(),
        ),
        slab(
            "driveway with a flare",
            "10 ft",
            cornered(&[
                ("-4 ft", "0 ft", "0 in"),
                ("14 ft", "0 ft", "0 in"),
                ("10 ft", "5 ft", "0 in"),
                ("10 ft", "40 ft", "0 in"),
                ("0 ft", "40 ft", "0 in"),
                ("0 ft", "5 ft", "0 in"),
            ]),
        ),
        slab(
            "hexagon",
            "8 ft",
            cornered(&[
                ("8 ft", "0 ft", "0 in"),
                ("4 ft", "6.928 ft", "0 in"),
                ("-4 ft", "6.928 ft", "0 in"),
                ("-8 ft", "0 ft", "0 in"),
                ("-4 ft", "-6.928 ft", "0 in"),
                ("4 ft", "-6.928 ft", "0 in"),
            ]),
        ),
        slab(
            "kidney",
            "8 ft",
            cornered(&[
                ("0 ft", "0 ft", "4 ft"),
                ("20 ft", "0 ft", "3 ft"),
                ("20 ft", "12 ft", "-2 ft"),
                ("0 ft", "12 ft", "3 ft"),
            ]),
        ),
        slab(
            "L with a tree well",
            "10 ft",
            opening(walked(ell), &rectangle("3 ft", "3 ft"), "13 ft", "7 ft"),
        ),
        slab(
            "tree well in the middle",
            "10 ft",
            opening(
                rectangle("24 ft", "20 ft"),
                &rectangle("4 ft", "4 ft"),
                "9 ft",
                "7 ft",
            ),
        ),
        slab(
            "round tree well",
            "10 ft",
            opening(
                rectangle("24 ft", "20 ft"),
                &Outline::circle(long("4 ft")),
                "9 ft",
                "7 ft",
            ),
        ),
        slab("box near a corner", "10 ft", rectangle("24 ft", "20 ft"))
            .boxed("8 in", "8 in", "3 ft", "3 ft"),
        slab("column in the middle", "12 ft", rectangle("24 ft", "24 ft"))
            .solid(rectangle("16 in", "16 in").moved(at("11 ft 4 in", "11 ft 4 in"))),
        slab("patio with a stoop", "10 ft", rectangle("24 ft", "14 ft"))
            .solid(rectangle("6 ft", "4 ft").moved(at("8 ft", "10 ft"))),
        slab("trench drain", "12 ft", rectangle("36 ft", "24 ft")).boxed(
            "24 ft",
            "6 in",
            "6 ft",
            "11 ft 9 in",
        ),
        slab("walk meeting joints", "8 ft", rectangle("20 ft", "5 ft"))
            .meeting("4 ft", "0 ft", true)
            .meeting("9 ft", "0 ft", true)
            .meeting("14 ft", "0 ft", false),
        slab(
            "pool deck",
            "10 ft",
            opening(
                rectangle("32 ft", "22 ft"),
                &rectangle("20 ft", "12 ft"),
                "6 ft",
                "5 ft",
            ),
        ),
        slab(
            "slanted drive with a flare",
            "10 ft",
            cornered(&[
                ("-5 ft", "-5 ft 8 in", "0 in"),
                ("25 ft 8 in", "-5 ft 8 in", "0 in"),
                ("20 ft", "0 ft", "0 in"),
                ("20 ft", "40 ft", "0 in"),
                ("0 ft", "40 ft", "0 in"),
            ]),
        ),
        slab(
            "drive wider at the street",
            "10 ft",
            cornered(&[
                ("-3 ft", "0 ft", "0 in"),
                ("23 ft", "0 ft", "0 in"),
                ("20 ft", "10 ft", "0 in"),
                ("20 ft", "60 ft", "0 in"),
                ("0 ft", "60 ft", "0 in"),
                ("0 ft", "10 ft", "0 in"),
            ]),
        ),
        slab("two boxes", "10 ft", rectangle("20 ft", "20 ft"))
            .boxed("12 in", "18 in", "1 ft 6 in", "16 ft 3 in")
            .boxed("8 in", "8 in", "8 ft 8 in", "10 ft 8 in"),
        slab(
            "carport with two posts",
            "8 ft",
            rectangle("22 ft", "24 ft"),
        )
        .boxed("12 in", "12 in", "4 ft", "4 ft")
        .boxed("12 in", "18 in", "15 ft", "18 ft"),
        slab("box in a corner", "10 ft", rectangle("20 ft", "20 ft")).boxed(
            "8 in",
            "8 in",
            "1 ft 8 in",
            "1 ft 8 in",
        ),
        slab("isolated in a corner", "10 ft", rectangle("20 ft", "20 ft"))
            .boxed("8 in", "8 in", "1 ft 8 in", "1 ft 8 in")
            .isolated(),
    ]
}
