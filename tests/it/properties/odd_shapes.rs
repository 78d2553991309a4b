//! Shapes that turn and can be seen in a mirror, with names for their sides that turn with them.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::jobs::{Dice, length};

/// North, west, south, east: a quarter turn goes one on, a mirror swaps west and east.
#[derive(Clone, Copy, Debug)]
pub struct Way(pub usize);

/// One leg of a path: eighths of a turn from north toward west, its length, a bend or a bulge.
#[derive(Clone, Debug)]
pub struct Leg {
    pub way: usize,
    pub long: u64,
    pub bend: Option<u64>,
    /// Whether to the left, and how far.
    pub bulge: Option<(bool, u64)>,
}

#[derive(Clone, Debug)]
pub enum Shape {
    Rectangle(u64, u64),
    Circle(u64),
    Ring(u64, u64),
    /// Its right angle between these two sides.
    Triangle(u64, u64, Way, Way),
    /// Its middle between these two sides, or toward the first alone.
    Sector(u64, u64, Way, Option<Way>),
    /// Radii outside and inside, and the same.
    RingSector(u64, u64, u64, Way, Option<Way>),
    /// East and north.
    Corners(Vec<(i64, i64)>),
    /// Legs of the middle line, and the width.
    Path(Vec<Leg>, u64),
}

/// How a side of the slab is named: by where it looks, or by a name that no turn changes.
#[derive(Clone, Debug)]
pub enum Side {
    Looking(Way),
    /// Between north or south and east or west.
    Between(Way, Way),
    Called(String),
}

impl Way {
    const NAMES: [&'static str; 4] = ["north", "west", "south", "east"];

    pub fn name(self) -> &'static str {
        Self::NAMES[self.0]
    }

    pub fn turned(self) -> Self {
        Self((self.0 + 1) % 4)
    }

    pub fn mirrored(self) -> Self {
        Self((4 - self.0) % 4)
    }

    pub fn is_level(self) -> bool {
        self.0 % 2 == 1
    }

    /// `southwest`: north or south comes first.
    pub fn corner(self, other: Self) -> String {
        let (upright, level) = if self.is_level() {
            (other, self)
        } else {
            (self, other)
        };
        format!("{}{}", upright.name(), level.name())
    }
}

impl Leg {
    fn text(&self) -> String {
        const WAYS: [&str; 8] = [
            "north",
            "northwest",
            "west",
            "southwest",
            "south",
            "southeast",
            "east",
            "northeast",
        ];
        let bend = self
            .bend
            .map(|bend| format!(", bend {} radius", length(bend)));
        let bulge = self.bulge.map(|(is_left, far)| {
            let side = if is_left { "left" } else { "right" };
            format!(", bulge {side} {}", length(far))
        });
        let (bend, bulge) = (bend.unwrap_or_default(), bulge.unwrap_or_default());
        format!("\"{} {}{bend}{bulge}\"", WAYS[self.way], length(self.long))
    }

    fn toward(&self, way: usize) -> Self {
        Self {
            way: way % 8,
            ..self.clone()
        }
    }

    /// A path that never comes back to itself.
    pub fn some(dice: &mut Dice) -> Vec<Self> {
        let mut way = usize::try_from(dice.between(0, 7)).expect("few");
        let straight = |way, long, bend| Self {
            way,
            long,
            bend,
            bulge: None,
        };
        if dice.one_in(4) {
            let far = dice.between(60, 300);
            let bow = |is_left| Self {
                bulge: Some((is_left, far)),
                ..straight(way, 1500, None)
            };
            return vec![bow(true), bow(false)];
        }
        let many = dice.between(1, 4);
        let mut legs = Vec::new();
        for number in 1..=many {
            let bend = (number < many && dice.one_in(2)).then(|| dice.between(300, 420));
            legs.push(straight(way, dice.between(900, 1500), bend));
            let turn = usize::try_from(dice.between(1, 2)).expect("few");
            way = (way + if number % 2 == 0 { turn } else { 8 - turn }) % 8;
        }
        legs
    }
}

impl Shape {
    pub fn text(&self) -> String {
        match self {
            Self::Rectangle(a, b) => format!("size: {} x {}", length(*a), length(*b)),
            Self::Circle(across) => format!("size: circle {}", length(*across)),
            Self::Ring(outside, inside) => {
                let (outside, inside) = (length(*outside), length(*inside));
                format!("size: ring {outside} outside and {inside} inside")
            }
            Self::Triangle(a, b, one, other) => format!(
                "size: \"triangle {} x {}, square at {}\"",
                length(*a),
                length(*b),
                one.corner(*other)
            ),
            Self::Sector(radius, halves, one, other) => format!(
                "size: \"sector {} radius, {} degrees, toward {}\"",
                length(*radius),
                Decimal::from(*halves) / dec!(2),
                other.map_or(one.name().to_owned(), |other| one.corner(other))
            ),
            Self::RingSector(outside, inside, halves, one, other) => format!(
                "size: \"ring sector {} outside radius, {} inside radius, {} degrees, toward {}\"",
                length(*outside),
                length(*inside),
                Decimal::from(*halves) / dec!(2),
                other.map_or(one.name().to_owned(), |other| one.corner(other))
            ),
            Self::Corners(corners) => {
                let place = |eighths: i64| {
                    let sign = if eighths < 0 { "-" } else { "" };
                    match eighths.unsigned_abs() {
                        0 => "0 ft".to_owned(),
                        far => format!("{sign}{}", length(far)),
                    }
                };
                let all: Vec<String> = corners
                    .iter()
                    .map(|&(x, y)| format!("[{}, {}]", place(x), place(y)))
                    .collect();
                format!("corners: [{}]", all.join(", "))
            }
            Self::Path(legs, width) => {
                let legs: Vec<String> = legs.iter().map(Leg::text).collect();
                let (legs, width) = (legs.join(", "), length(*width));
                format!("path: [{legs}]\n    width: {width}")
            }
        }
    }

