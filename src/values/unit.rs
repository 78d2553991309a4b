//! The units in which quantities are measured, bought and priced.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

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

/// Metric units: the unit of ours that they are read in, and how many of them make one of it, exactly
/// (NIST SP 811, from memory): 1 ft is 0.3048 m, 1 gal 3.785411784 l, 1 lb 0.45359237 kg, 1 ton 2,000 lb.
const METRIC: &[(&[&str], Decimal, Unit)] = &[
    (&["mm"], dec!(25.4), Unit::Inch),
    (&["cm"], dec!(2.54), Unit::Inch),
    (&["m", "meter", "meters"], dec!(0.3048), Unit::Foot),
    (&["m2", "sq m", "m²"], dec!(0.09290304), Unit::SquareFoot),
    (&["m3", "cu m", "m³"], dec!(0.764554857984), Unit::CubicYard),
    (&["l", "liter", "liters"], dec!(3.785411784), Unit::Gallon),
    (&["kg"], dec!(0.45359237), Unit::Pound),
    (&["t", "tonne", "tonnes"], dec!(0.90718474), Unit::Ton),
];

/// What a unit measures, and how much of it, in the smallest of its kind here.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Measures {
    Length,
    Area,
    Volume,
    Weight,
    Time,
}

impl Unit {
    /// A metric unit by its name: the unit of ours it is read in, and how many of it make one of ours.
    /// `M` and `T` are no metric units: they mean a thousand and a ton where capitals are written.
    pub(super) fn metric(text: &str) -> Option<(Self, Decimal)> {
        let text = text.trim();
        let small = text.to_lowercase();
        let is = |name: &&str| *name == text || (1 < name.len() || text == "L") && **name == small;
        let found = METRIC.iter().find(|(names, ..)| names.iter().any(&is));
        found.map(|(_, many, unit)| (*unit, *many))
    }

    fn measures(self) -> Option<(Measures, Decimal)> {
        Some(match self {
            Self::Inch => (Measures::Length, dec!(1)),
            Self::Foot => (Measures::Length, dec!(12)),
            Self::SquareFoot => (Measures::Area, dec!(1)),
            Self::Milliliter => (Measures::Volume, dec!(1)),
            // In cubic inches of 16.387064 ml: 1 gal is 231 of them.
            Self::Gallon => (Measures::Volume, dec!(3785.411784)),
            Self::CubicFoot => (Measures::Volume, dec!(28316.846592)),
            Self::CubicYard => (Measures::Volume, dec!(764554.857984)),
            Self::Pound => (Measures::Weight, dec!(1)),
            Self::Ton => (Measures::Weight, dec!(2000)),
            Self::Minute => (Measures::Time, dec!(1)),
            Self::Hour => (Measures::Time, dec!(60)),
            Self::Piece
            | Self::Bag
            | Self::Sheet
            | Self::Roll
            | Self::Load
            | Self::Trip
            | Self::CrewHour
            | Self::Day
            | Self::Lump
            | Self::Dollar
            | Self::Percent
            | Self::Psi
            | Self::Plain => return None,
        })
    }

    /// How many of `other` make one of this, above and below the line; none where they measure different things.
    pub(super) fn over(self, other: Self) -> Option<(Decimal, Decimal)> {
        let ((what, mine), (same, theirs)) = (self.measures()?, other.measures()?);
        (what == same).then_some((mine, theirs))
    }

    /// Whether it measures an area, and whether a volume.
    pub fn flat_or_solid(self) -> Option<bool> {
        match self.measures()? {
            (Measures::Area, _) => Some(false),
            (Measures::Volume, _) => Some(true),
            (Measures::Length | Measures::Weight | Measures::Time, _) => None,
        }
    }
}

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
                if let Some((ours, many)) = Self::metric(text) {
                    let message = format!("`{text}` is not a unit that items are sold by here");
                    let help = format!(
                        "price it by the {ours}: {many} {wanted} is 1 {ours}; amounts may be written in {wanted}"
                    );
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
    fn a_metric_unit_is_not_sold_by_and_its_factor_is_told() {
        let refused = |text: &str| text.parse::<Unit>().unwrap_err();
        // 0.3048 × 0.3048.
        let help = "price it by the sq ft: 0.09290304 m2 is 1 sq ft; amounts may be written in m2";
        assert_eq!(refused("m2").help, help);
        assert_eq!(refused("furlong").code, "unknown-unit");
        assert_eq!(refused("M").code, "unknown-unit");
        assert!(Unit::metric("M").is_none() && Unit::metric("T").is_none());
    }
}
