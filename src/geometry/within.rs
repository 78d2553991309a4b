//! Whether one outline lies within another.

use super::outline::Outline;
use super::point::Point;

impl Outline {
    /// Whether `other` lies wholly on this outline; it may touch its edge.
    pub fn holds(&self, other: &Outline) -> bool {
        let corners = other.chords();
        // A slab's corner inside the other, or that of an opening, would mean that the slab ends there.
        let rings = std::iter::once(self).chain(self.holes());
        let bites = rings
            .flat_map(Outline::chords)
            .any(|corner| inside(other, corner));
        !bites && corners.iter().all(|&corner| self.has(corner))
    }

    /// Whether a place lies on its edge, not that of a hole.
    pub fn has_at_edge(&self, place: Point) -> bool {
        on_edge(&self.chords(), place)
    }

    /// The straight sides a place lies on, two at a corner.
    pub fn sides_at(&self, place: Point) -> impl Iterator<Item = usize> {
        let straight = self.sides().iter().enumerate();
        let straight = straight.filter(|(_, side)| side.is_straight());
        straight
            .filter(move |(_, side)| on_edge(&[side.from, side.to], place))
            .map(|(number, _)| number)
    }

    /// Whether a place lies on the outline or its edge.
    pub fn has(&self, place: Point) -> bool {
        inside(self, place) || on_edge(&self.chords(), place)
    }
}

fn inside(outline: &Outline, place: Point) -> bool {
    let spans = outline.spans_at_y(place.y);
    spans
        .iter()
        .any(|(west, east)| *west < place.x && place.x < *east)
}

/// Within a nanometre or two: crossings are whole nanometres.
fn on_edge(polygon: &[Point], place: Point) -> bool {
    let next = polygon.iter().cycle().skip(1);
    polygon.iter().zip(next).any(|(&a, &b)| {
        let (low, high) = if a.y <= b.y { (a, b) } else { (b, a) };
        if place.y < low.y - 2 || high.y + 2 < place.y {
            return false;
        }
        let (west, east) = (a.x.min(b.x), a.x.max(b.x));
        let rise = i128::from(high.y - low.y);
        if rise <= 4 {
            return west - 2 <= place.x && place.x <= east + 2;
        }
        let run = i128::from(high.x - low.x) * i128::from(place.y - low.y) / rise;
        let at = i128::from(low.x) + run;
        (at - i128::from(place.x)).abs() <= 2
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::walks::walked;
    use crate::values::Length;

    fn square(feet: i64) -> Outline {
        Outline::rectangle(Length::feet_whole(feet), Length::feet_whole(feet))
    }

    fn at(outline: &Outline, east: i64, north: i64) -> Outline {
        let foot = Length::feet_whole(1).as_nanometres();
        outline.moved(Point::new(east * foot, north * foot))
    }

    #[test]
    fn a_small_outline_lies_within_a_large_one_or_does_not() {
        let (slab, small) = (square(10), square(2));
        let round = Outline::circle(Length::feet_whole(2));
        for one in [&small, &round] {
            assert!(slab.holds(&at(one, 4, 4)));
            assert!(slab.holds(&at(one, 0, 0)), "it may touch the edge");
            assert!(slab.holds(&at(one, 8, 8)), "it may touch the edge");
            assert!(!slab.holds(&at(one, 9, 4)));
            assert!(!slab.holds(&at(one, -1, 4)));
            assert!(!slab.holds(&at(one, 20, 4)));
        }
        assert!(!small.holds(&at(&slab, -4, -4)));
    }

    #[test]
    fn the_notch_of_a_slab_is_outside() {
        // Ten by ten without its south-east quarter; the walk begins at the north-west corner.
        let slab = walked("east 10 ft, south 5 ft, west 5 ft, south 5 ft, west 5 ft, north 10 ft");
        let small = square(2);
        assert!(slab.holds(&at(&small, 1, -9)));
        assert!(!slab.holds(&at(&small, 7, -9)));
        assert!(!slab.holds(&at(&small, 4, -6)), "over the inner corner");
    }

    #[test]
    fn a_slot_that_ends_under_a_square_spoils_it() {
        // Ten feet by ten, with a slot of six inches from the east to its middle.
        let slab = walked(
            "east 10 ft, south 57 in, west 5 ft, south 6 in, east 5 ft, south 57 in, west 10 ft, north 10 ft",
        );
        assert!(
            !slab.holds(&at(&square(2), 4, -6)),
            "its corners alone lie inside"
        );
        assert!(slab.holds(&at(&square(2), 2, -6)));
    }

    #[test]
    fn round_slabs_hold_what_lies_inside_their_curve() {
        let slab = Outline::circle(Length::feet_whole(10));
        assert!(slab.holds(&at(&square(2), 4, 4)));
        assert!(!slab.holds(&at(&square(2), 0, 0)));
        // A small circle in the same corner of the box is outside as well.
        let small = Outline::circle(Length::feet_whole(1));
        assert!(!slab.holds(&small));
    }

    #[test]
    fn nothing_lies_within_an_opening() {
        let slab = square(10).with_hole(at(&square(2), 4, 4)).unwrap();
        assert!(slab.holds(&at(&square(2), 1, 1)));
        assert!(!slab.holds(&at(&square(2), 4, 4)), "in the opening");
        assert!(!slab.holds(&at(&square(2), 3, 3)), "over its corner");
        assert!(!slab.holds(&at(&square(4), 3, 3)), "all around it");
    }
}
