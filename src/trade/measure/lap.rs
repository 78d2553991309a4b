//! How far bars lap: so many diameters, or by class B of ACI 318, whichever the price book names.

use rust_decimal::MathematicalOps;

use crate::input::book::{BarStock, Mix};
use crate::input::phrases::LapPhrase;
use crate::tables::bars::Bar;
use crate::tables::laps::{CLASS_B, CLASS_B_LEAST, class_b_divisor};
use crate::trade::term::{largest, number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// How far bars of one size lap in one slab, in inches.
#[derive(Clone, Debug)]
pub(super) struct Lap {
    /// What a lap of class B is made of.
    development: Option<Quantity>,
    pub length: Quantity,
}

impl Lap {
    pub(super) fn of(slab: &str, bar: Bar, stock: &BarStock, mix: &Mix) -> Self {
        let name = |what: &str| format!("{slab} {bar} {what}");
        let diameter = Quantity::new(
            "bar diameter",
            bar.diameter().in_inches(),
            Working::plan(
                format!("{bar} bar"),
                Vec::new(),
                "ASTM A615, nominal diameter (as restated)",
            ),
        );
        match stock.lap.value {
            LapPhrase::ClassB => class_b(&name, bar, &diameter, stock, mix),
            LapPhrase::Diameters(many) => Self {
                development: None,
                length: of_diameters(name("lap length"), many, &diameter, stock),
            },
        }
    }

    /// What it is made of, then the lap itself.
    pub(super) fn shown(&self) -> impl Iterator<Item = &Quantity> {
        self.development.iter().chain([&self.length])
    }
}

/// The lap as a length; a trace of decimals goes up to the next nanometre.
pub(super) fn as_length(lap: &Quantity) -> Length {
    Length::inches_up(lap.value())
}

fn of_diameters(name: String, many: Amount, diameter: &Quantity, stock: &BarStock) -> Quantity {
    let many = Quantity::given("lap in bar diameters", many, stock.lap.place);
    Quantity::by(
        "bar diameters × diameter; the owner's rule, not class B of ACI 318",
        name,
        Unit::Inch,
        of(&many) * diameter,
    )
}

/// The simplified development length, times 1.3, up to a whole inch.
fn class_b(
    name: &dyn Fn(&str) -> String,
    bar: Bar,
    diameter: &Quantity,
    stock: &BarStock,
    mix: &Mix,
) -> Lap {
    let strength = Quantity::said("strength", &mix.strength);
    let how = format!(
        "the number that times itself makes {}",
        strength.amount().number()
    );
    let root = Quantity::new(
        "root of the strength",
        Amount::new(strength.value().sqrt().unwrap_or_default(), Unit::Plain),
        Working::plan(how, vec![strength], ""),
    );
    let grade = Quantity::given(
        "yield strength",
        Amount::new(stock.grade.value.psi(), Unit::Psi),
        stock.grade.place,
    );
    let development = Quantity::by(
        "yield × diameter ÷ (25 × root of the strength), 20 above no. 6; ACI 318 simplified, with its usual spacing and cover (formula as restated, for ACI 318-11 Table 12.2.2)",
        name("development length"),
        Unit::Inch,
        of(&grade) * diameter / (number(class_b_divisor(bar)) * &root),
    );
    let length = Quantity::by(
        "1.3 × development length, 12 in at least: class B of ACI 318 (1.3 as restated; 12 in common practice); up to a whole inch",
        name("lap length"),
        Unit::Inch,
        largest(vec![
            of(&development) * number(CLASS_B),
            number(CLASS_B_LEAST),
        ])
        .whole(),
    );
    Lap {
        development: Some(development),
        length,
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal::Decimal;
    use rust_decimal_macros::dec;

    use super::*;
    use crate::reading::{At, FileId, Place};
    use crate::values::{Percent, rounding};

    const HERE: Place = Place {
        file: FileId(0),
        start: 0,
        end: 0,
    };

    fn at<T>(value: T) -> At<T> {
        At { value, place: HERE }
    }

    fn stock(lap: &str) -> BarStock {
        BarStock {
            item: at("bar".to_owned()),
            stock: at(Length::feet_whole(20)),
            lap: at(lap.parse().unwrap()),
            grade: at("60".parse().unwrap()),
        }
    }

    fn mix(psi: i64) -> Mix {
        Mix {
            item: at("ready-mix".to_owned()),
            strength: at(Amount::new(Decimal::from(psi), Unit::Psi)),
            air: at("0%".parse::<Percent>().unwrap()),
            aggregate: at(Length::inches_whole(1)),
            cement: at(crate::input::book::Cement::Blended),
            setting: at("100%".parse::<Percent>().unwrap()),
            cement_content: None,
            makes: None,
        }
    }

    /// The lap before it goes up to a whole inch: the first figure its formula takes the largest of.
    fn unrounded(bar: Bar, psi: i64) -> Decimal {
        let found = Lap::of("slab", bar, &stock("class B"), &mix(psi));
        let development = found.development.unwrap();
        rounding::to_places(development.value() * CLASS_B, 1)
    }

    /// A table of class B laps in inches for Grade 60, computed by others from the same formula.
    #[test]
    fn class_b_laps_are_those_of_the_table() {
        let table = [
            (Bar::No3, [dec!(21.4), dec!(18.5), dec!(16.5)]),
            (Bar::No4, [dec!(28.5), dec!(24.7), dec!(22.1)]),
            (Bar::No5, [dec!(35.6), dec!(30.8), dec!(27.6)]),
            (Bar::No6, [dec!(42.7), dec!(37.0), dec!(33.1)]),
            (Bar::No7, [dec!(62.3), dec!(54.0), dec!(48.3)]),
        ];
        for (bar, row) in table {
            for (psi, inches) in [3000, 4000, 5000].into_iter().zip(row) {
                assert_eq!(unrounded(bar, psi), inches, "{bar} at {psi} psi");
            }
        }
    }

    #[test]
    fn laps_are_bought_in_whole_inches_and_never_under_twelve() {
        let inches = |bar, psi| {
            let lap = Lap::of("slab", bar, &stock("class B"), &mix(psi));
            lap.length.value()
        };
        assert_eq!(inches(Bar::No4, 4000), dec!(25));
        assert_eq!(inches(Bar::No4, 3000), dec!(29));
        // Where the root is whole, so may the lap be; a trace of decimals is no inch more.
        for (bar, psi, lap) in [
            (Bar::No4, 3600, 26),
            (Bar::No8, 2500, 78),
            (Bar::No5, 2500, 39),
        ] {
            assert_eq!(inches(bar, psi), Decimal::from(lap), "{bar} at {psi} psi");
        }
        // Grade 40, no. 3 at 5,000 psi: 11.03 in, so 12 in governs.
        let mild = BarStock {
            grade: at("40".parse().unwrap()),
            ..stock("class B")
        };
        let least = Lap::of("slab", Bar::No3, &mild, &mix(5000)).length;
        assert_eq!(least.value(), dec!(12));
        assert!(
            least.shown().starts_with("largest of ("),
            "{}",
            least.shown()
        );
    }

    #[test]
    fn forty_diameters_are_not_class_b() {
        let forty = Lap::of("slab", Bar::No4, &stock("40"), &mix(4000)).length;
        assert_eq!(forty.amount().to_string(), "20 in");
        assert_eq!(forty.shown(), "40 × 0.5 in");
        assert_eq!(as_length(&forty), Length::inches_whole(20));
    }
}
