//! Contraction joints: how far apart, how deep, and how long a panel may be.
//!
//! Sources: spacing by slab thickness from a Portland Cement Association table
//! reprinted in a masonry and concrete textbook, with the 15 ft cap of NRMCA
//! CIP 6 as restated by another page; ACI 302.1R-96 as restated by a trade
//! magazine caps at 18 ft, so the cap is the owner's setting. Panel shape from
//! a trade column; depth and walks from UFGS 03300N sections 3.8.3 to 3.8.5.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::values::Length;

/// How many slab thicknesses apart joints may stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Spacing {
    /// 24 thicknesses: aggregate under 3/4 in. The default, because it is the safest.
    SmallAggregate,
    /// 30 thicknesses: aggregate of 3/4 in and over.
    LargeAggregate,
    /// 36 thicknesses: slump under 4 in.
    LowSlump,
}

impl Spacing {
    pub const fn thicknesses(self) -> i64 {
        match self {
            Self::SmallAggregate => 24,
            Self::LargeAggregate => 30,
            Self::LowSlump => 36,
        }
    }
}

/// The cap on joint spacing, whatever the thickness, unless the owner says otherwise.
pub const CAP: Length = Length::feet_whole(15);
/// Joints of walks stand no further apart than this.
pub const WALK_SPACING: Length = Length::feet_whole(5);
/// Joints of curbs stand no further apart than this.
pub const CURB_SPACING: Length = Length::feet_whole(10);
/// The usual thickness of an isolation strip.
pub const ISOLATION: Length = Length::sixty_fourths(32);

/// The longest joint spacing for a slab of this thickness.
pub fn longest_spacing(thickness: Length, spacing: Spacing, cap: Length) -> Length {
    (thickness * spacing.thicknesses()).min(cap)
}

/// Depth of a tooled or sawn groove: a quarter of the slab, at least 1 in.
pub fn groove_depth(thickness: Length) -> Length {
    thickness.half().half().max(Length::inches_whole(1))
}

/// Long side over short side that a panel should not pass.
pub const PREFERRED_RATIO: Decimal = dec!(1.25);
/// Long side over short side that a panel must never pass.
pub const LONGEST_RATIO: Decimal = dec!(1.5);

/// How well a panel is shaped; long panels crack across.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PanelShape {
    /// Up to 1.25.
    Good,
    /// Over 1.25, up to 1.5.
    Long,
    /// Over 1.5.
    TooLong,
}

/// The shape of a panel with these two sides, in either order.
pub fn panel_shape(one: Length, other: Length) -> PanelShape {
    let long = Decimal::from(one.max(other).as_nanometres());
    let short = Decimal::from(one.min(other).as_nanometres());
    if long <= short * PREFERRED_RATIO {
        PanelShape::Good
    } else if long <= short * LONGEST_RATIO {
        PanelShape::Long
    } else {
        PanelShape::TooLong
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn length(text: &str) -> Length {
        text.parse().unwrap()
    }

    /// The printed table is in whole feet (12 ft 6 in printed as 13), ours is not
    /// rounded, and never over the cap.
    #[test]
    fn agrees_with_the_published_spacings() {
        let printed = [(4, [8, 10, 12]), (5, [10, 13, 15]), (6, [12, 15, 18])];
        let rules = [
            Spacing::SmallAggregate,
            Spacing::LargeAggregate,
            Spacing::LowSlump,
        ];
        for (thickness, feet) in printed {
            for (rule, feet) in rules.into_iter().zip(feet) {
                let ours = longest_spacing(Length::inches_whole(thickness), rule, CAP);
                let printed = Length::feet_whole(feet).min(CAP);
                assert!(ours <= printed, "{thickness} in: {ours} over {printed}");
                assert!(printed - ours <= Length::inches_whole(6), "{thickness} in");
            }
        }
    }

    #[test]
    fn two_to_three_feet_to_the_inch_and_never_inches() {
        // "2 to 3 times the thickness in inches, read as feet": a test page prints inches.
        let six = Length::inches_whole(6);
        let wide = Length::feet_whole(100);
        assert_eq!(
            longest_spacing(six, Spacing::SmallAggregate, wide),
            length("12 ft")
        );
        assert_eq!(
            longest_spacing(six, Spacing::LowSlump, wide),
            length("18 ft")
        );
        assert_eq!(
            longest_spacing(six, Spacing::LowSlump, CAP),
            length("15 ft")
        );
    }

    #[test]
    fn a_groove_is_a_quarter_deep_and_never_under_an_inch() {
        assert_eq!(groove_depth(length("3.5 in")), length("1 in"));
        assert_eq!(groove_depth(length("4 in")), length("1 in"));
        assert_eq!(groove_depth(length("5 in")), length("1.25 in"));
        assert_eq!(groove_depth(length("8 in")), length("2 in"));
    }

    #[test]
    fn panels_are_best_square() {
        #[track_caller]
        fn case(one: &str, other: &str, shape: PanelShape) {
            assert_eq!(panel_shape(length(one), length(other)), shape);
            assert_eq!(panel_shape(length(other), length(one)), shape);
        }
        case("9 ft", "10 ft", PanelShape::Good);
        case("10 ft", "8 ft", PanelShape::Good); // exactly 1.25
        case("10 ft 1/64 in", "8 ft", PanelShape::Long);
        case("12 ft", "8 ft", PanelShape::Long); // exactly 1.5
        case("12 ft 1/64 in", "8 ft", PanelShape::TooLong);
        case("12 ft", "4 ft", PanelShape::TooLong);
    }
}
