//! Welded wire reinforcement: styles, weights, and what a roll really covers.
//!
//! Source: ASTM A1064 styles and weights as printed in a trade magazine's table
//! of October 1975 and repeated in a training course; both agree. The standard
//! was not opened. The rolls are those of two course problems.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::values::{Area, Length, Unreadable};

/// A square style of plain-wire mesh.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mesh {
    spacing_inches: u8,
    /// Wire size in tenths: 14 is W1.4, whose area is 0.014 sq in.
    wire_tenths: u8,
    /// The old wire gauge.
    gauge: u8,
    /// Pounds per 100 sq ft, as printed.
    pounds: u8,
}

const fn style(spacing_inches: u8, wire_tenths: u8, gauge: u8, pounds: u8) -> Mesh {
    Mesh {
        spacing_inches,
        wire_tenths,
        gauge,
        pounds,
    }
}

impl Mesh {
    pub const ALL: [Self; 9] = [
        style(6, 14, 10, 21),
        style(6, 20, 8, 29),
        style(6, 29, 6, 42),
        style(6, 40, 4, 58),
        style(6, 55, 2, 80),
        style(4, 14, 10, 31),
        style(4, 20, 8, 43),
        style(4, 29, 6, 62),
        style(4, 40, 4, 85),
    ];

    /// Width of the usual roll, 5 ft.
    pub const ROLL_WIDTH: Length = Length::feet_whole(5);
    /// Length of the usual roll, 150 ft.
    pub const ROLL_LENGTH: Length = Length::feet_whole(150);

    /// From wire to wire.
    pub const fn spacing(self) -> Length {
        Length::inches_whole(self.spacing_inches as i64)
    }

    /// Square inches of one wire: W1.4 is 0.014.
    pub fn wire_area(self) -> Decimal {
        Decimal::new(i64::from(self.wire_tenths), 3)
    }

    /// Square inches of steel to the foot of width, each way.
    pub fn area_per_foot(self) -> Decimal {
        self.wire_area() * dec!(12) / Decimal::from(self.spacing_inches)
    }

    /// Pounds per 100 sq ft, as published: 4 to 10% over the bare wires, for
    /// edge wires and overhangs are counted.
    pub fn pounds_per_100_square_feet(self) -> Decimal {
        Decimal::from(self.pounds)
    }

    /// `6x6 10/10`, the name by wire gauge that many yards still use.
    pub fn gauge_name(self) -> String {
        let (s, g) = (self.spacing_inches, self.gauge);
        format!("{s}x{s} {g}/{g}")
    }
}

/// What a sheet or roll covers once its neighbours lap over it.
///
/// Divide the slab by this; adding the lap as a percentage of the slab buys too
/// little (6 in on a 5 ft roll is 11.1% more mesh, not 10%). `None` when the
/// laps leave nothing.
pub fn net_cover(width: Length, length: Length, side_lap: Length, end_lap: Length) -> Option<Area> {
    let (across, along) = (width - side_lap, length - end_lap);
    (Length::ZERO < across && Length::ZERO < along).then(|| across * along)
}

/// `6x6 W1.4/W1.4`.
impl fmt::Display for Mesh {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let s = self.spacing_inches;
        let wire = Decimal::new(i64::from(self.wire_tenths), 1);
        out.pad(&format!("{s}x{s} W{wire}/W{wire}"))
    }
}

impl FromStr for Mesh {
    type Err = Unreadable;

    /// Reads `6x6 W1.4/W1.4`, `6x6-W1.4xW1.4`, and by gauge `6x6 10/10`.
    ///
    /// # Errors
    /// When no style has this name.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let wanted = plain(text);
        Self::ALL
            .into_iter()
            .find(|mesh| {
                [mesh.to_string(), mesh.gauge_name()]
                    .iter()
                    .any(|name| plain(name) == wanted)
            })
            .ok_or_else(|| {
                let known: Vec<String> = Self::ALL.iter().map(ToString::to_string).collect();
                Unreadable::new(
                    "unknown-mesh",
                    format!("`{}` is not a mesh style", text.trim()),
                    format!("use one of {}", known.join(", ")),
                )
            })
    }
}

