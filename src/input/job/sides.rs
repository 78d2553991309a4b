//! Sides as an owner points at them: where they look, how long they are, their number or their name.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::geometry::{Direction, Outline, Side};
use crate::input::phrases::{EdgeName, ShapePhrase, ShapeSide, SizePhrase};
use crate::values::Length;

/// How far a side may differ from what the tape shows: half an inch. Common practice, no source.
const SLACK: Decimal = dec!(0.5);
/// As near as this, in inches, a side is as long as was said.
const EXACT: Decimal = dec!(0.02);

/// The sides of a shape with all that each may be called.
#[derive(Clone, Debug)]
pub(super) struct Sides<'a> {
    all: Vec<NamedSide>,
    outline: &'a Outline,
    is_walked: bool,
}

/// One side as walked; a circle and the curve of a large sector are two in the outline.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct NamedSide {
    /// Numbers in `Outline::sides`, of the outline or of the circle in a ring.
    pub sides: Vec<usize>,
    pub of_middle: bool,
    /// From 1.
    number: usize,
    looks: Option<Direction>,
    pub is_straight: bool,
    called: Vec<ShapeSide>,
}

impl<'a> Sides<'a> {
    pub fn of(size: Option<SizePhrase>, outline: &'a Outline) -> Self {
        let mut all = legs(outline);
        let is_ring = matches!(size, Some(SizePhrase::Shape(ShapePhrase::Ring { .. })));
        if let Some(hole) = outline.holes().first().filter(|_| is_ring) {
            all.extend(legs(hole).into_iter().map(|side| NamedSide {
                of_middle: true,
                ..side
            }));
        }
        for side in &mut all {
            side.called.extend(called(size, side));
            side.called
                .extend(outline.is_path().map(|many| of_path(many, side.number)));
        }
        Self {
            all,
            outline,
            is_walked: size.is_none(),
        }
    }

    pub fn all(&self) -> &[NamedSide] {
        &self.all
    }

    /// Every side that may be meant by this name.
    pub fn bearing(&self, name: EdgeName) -> Vec<&NamedSide> {
        let fits = |side: &&NamedSide| match name {
            EdgeName::Looking(way) => side.looks == Some(way),
            EdgeName::Number(number) => side.number == number && !side.of_middle,
            EdgeName::Called(word) => side.called.contains(&word),
            EdgeName::Long(_) => false,
        };
        match name {
            EdgeName::Long(length) => self.as_long(length),
            EdgeName::Looking(_) | EdgeName::Number(_) | EdgeName::Called(_) => {
                self.all.iter().filter(fits).collect()
            }
        }
    }

    fn as_long(&self, length: Length) -> Vec<&NamedSide> {
        let sides = self.all.iter();
        let off = |side| (self.inches(side) - length.inches()).abs();
        let off: Vec<(&NamedSide, Decimal)> = sides.map(|side| (side, off(side))).collect();
        let within = |slack: Decimal| {
            let near = off.iter().filter(|(_, off)| *off <= slack);
            near.map(|(side, _)| *side).collect::<Vec<_>>()
        };
        // Where an error was spread, none is as long as it was measured.
        let spread = self.outline.closing_error().distance().inches();
        let exact = within(EXACT);
        if exact.is_empty() || !spread.is_zero() {
            return within(SLACK + spread);
        }
        exact
    }

    fn inches(&self, side: &NamedSide) -> Decimal {
        let hole = self.outline.holes().first().filter(|_| side.of_middle);
        let sides = hole.unwrap_or(self.outline).sides();
        let feet: Decimal = side.sides.iter().map(|&i| sides[i].length()).sum();
        feet * dec!(12)
    }

    /// Sides of the outline that a thickened edge of this name runs along; by where they look, straight ones.
    pub fn thick(&self, name: EdgeName) -> Vec<usize> {
        let is_looking = matches!(name, EdgeName::Looking(_));
        let bearing = self.bearing(name).into_iter();
        bearing
            .filter(|side| !side.of_middle && (side.is_straight || !is_looking))
            .flat_map(|side| side.sides.iter().copied())
            .collect()
    }

