//! The levels an owner shot at corners: the plane nearest to all of them, and how far each lies off it.

use rust_decimal::Decimal;

use crate::geometry::{Compass, Outline, Point};
use crate::values::Length;

/// A corner with its level.
#[derive(Clone, Debug)]
pub struct CornerLevel {
    pub name: String,
    pub at: Point,
    pub level: Length,
}

/// What the levels of a slab come to.
#[derive(Clone, Debug)]
pub struct Levels {
    /// Three or more, not all in a line.
    pub corners: Vec<CornerLevel>,
    /// Rise of the plane in each foot to the east and to the north.
    rise: (Decimal, Decimal),
    /// How far each corner lies above the plane, or with a minus below it.
    off: Vec<Length>,
}

/// A fall one way that is less than this in a foot is none: 1/32 in. Common practice, no source.
const LEAST: Length = Length::sixty_fourths(2);

impl Levels {
    /// By least squares: the plane from which the corners lie off least, each squared; none where all
    /// lie in one line.
    pub fn of(corners: Vec<CornerLevel>) -> Option<Self> {
        let many = Decimal::from(corners.len());
        let feet = |one: &CornerLevel| {
            let along = |n: i64| Length::nanometres(n).feet();
            [along(one.at.x), along(one.at.y), one.level.feet()]
        };
        let all: Vec<[Decimal; 3]> = corners.iter().map(feet).collect();
        let mean = |i: usize| {
            all.iter()
                .map(|one| one[i])
                .sum::<Decimal>()
                .checked_div(many)
        };
        let middle = [mean(0)?, mean(1)?, mean(2)?];
        let product = |i: usize, j: usize| -> Decimal {
            let apart = all
                .iter()
                .map(|one| (one[i] - middle[i]) * (one[j] - middle[j]));
            apart.sum()
        };
        let (xx, xy, yy) = (product(0, 0), product(0, 1), product(1, 1));
        let (xz, yz) = (product(0, 2), product(1, 2));
        let whole = xx * yy - xy * xy;
        let east = (xz * yy - yz * xy).checked_div(whole)?;
        let north = (yz * xx - xz * xy).checked_div(whole)?;
        let off = all.iter().map(|[x, y, z]| {
            let plane = middle[2] + east * (x - middle[0]) + north * (y - middle[1]);
            Length::of_feet(z - plane)
        });
        let (rise, off) = ((east, north), off.collect());
        Some(Self { corners, rise, off })
    }

    /// The fall each way, where it is one: how much in a foot, and to where.
    pub fn falls(&self) -> Vec<(Length, Compass)> {
        let (east, north) = self.rise;
        let ways = [
            (east, Compass::West, Compass::East),
            (north, Compass::South, Compass::North),
        ];
        let falls = ways.into_iter().map(|(rise, low, high)| {
            let to = if Decimal::ZERO < rise { low } else { high };
            (Length::of_feet(rise.abs()), to)
        });
        falls.filter(|(rise, _)| LEAST <= *rise).collect()
    }

    /// The lowest corners; all where the slab is level.
    pub fn lowest(&self) -> Vec<&str> {
        let least = self.corners.iter().map(|one| one.level).min();
        let low = self.corners.iter().filter(|one| Some(one.level) == least);
        low.map(|one| one.name.as_str()).collect()
    }

    /// The corner that lies farthest off the plane, and how far; none where all lie in it.
    pub fn farthest_off(&self) -> Option<(&str, Length)> {
        let all = self.corners.iter().zip(&self.off);
        let (corner, off) = all.max_by_key(|(_, off)| off.abs())?;
        // A nanometre or two is the rounding of lengths.
        (Length::nanometres(1000) < off.abs()).then_some((corner.name.as_str(), *off))
    }

    /// The level of a corner of the outline, where it was shot.
    pub fn at(&self, at: Point) -> Option<Length> {
        let corner = self.corners.iter().find(|one| one.at == at);
        corner.map(|one| one.level)
    }

    /// The same, with the slab at another place.
    pub fn moved(mut self, by: Point) -> Self {
        for corner in &mut self.corners {
            corner.at = corner.at + by;
        }
        self
    }
}

/// The corner of an outline that is meant: `northwest` is the one farthest that way, where there is
/// only one; `corner 3` is where the third side begins, as walked.
pub(super) fn corner(name: &str, outline: &Outline) -> Option<Point> {
    let sides = outline.sides();
    if let Some(number) = name.strip_prefix("corner ") {
        let leg = number.trim().parse::<usize>().ok()?.checked_sub(1)?;
        let side = sides.iter().find(|side| side.leg == leg)?;
        // Walked the other way round, a side begins where it ends in the outline.
        let is_turned = sides.get(1).is_some_and(|second| second.leg != 1);
        return Some(if is_turned { side.to } else { side.from });
    }
    let (east, north) = match name {
        "northwest" => (-1, 1),
        "northeast" => (1, 1),
        "southwest" => (-1, -1),
        "southeast" => (1, -1),
        _ => return None,
    };
    let far = |point: Point| point.x * east + point.y * north;
    let most = sides.iter().map(|side| far(side.from)).max()?;
    let mut there = sides
        .iter()
        .map(|side| side.from)
        .filter(|one| far(*one) == most);
    let only = there.next();
    only.filter(|_| there.next().is_none())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shot(levels: [i64; 4]) -> Levels {
        let outline = Outline::rectangle(Length::feet_whole(24), Length::feet_whole(12));
        let names = ["northwest", "northeast", "southeast", "southwest"];
        let corners = names
            .into_iter()
            .zip(levels)
            .map(|(name, inches)| CornerLevel {
                name: name.to_owned(),
                at: corner(name, &outline).unwrap(),
                level: Length::inches_whole(inches),
            });
        Levels::of(corners.collect()).unwrap()
    }

    /// Three inches over 12 ft are a quarter in each; six over 24 ft too. A corner an inch off its place
    /// lies a quarter of it off the plane, like each of the others.
    #[test]
    fn the_falls_each_way_the_low_corner_and_what_is_off() {
        let quarter = Length::sixty_fourths(16);
        let south = shot([0, 0, -3, -3]);
        assert_eq!(south.falls(), [(quarter, Compass::South)]);
        assert_eq!(south.lowest(), ["southeast", "southwest"]);
        assert_eq!(south.farthest_off(), None);
        let both = shot([0, -6, -9, -3]);
        assert_eq!(
            both.falls(),
            [(quarter, Compass::East), (quarter, Compass::South)]
        );
        assert_eq!(both.lowest(), ["southeast"]);
        let (_, off) = shot([0, 0, -3, -4]).farthest_off().unwrap();
        assert_eq!(off.abs(), quarter);
        assert!(shot([5, 5, 5, 5]).falls().is_empty());
    }

    #[test]
    fn corners_are_meant_by_where_they_lie_or_as_walked() {
        let ell = crate::geometry::Outline::rectangle(Length::feet_whole(4), Length::feet_whole(2));
        let at = |name| corner(name, &ell).map(|at| (at.x / 304_800_000, at.y / 304_800_000));
        assert_eq!(at("southwest"), Some((0, 0)));
        assert_eq!(at("northeast"), Some((4, 2)));
        assert_eq!(at("corner 2"), Some((4, 0)));
        assert_eq!(at("corner 5"), None);
        assert_eq!(at("north"), None);
    }
}
