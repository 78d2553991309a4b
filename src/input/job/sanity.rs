//! Sizes no residential slab has: most likely a slip of the unit.

use rust_decimal::Decimal;

use crate::geometry::Outline;
use crate::reading::{At, Place, Problem, Problems};
use crate::values::Length;

/// Thicker than this is a footing, not flatwork.
const THICKEST: Length = Length::inches_whole(24);
/// Thinner than this is a topping, not a slab.
const THINNEST: Length = Length::inches_whole(1);

pub(super) fn thickness(slab: &str, thickness: &At<Length>, problems: &mut Problems) {
    let value = thickness.value;
    if THICKEST < value {
        let feet = value.feet().normalize();
        let help = if feet.fract().is_zero() && feet <= Decimal::from(12) {
            format!("did you mean `{feet} in`?")
        } else {
            "thickness is in inches, for example `4 in`".to_owned()
        };
        problems.push(
            Problem::new(
                "absurd-thickness",
                format!("`{slab}` would be {value} thick"),
            )
            .at(thickness.place)
            .help(help),
        );
    } else if value < THINNEST {
        problems.push(
            Problem::new(
                "absurd-thickness",
                format!("`{slab}` would be only {value} thick"),
            )
            .at(thickness.place)
            .help("thickness is in inches, for example `4 in`"),
        );
    }
}

/// Narrower than this is no strip, curb or footing either. Common practice, no source.
const NARROWEST: Length = Length::inches_whole(3);

/// What is narrow and may be meant is asked about in advice.
pub(super) fn area(slab: &str, outline: &Outline, place: Place, problems: &mut Problems) {
    let least = outline.narrowest();
    if least < NARROWEST {
        problems.push(
            Problem::new(
                "absurd-size",
                format!("`{slab}` would be only {least} wide"),
            )
            .at(place)
            .help("did you mean feet? Write, for example, `4 ft`"),
        );
    }
}