    /// The shortest name that means this side and no other.
    pub fn name(&self, side: &NamedSide) -> EdgeName {
        let square = |way: &Direction| {
            use Direction::{East, North, South, West};
            matches!(way, North | East | South | West)
        };
        let straight = side.looks.filter(|way| side.is_straight && square(way));
        let straight = straight.map(EdgeName::Looking);
        let number = EdgeName::Number(side.number);
        let long = Length::of_feet(self.inches(side) / dec!(12)).to_the_eighth();
        let called = side.called.iter().rev().copied().map(EdgeName::Called);
        let walked = self.is_walked.then_some(number);
        let slanted = side.looks.map(EdgeName::Looking);
        let names = straight.into_iter().chain(called).chain(walked);
        let mut names = names.chain([EdgeName::Long(long)]).chain(slanted);
        let only = names.find(|name| self.bearing(*name) == [side]);
        only.unwrap_or(number)
    }

    /// All words that its shape has for a side.
    pub fn words(&self) -> impl Iterator<Item = &'static str> {
        let sides = self.all.iter();
        sides.flat_map(|side| side.called.iter().map(|word| word.name()))
    }

    /// Names of these sides, as a message offers them.
    pub fn names<'s>(&self, sides: impl IntoIterator<Item = &'s NamedSide>) -> Vec<String> {
        let sides = sides.into_iter();
        sides.map(|side| self.name(side).to_string()).collect()
    }
}

/// The sides of one leg each, in the order of the legs.
fn legs(outline: &Outline) -> Vec<NamedSide> {
    let mut found: Vec<NamedSide> = Vec::new();
    for (number, side) in outline.sides().iter().enumerate() {
        if let Some(known) = found.iter_mut().find(|known| known.number == side.leg + 1) {
            known.sides.push(number);
            known.looks = None;
        } else {
            found.push(of_one(number, side));
        }
    }
    found.sort_by_key(|side| side.number);
    found
}

fn of_one(number: usize, side: &Side) -> NamedSide {
    NamedSide {
        sides: vec![number],
        of_middle: false,
        number: side.leg + 1,
        looks: Some(side.looks()),
        is_straight: side.is_straight(),
        called: if side.is_straight() {
            Vec::new()
        } else {
            vec![ShapeSide::Arc]
        },
    }
}

/// What a path of so many pieces calls the side of this number.
fn of_path(many: usize, number: usize) -> ShapeSide {
    match number {
        right if right <= many => ShapeSide::Right,
        end if end == many + 1 => ShapeSide::End,
        left if left <= 2 * many + 1 => ShapeSide::Left,
        _ => ShapeSide::Start,
    }
}