    pub fn turned(&self) -> Self {
        match self {
            Self::Rectangle(a, b) => Self::Rectangle(*b, *a),
            Self::Circle(_) | Self::Ring(..) => self.clone(),
            Self::Triangle(a, b, one, other) => {
                Self::Triangle(*b, *a, one.turned(), other.turned())
            }
            Self::Sector(radius, angle, one, other) => {
                Self::Sector(*radius, *angle, one.turned(), other.map(Way::turned))
            }
            Self::RingSector(outside, inside, angle, one, other) => {
                let (one, other) = (one.turned(), other.map(Way::turned));
                Self::RingSector(*outside, *inside, *angle, one, other)
            }
            Self::Corners(corners) => {
                Self::Corners(corners.iter().map(|&(x, y)| (-y, x)).collect())
            }
            Self::Path(legs, width) => Self::Path(
                legs.iter().map(|leg| leg.toward(leg.way + 2)).collect(),
                *width,
            ),
        }
    }

    pub fn mirrored(&self) -> Self {
        match self {
            Self::Rectangle(..) | Self::Circle(_) | Self::Ring(..) => self.clone(),
            Self::Triangle(a, b, one, other) => {
                Self::Triangle(*a, *b, one.mirrored(), other.mirrored())
            }
            Self::Sector(radius, angle, one, other) => {
                Self::Sector(*radius, *angle, one.mirrored(), other.map(Way::mirrored))
            }
            Self::RingSector(outside, inside, angle, one, other) => {
                let (one, other) = (one.mirrored(), other.map(Way::mirrored));
                Self::RingSector(*outside, *inside, *angle, one, other)
            }
            Self::Corners(corners) => {
                Self::Corners(corners.iter().map(|&(x, y)| (-x, y)).collect())
            }
            Self::Path(legs, width) => {
                let legs = legs.iter().map(|leg| Leg {
                    bulge: leg.bulge.map(|(is_left, far)| (!is_left, far)),
                    ..leg.toward(8 - leg.way)
                });
                Self::Path(legs.collect(), *width)
            }
        }
    }
}

impl Side {
    pub fn changed(&self, way: fn(Way) -> Way) -> Self {
        match self {
            Self::Looking(one) => Self::Looking(way(*one)),
            Self::Between(one, other) => Self::Between(way(*one), way(*other)),
            Self::Called(name) => Self::Called(name.clone()),
        }
    }

    pub fn name(&self) -> String {
        match self {
            Self::Looking(way) => way.name().to_owned(),
            Self::Between(one, other) => one.corner(*other),
            Self::Called(name) => name.clone(),
        }
    }
}

/// What stands at some sides of a shape, by every kind of name it has.
pub fn edges(shape: &Shape, dice: &mut Dice) -> Vec<(Side, &'static str)> {
    const KINDS: [&str; 4] = ["house", "curb", "isolated", "existing concrete"];
    let called = |name: &str| Side::Called(name.to_owned());
    let opposite = |way: Way| way.turned().turned();
    let names = match shape {
        Shape::Rectangle(..) => vec![Side::Looking(Way(0)), Side::Looking(Way(3))],
        Shape::Circle(_) | Shape::Sector(..) => vec![called("arc")],
        Shape::Ring(..) | Shape::RingSector(..) => {
            vec![called("outer arc"), called("inner arc")]
        }
        Shape::Triangle(a, b, one, other) => {
            let mut names = vec![
                Side::Looking(*one),
                Side::Between(opposite(*one), opposite(*other)),
            ];
            // The tape says the same however the triangle lies, where it says it of one side.
            let other_leg = if other.is_level() { b } else { a };
            if a.abs_diff(*b) > 96 {
                names.push(called(&length(*other_leg)));
            }
            names
        }
        Shape::Corners(_) => vec![called("side 1"), called("3")],
        Shape::Path(..) => vec![called("start"), called("end")],
    };
    let mut said = Vec::new();
    for side in names {
        if !dice.one_in(3) {
            said.push((side, dice.pick(&KINDS)));
        }
    }
    if dice.one_in(4) {
        said.push((called("all"), dice.pick(&KINDS)));
    }
    said
}
