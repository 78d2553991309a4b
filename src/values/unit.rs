//! The units in which quantities are measured, bought and priced.

use std::fmt;
use std::str::FromStr;

use super::Unreadable;

macro_rules! units {
    ($($variant:ident $symbol:literal $plural:literal $also:expr;)*) => {
        /// What one of something is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Unit { $($variant,)* }

        impl Unit {
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// After a number of exactly one, and in the price book.
            pub const fn symbol(self) -> &'static str {
                match self { $(Self::$variant => $symbol,)* }
            }

            /// After any other number.
            pub const fn plural(self) -> &'static str {
                match self { $(Self::$variant => $plural,)* }
            }

            fn also(self) -> &'static [&'static str] {
                match self { $(Self::$variant => &$also,)* }
            }
        }
    };
}

units! {
    CubicYard "cu yd" "cu yd" ["cubic yard", "cubic yards", "cy", "yd3", "yd", "yds", "yard", "yards"];
    CubicFoot "cu ft" "cu ft" ["cubic foot", "cubic feet", "cf", "ft3"];
    SquareFoot "sq ft" "sq ft" ["square foot", "square feet", "sf", "ft2"];
    Foot "ft" "ft" ["foot", "feet", "lin ft", "lf"];
    Inch "in" "in" ["inch", "inches"];
    Pound "lb" "lb" ["pound", "pounds", "lbs"];
    Ton "ton" "ton" ["tons"];
    Gallon "gal" "gal" ["gallon", "gallons"];
    Milliliter "ml" "ml" ["milliliter", "milliliters"];
    Piece "piece" "pieces" ["each", "ea", "pc", "pcs"];
    Bag "bag" "bags" ["sack", "sacks"];
    Sheet "sheet" "sheets" [];
    Roll "roll" "rolls" [];
    Load "load" "loads" [];
    Trip "trip" "trips" [];
    Minute "min" "min" ["mins", "minute", "minutes"];
    Hour "hour" "hours" ["h", "hr", "hrs", "labor hour", "labor hours", "person hour", "person hours", "man hour", "man hours"];
    CrewHour "crew hour" "crew hours" ["crew h", "crew hr", "crew hrs"];
    Day "day" "days" ["d"];
    Lump "lump" "lump" ["lump sum", "job"];
    Dollar "dollar" "dollars" [];
    Percent "%" "%" [];
    Psi "psi" "psi" [];
    Plain "" "" [];
}

impl Unit {
    /// What work takes: hours of people or of the whole crew, or minutes.
    pub const fn is_time(self) -> bool {
        matches!(self, Self::Minute | Self::Hour | Self::CrewHour)
    }

    /// Whether there is no part of one: it is counted, not measured.
    pub const fn is_counted(self) -> bool {
        matches!(
            self,
            Self::Piece | Self::Bag | Self::Sheet | Self::Roll | Self::Load | Self::Trip
        )
    }
}

/// What one of a metric unit is in ours, as far as it helps to convert; by definition (NIST SP 811, from memory)
/// 1 ft is 0.3048 m, 1 gal 3.785411784 l, 1 lb 0.45359237 kg, 1 ton 2,000 lb.
const METRIC: &[(&str, &str, &str)] = &[
    ("m", "3.28084", "ft"),
    ("m2", "10.76391", "sq ft"),
    ("m3", "1.307951", "cu yd"),
    ("l", "0.2641721", "gal"),
    ("kg", "2.204623", "lb"),
    ("t", "1.102311", "ton"),
    ("tonne", "1.102311", "ton"),
];

impl fmt::Display for Unit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(self.symbol())
    }
}

impl FromStr for Unit {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let wanted = &*text.trim().to_lowercase();
        let fits = |unit: &&Self| {
            unit.symbol() == wanted || unit.plural() == wanted || unit.also().contains(&wanted)
        };
        Self::ALL
            .iter()
            .filter(|unit| !matches!(unit, Self::Plain))
            .find(fits)
            .copied()
            .ok_or_else(|| {
                if let Some((_, one, ours)) = METRIC.iter().find(|(unit, ..)| *unit == wanted) {
                    let message = format!("`{text}` is not a unit that books and jobs are in");
                    let help = format!("convert it: 1 {wanted} is {one} {ours}");
                    return Unreadable::new("unknown-unit", message, help);
                }
                let known: Vec<&str> = Self::ALL
                    .iter()
                    .map(|unit| unit.symbol())
                    .filter(|s| !s.is_empty())
                    .collect();
                Unreadable::new(
                    "unknown-unit",
                    format!("`{text}` is not a unit"),
                    format!("use one of {}", known.join(", ")),
                )
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_are_read_as_suppliers_write_them() {
        #[track_caller]
        fn case(text: &str, unit: Unit) {
            assert_eq!(text.parse(), Ok(unit), "{text}");
        }
        for text in ["cu yd", "CY", "yd", "Yards", "yd3"] {
            case(text, Unit::CubicYard);
        }
        case("EA", Unit::Piece);
        case("TON", Unit::Ton);
        case("SF", Unit::SquareFoot);
        case("LF", Unit::Foot);
        case("hrs", Unit::Hour);
        case("labor hours", Unit::Hour);
        case("crew hrs", Unit::CrewHour);
        case("mins", Unit::Minute);
    }

    #[test]
    fn a_metric_unit_is_refused_with_what_it_is_in_ours() {
        let refused = |text: &str| text.parse::<Unit>().unwrap_err();
        assert_eq!(refused("m2").help, "convert it: 1 m2 is 10.76391 sq ft");
        assert_eq!(refused("furlong").code, "unknown-unit");
        // 1 ÷ 0.3048, squared, by a pocket calculator: 10.7639104.
        assert_eq!(refused("m3").help, "convert it: 1 m3 is 1.307951 cu yd");
    }
}