/// What its shape calls a side beside `arc`.
fn called(size: Option<SizePhrase>, side: &NamedSide) -> Option<ShapeSide> {
    let Some(SizePhrase::Shape(shape)) = size else {
        return None;
    };
    match shape {
        ShapePhrase::RightTriangle { .. } => Some(match side.looks? {
            Direction::North | Direction::South => ShapeSide::Base,
            Direction::East | Direction::West => ShapeSide::Height,
            Direction::NorthEast
            | Direction::SouthEast
            | Direction::SouthWest
            | Direction::NorthWest => ShapeSide::LongSide,
        }),
        ShapePhrase::Trapezoid { .. } => match side.number {
            2 => Some(ShapeSide::EastEnd),
            4 => Some(ShapeSide::WestEnd),
            _ => None,
        },
        ShapePhrase::Ring { .. } if side.of_middle => Some(ShapeSide::InnerArc),
        ShapePhrase::Ring { .. } => Some(ShapeSide::OuterArc),
        // The straight side of a half circle; of other sectors there are two.
        ShapePhrase::Sector { angle, .. } => (angle == crate::geometry::Angle::HALF
            && side.is_straight)
            .then_some(ShapeSide::FlatSide),
        ShapePhrase::RingSector { .. } => match side.number {
            2 => Some(ShapeSide::OuterArc),
            4 => Some(ShapeSide::InnerArc),
            _ => None,
        },
        ShapePhrase::Triangle { .. } => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shape(text: &str) -> (SizePhrase, Outline) {
        let size: SizePhrase = text.parse().unwrap();
        let outline = match size {
            SizePhrase::Rectangle {
                east_west,
                north_south,
            } => Outline::rectangle(east_west, north_south),
            SizePhrase::Circle { diameter } => Outline::circle(diameter),
            SizePhrase::Shape(shape) => shape.outline().unwrap(),
            SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => unreachable!(),
        };
        (size, outline)
    }

    #[test]
    fn every_side_of_every_shape_has_a_name_of_its_own() {
        #[track_caller]
        fn case(text: &str, names: &[&str]) {
            let (size, outline) = shape(text);
            let sides = Sides::of(Some(size), &outline);
            assert_eq!(sides.names(sides.all()), names, "{text}");
            for (name, side) in names.iter().zip(sides.all()) {
                assert_eq!(sides.bearing(name.parse().unwrap()), [side], "{name}");
            }
        }
        case("12 ft x 15 ft", &["south", "east", "north", "west"]);
        case("triangle 9 ft x 12 ft x 15 ft", &["south", "east", "15 ft"]);
        let slanted = &["south", "15 ft", "13 ft"];
        case("triangle 14 ft x 15 ft x 13 ft", slanted);
        let square = &["south", "long side", "west"];
        case("triangle 12 ft x 9 ft, square at southwest", square);
        let ends = &["south", "east end", "north", "west end"];
        case("trapezoid 20 ft and 14 ft, 8 ft apart", ends);
        let one_square = &["south", "east end", "north", "west"];
        case(
            "trapezoid 20 ft and 14 ft, 8 ft apart, square at west",
            one_square,
        );
        case("circle 12 ft", &["arc"]);
        case(
            "ring 20 ft outside, 8 ft inside",
            &["outer arc", "inner arc"],
        );
        case("half circle 12 ft, flat at north", &["north", "arc"]);
        let quarter = &["south", "arc", "west"];
        case("quarter circle 6 ft radius, square at southwest", quarter);
        let large = &["northeast", "arc", "northwest"];
        case("sector 12 ft radius, 300 degrees, toward south", large);
        case(
            "ring sector 12 ft outside radius, 8 ft inside radius, 90 degrees, toward northeast",
            &["south", "outer arc", "west", "inner arc"],
        );
        // Both radii look southwest, and are as long as each other.
        let alike = &["side 1", "arc", "side 3"];
        case("sector 12 ft radius, 170 degrees, toward northeast", alike);
    }

    #[test]
    fn a_name_bears_every_side_it_may_mean() {
        #[track_caller]
        fn case(text: &str, name: &str, numbers: &[usize]) {
            let (size, outline) = shape(text);
            let sides = Sides::of(Some(size), &outline);
            let found = sides.bearing(name.parse().unwrap()).into_iter();
            let found: Vec<usize> = found.map(|side| side.number).collect();
            assert_eq!(found, numbers, "{name} of {text}");
        }
        let triangle = "triangle 9 ft x 12 ft x 15 ft";
        case(triangle, "15 ft", &[3]);
        case(triangle, "15 ft 1/2 in", &[3]);
        case(triangle, "15 ft 9/16 in", &[]);
        case(triangle, "northwest side", &[3]);
        case(triangle, "side 2", &[2]);
        case(triangle, "north", &[]);
        case(triangle, "arc", &[]);
        // 12 ft is exact, so a half inch beside it is not meant.
        case("triangle 12 ft x 12 ft 1/2 in x 15 ft", "12 ft", &[1]);
        case(
            "triangle 12 ft x 12 ft 1/2 in x 15 ft",
            "12 ft 1/4 in",
            &[1, 2],
        );
        let trapezoid = "trapezoid 20 ft and 14 ft, 8 ft apart";
        // √(3² + 8²) = 8.544 ft = 8 ft 6.528 in.
        case(trapezoid, "8 ft 6 1/2 in", &[2, 4]);
        case(trapezoid, "north side", &[3]);
        case(trapezoid, "east end", &[2]);
        case("12 ft x 15 ft", "15 ft", &[2, 4]);
        case("ring 20 ft outside, 8 ft inside", "arc", &[1, 1]);
        case("half circle 12 ft, flat at north", "flat side", &[1]);
        // 18.85 ft of curve.
        case("half circle 12 ft, flat at north", "18 ft 10 1/4 in", &[2]);
    }
}