/// The numbers of a name, so that `6x6-W1.4xW1.4` and `6 x 6 W1.4/W1.4` are one.
fn plain(text: &str) -> String {
    let lower = text.to_lowercase();
    let numbers: Vec<&str> = lower
        .split(|c: char| c.is_whitespace() || matches!(c, 'x' | '×' | '/' | '-'))
        .filter(|part| !part.is_empty())
        .collect();
    numbers.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published weights run 4 to 10% above the bare wires (two directions,
    /// 3.4 lb/ft to the square inch, 100 sq ft), so a slip in a digit shows.
    #[test]
    fn weights_are_a_little_over_the_bare_wires() {
        for mesh in Mesh::ALL {
            let bare = dec!(2) * mesh.area_per_foot() * dec!(3.4) * dec!(100);
            let ratio = mesh.pounds_per_100_square_feet() / bare;
            assert!(
                dec!(1.04) < ratio && ratio < dec!(1.11),
                "{mesh}: {ratio} of the bare wires"
            );
        }
    }

    /// Steel wire gauges: diameters 0.135, 0.162, 0.192, 0.2253, 0.2625 in for 10,
    /// 8, 6, 4, 2 (from memory), so each gauge must stand by the right wire.
    #[test]
    fn gauges_stand_by_their_wires() {
        for mesh in Mesh::ALL {
            let diameter = match mesh.gauge {
                10 => dec!(0.135),
                8 => dec!(0.162),
                6 => dec!(0.192),
                4 => dec!(0.2253),
                _ => dec!(0.2625),
            };
            let area = dec!(0.785398) * diameter * diameter;
            let error = (area - mesh.wire_area()).abs();
            assert!(error <= dec!(0.0013), "{mesh}: {area}");
        }
    }

    #[test]
    fn steel_to_the_foot() {
        // 0.15 sq in/ft at 4 in spacing would be W5.0 (Concrete Construction, 1975).
        let light: Mesh = "4x4 W4.0/W4.0".parse().unwrap();
        assert_eq!(light.area_per_foot(), dec!(0.120));
        let usual: Mesh = "6x6 W1.4/W1.4".parse().unwrap();
        assert_eq!(usual.area_per_foot(), dec!(0.028));
    }

    #[test]
    fn a_lapped_roll_covers_less() {
        let roll = Mesh::ROLL_WIDTH * Mesh::ROLL_LENGTH;
        let six = Length::inches_whole(6);
        let cover = net_cover(Mesh::ROLL_WIDTH, Mesh::ROLL_LENGTH, six, Length::ZERO).unwrap();
        assert_eq!(roll.square_feet(), dec!(750));
        assert_eq!(cover.square_feet(), dec!(675)); // 11.1% more must be bought
        let both = net_cover(Mesh::ROLL_WIDTH, Mesh::ROLL_LENGTH, six, six).unwrap();
        let more = roll.square_feet() / both.square_feet() - Decimal::ONE;
        assert!((more - dec!(0.115)).abs() < dec!(0.0005), "{more}");
        assert_eq!(
            net_cover(Mesh::ROLL_WIDTH, Mesh::ROLL_LENGTH, Mesh::ROLL_WIDTH, six),
            None
        );
    }

    #[test]
    fn reads_styles_as_they_are_written() {
        #[track_caller]
        fn case(text: &str, name: &str) {
            assert_eq!(text.parse::<Mesh>().unwrap().to_string(), name, "{text}");
        }
        case("6x6 W1.4/W1.4", "6x6 W1.4/W1.4");
        case("6x6-W1.4xW1.4", "6x6 W1.4/W1.4");
        case("6 x 6 w2.9 x w2.9", "6x6 W2.9/W2.9");
        case("6x6 10/10", "6x6 W1.4/W1.4");
        case("4x4-8x8", "4x4 W2.0/W2.0");
        for mesh in Mesh::ALL {
            case(&mesh.to_string(), &mesh.to_string());
        }
        for text in ["", "6x6", "6x6 W9/W9", "5x5 W1.4/W1.4"] {
            assert_eq!(
                text.parse::<Mesh>().map_err(|e| e.code),
                Err("unknown-mesh")
            );
        }
    }
}
