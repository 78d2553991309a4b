//! Limits of steps at a house.
//!
//! Source: IRC R311.7 as restated: a Maine town's page on stairs (Buxton) and a
//! page on dwellings both give 7 3/4 in and 10 in; the second and two others
//! give 3/8 in between the largest and the smallest riser of a flight. That a
//! rail is asked for from four risers on could not be read. Towns differ, and some
//! do not count steps in a garden.

use super::{Read, Source};
use crate::values::Length;

/// The tallest riser.
pub const TALLEST_RISER: Length = Length::sixty_fourths(7 * 64 + 48);
/// The shallowest tread, nosing to nosing.
pub const SHALLOWEST_TREAD: Length = Length::inches_whole(10);
/// Between the largest and the smallest riser of a flight.
pub const UNEVEN: Length = Length::sixty_fourths(24);
/// Risers from which a rail is asked for.
pub const RAIL_FROM: u32 = 4;

pub const SOURCE: Source = Source::new("IRC R311.7", "", Read::Secondary);
pub const RAIL_SOURCE: Source = Source::PRACTICE;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn repeats_the_figures_as_restated() {
        let length = |text: &str| text.parse::<Length>().unwrap();
        assert_eq!(TALLEST_RISER, length("7 3/4 in"));
        assert_eq!(SHALLOWEST_TREAD, length("10 in"));
        assert_eq!(UNEVEN, length("3/8 in"));
        assert_eq!(RAIL_FROM, 4);
    }
}
