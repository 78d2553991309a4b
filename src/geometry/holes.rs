//! Holes in an outline: inside it, touching neither it nor each other.

use super::cross;
use super::outline::Outline;
use super::point::Point;

/// Why something is not a hole of an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HoleError {
    /// It lies outside.
    Outside,
    /// It crosses or touches the outline.
    MeetsOutline,
    /// It crosses, touches, holds or lies within hole number so many, counted from 0.
    MeetsHole(usize),
}

impl Outline {
    /// This outline with one more hole.
    ///
    /// # Errors
    /// When the hole is not wholly inside, or meets another hole.
    pub fn with_hole(mut self, hole: Self) -> Result<Self, HoleError> {
        if meet(&self.chords(), &hole.chords()) {
            return Err(HoleError::MeetsOutline);
        }
        if !self.without_holes().holds_point(hole.chords()[0]) {
            return Err(HoleError::Outside);
        }
        let clash = self.holes.iter().position(|other| {
            meet(&other.chords(), &hole.chords())
                || other.holds_point(hole.chords()[0])
                || hole.holds_point(other.chords()[0])
        });
        if let Some(other) = clash {
            return Err(HoleError::MeetsHole(other));
        }
        self.holes.push(hole);
        Ok(self)
    }

    pub fn holes(&self) -> &[Self] {
        &self.holes
    }

    /// The outline alone, as if nothing in it were left open.
    #[must_use]
    pub fn without_holes(&self) -> Self {
        let mut alone = self.clone();
        alone.holes.clear();
        alone
    }

    /// Whether a place off every side is inside: so it is when the line through it has slab there.
    fn holds_point(&self, place: Point) -> bool {
        let spans = self.spans_at_y(place.y);
        spans
            .iter()
            .any(|&(from, to)| from < place.x && place.x < to)
    }

    /// The outline and its holes as polygons.
    pub(super) fn rings(&self) -> Vec<&[Point]> {
        let own = std::iter::once(self.polygon());
        own.chain(self.holes.iter().map(Self::polygon)).collect()
    }
}

/// Whether two polygons have a point of their sides in common.
fn meet(one: &[Point], other: &[Point]) -> bool {
    let segments = |all: &[Point]| -> Vec<(Point, Point)> {
        let next = all.iter().cycle().skip(1);
        all.iter().copied().zip(next.copied()).collect()
    };
    let others = segments(other);
    segments(one)
        .into_iter()
        .any(|a| others.iter().any(|&b| cross::touch(a, b)))
}

#[cfg(test)]
mod tests {
    use rust_decimal::Decimal;
    use rust_decimal_macros::dec;

    use super::*;
    use crate::values::Length;

    fn feet(n: i64) -> Length {
        Length::feet_whole(n)
    }

    fn at(east: i64, north: i64) -> Point {
        Point::new(feet(east).as_nanometres(), feet(north).as_nanometres())
    }

    fn slab() -> Outline {
        Outline::rectangle(feet(20), feet(16))
    }

    fn square(wide: i64, east: i64, north: i64) -> Outline {
        Outline::rectangle(feet(wide), feet(wide)).moved(at(east, north))
    }

    #[test]
    fn lines_stop_at_a_hole_and_go_on_behind_it() {
        let slab = slab().with_hole(square(4, 6, 5)).unwrap();
        let spans = |all: Vec<(i64, i64)>| -> Vec<(Decimal, Decimal)> {
            let feet = |v: i64| Length::nanometres(v).feet();
            all.into_iter().map(|(a, b)| (feet(a), feet(b))).collect()
        };
        let cut = vec![(dec!(0), dec!(6)), (dec!(10), dec!(20))];
        assert_eq!(spans(slab.spans_at_y(feet(7).as_nanometres())), cut);
        // Along the side of the hole there is slab on one side only.
        assert_eq!(spans(slab.spans_at_y(feet(5).as_nanometres())), cut);
        let whole = vec![(dec!(0), dec!(20))];
        assert_eq!(spans(slab.spans_at_y(feet(4).as_nanometres())), whole);
        let across = vec![(dec!(0), dec!(5)), (dec!(9), dec!(16))];
        assert_eq!(spans(slab.spans_at_x(feet(8).as_nanometres())), across);
        let away = slab.moved(at(3, -2));
        assert_eq!(away.holes()[0].bounds().0, at(9, 3));
    }

    #[test]
    fn a_hole_keeps_clear_of_the_outline_and_of_other_holes() {
        #[track_caller]
        fn case(hole: Outline, error: HoleError) {
            let slab = slab().with_hole(square(4, 6, 5)).unwrap();
            assert_eq!(slab.with_hole(hole), Err(error));
        }
        case(square(4, 30, 5), HoleError::Outside);
        case(square(4, 16, 5), HoleError::MeetsOutline);
        case(square(4, 18, 5), HoleError::MeetsOutline);
        case(square(60, -10, -10), HoleError::Outside);
        case(square(4, 10, 5), HoleError::MeetsHole(0));
        case(square(4, 8, 7), HoleError::MeetsHole(0));
        case(square(2, 7, 6), HoleError::MeetsHole(0));
        case(square(8, 4, 3), HoleError::MeetsHole(0));
        case(square(4, 6, 5), HoleError::MeetsHole(0));
        let round = Outline::circle(feet(4)).moved(at(11, 5));
        assert!(slab().with_hole(round).is_ok());
    }
}
