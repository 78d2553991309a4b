//! Contraction joints: how far apart and how deep.
//!
//! Sources: spacing by slab thickness from a Portland Cement Association table
//! reprinted in a masonry and concrete textbook, with the 15 ft cap of NRMCA
//! CIP 6 as restated by another page; ACI 302.1R-96 as restated by a trade
//! magazine caps at 18 ft. Depth and walks from UFGS 03300N sections 3.8.3 to 3.8.5.

use crate::values::Length;

/// The cap on joint spacing, whatever the thickness.
pub const CAP: Length = Length::feet_whole(15);
/// Joints of walks stand no further apart than this.
pub const WALK_SPACING: Length = Length::feet_whole(5);
/// The usual thickness of an isolation strip.
pub const ISOLATION: Length = Length::sixty_fourths(32);

/// The longest joint spacing for a slab of this thickness: 24 times as long, 30 times with
/// stone of 3/4 in and over.
///
/// Small stone shrinks more; where the stone is not known, the safer rule holds.
pub fn longest_spacing(thickness: Length, stone: Option<Length>) -> Length {
    let large = stone.is_some_and(|stone| Length::sixty_fourths(48) <= stone);
    (thickness * if large { 30 } else { 24 }).min(CAP)
}

/// When a conventional saw cuts: an editor's answer in a trade magazine.
pub const LATE_WINDOW: &str = "about 4 hours after finishing in the heat, up to 3 days in the cold: as soon as a trial cut does not ravel";
/// When an early-entry saw does: NRMCA CIP 6 as restated by another page.
pub const EARLY_WINDOW: &str = "1 to 4 hours after finishing, the same day";
/// How deep an early-entry saw cuts, at least; common practice, no source.
pub const EARLY_DEPTH: Length = Length::inches_whole(1);

/// Depth of a tooled or conventionally sawn groove: a quarter of the slab, at least 1 in.
pub fn groove_depth(thickness: Length) -> Length {
    thickness.half().half().max(Length::inches_whole(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The printed table is in whole feet (12 ft 6 in printed as 13), ours is not
    /// rounded, and never over the cap. It is feet to the inch: a test page prints inches.
    #[test]
    fn agrees_with_the_published_spacings() {
        let printed = [(4, [8, 10]), (5, [10, 13]), (6, [12, 15])];
        let stones = [Length::sixty_fourths(32), Length::sixty_fourths(48)];
        for (thickness, feet) in printed {
            for (stone, feet) in stones.into_iter().zip(feet) {
                let ours = longest_spacing(Length::inches_whole(thickness), Some(stone));
                let printed = Length::feet_whole(feet);
                assert!(ours <= printed, "{thickness} in: {ours} over {printed}");
                assert!(printed - ours <= Length::inches_whole(6), "{thickness} in");
            }
        }
        let eight = Length::inches_whole(8);
        assert_eq!(longest_spacing(eight, Some(eight)), CAP);
        assert_eq!(longest_spacing(eight.half(), None), Length::feet_whole(8));
    }

    #[test]
    fn a_groove_is_a_quarter_deep_and_never_under_an_inch() {
        #[track_caller]
        fn case(thickness: &str, depth: &str) {
            let length = |text: &str| text.parse::<Length>().unwrap();
            assert_eq!(groove_depth(length(thickness)), length(depth));
        }
        case("3.5 in", "1 in");
        case("4 in", "1 in");
        case("5 in", "1.25 in");
        case("8 in", "2 in");
    }
}
