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
    CubicYard "cu yd" "cu yd" ["cubic yard", "cubic yards", "cy", "yd3"];
    CubicFoot "cu ft" "cu ft" ["cubic foot", "cubic feet"];
    SquareFoot "sq ft" "sq ft" ["square foot", "square feet"];
    Foot "ft" "ft" ["foot", "feet", "lin ft"];
    Inch "in" "in" ["inch", "inches"];
    Pound "lb" "lb" ["pound", "pounds", "lbs"];
    Ton "ton" "ton" ["tons"];
    Gallon "gal" "gal" ["gallon", "gallons"];
    Milliliter "ml" "ml" ["milliliter", "milliliters"];
    Piece "piece" "pieces" ["each", "ea"];
    Bag "bag" "bags" [];
    Sheet "sheet" "sheets" [];
    Roll "roll" "rolls" [];
    Load "load" "loads" [];
    Trip "trip" "trips" [];
    Minute "min" "min" ["minute", "minutes"];
    Hour "hour" "hours" ["h", "hr"];
    CrewHour "crew hour" "crew hours" [];
    Day "day" "days" [];
    Lump "lump" "lump" ["lump sum", "job"];
    Dollar "dollar" "dollars" [];
    Percent "%" "%" [];
    Psi "psi" "psi" [];
    Plain "" "" [];
}

impl fmt::Display for Unit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(self.symbol())
    }
}

impl FromStr for Unit {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let wanted = text.trim();
        let fits = |unit: &&Self| {
            unit.symbol() == wanted || unit.plural() == wanted || unit.also().contains(&wanted)
        };
        Self::ALL
            .iter()
            .filter(|unit| !matches!(unit, Self::Plain))
            .find(fits)
            .copied()
            .ok_or_else(|| {
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
