//! Concrete over the steel of a slab on ground.
//!
//! Source: US Army TI 809-28, passage seen. The 3 in of ACI 318-19 Table
//! 20.5.1.3.1 is for footings and the like, as an ACI answer says; in a 4 in
//! slab it would leave half an inch above a no. 4 bar.

use crate::values::Length;

/// Concrete above the steel: a quarter of the slab, 1 1/2 in at least, 2 1/2 in at most.
pub fn top_cover(thickness: Length) -> Length {
    thickness
        .half()
        .half()
        .max(Length::sixty_fourths(96))
        .min(Length::sixty_fourths(160))
}

/// How far bars may be off in a member of 4 to 12 in (ACI 117-06, seen as restated).
pub const CHAIR_TOLERANCE: Length = Length::sixty_fourths(24);

/// The lowest and the highest chair for steel so thick in all: its middle lies no lower than that of
/// the slab (the middle to the upper third, Florida Building Code 1909.3 as restated), and its top no
/// higher than the cover.
pub fn chair_heights(thickness: Length, steel: Length) -> (Length, Length) {
    let (middle, high) = (
        thickness.half() - steel.half(),
        thickness - top_cover(thickness) - steel,
    );
    (middle.min(high), high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tables::bars::Bar;

    #[test]
    fn a_quarter_of_the_slab_within_bounds() {
        #[track_caller]
        fn case(thickness: &str, cover: &str) {
            let length = |text: &str| text.parse::<Length>().unwrap();
            assert_eq!(top_cover(length(thickness)), length(cover), "{thickness}");
        }
        case("4 in", "1.5 in");
        case("6 in", "1.5 in");
        case("8 in", "2 in");
        case("10 in", "2.5 in");
        case("12 in", "2.5 in");
    }

    #[test]
    fn chairs_reach_from_the_middle_to_the_cover() {
        #[track_caller]
        fn case(thickness: i64, bars: i64, low: &str, high: &str) {
            let length = |text: &str| text.parse::<Length>().unwrap();
            let steel = Bar::No4.diameter() * bars;
            let heights = chair_heights(Length::inches_whole(thickness), steel);
            assert_eq!(heights, (length(low), length(high)), "{thickness} in");
        }
        case(5, 2, "2 in", "2 1/2 in");
        case(6, 2, "2 1/2 in", "3 1/2 in");
        case(4, 0, "2 in", "2 1/2 in");
        case(8, 1, "3 3/4 in", "5 1/2 in");
        // Where there is no room between both, the cover counts.
        case(3, 2, "1/2 in", "1/2 in");
    }

    /// The steel must lie in the upper half and still inside the slab.
    #[test]
    fn leaves_room_for_crossing_bars() {
        for inches in 4..=12 {
            let thickness = Length::inches_whole(inches);
            let used = top_cover(thickness) + Bar::No4.diameter() * 2;
            assert!(used < thickness, "{inches} in");
            assert!(top_cover(thickness) < thickness.half(), "{inches} in");
        }
    }
}
