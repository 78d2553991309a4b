//! What hours at one temperature are worth at another: maturity two ways.
//!
//! Nurse-Saul: degree-hours above a datum, Σ (T - T0) Δt, with no credit below
//! the datum. Equivalent age: Σ exp(-Q (1/T - 1/Ts)) Δt in kelvin. Both are the
//! methods of ASTM C1074, whose body was not opened: datum 0 °C was seen on two
//! secondary pages, -10 °C in a state road agency's slides, Q of 5,000 K and
//! Ts of 23 °C are from memory. The choice of datum moves an answer by 40%, so
//! no sum travels without its datum. This file may use floats.

use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use rust_decimal_macros::dec;

use crate::values::rounding;

/// Some hours during which the concrete kept one temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spell {
    pub hours: Decimal,
    pub celsius: Decimal,
}

/// The temperature below which hours count for nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Datum {
    /// 0 °C: the default of ASTM C1074 for type I cement (as restated elsewhere).
    Zero,
    /// -5 °C: ACI 306R (from memory; often printed without its minus).
    MinusFive,
    /// -10 °C: many road agencies, Iowa's among them (passage seen).
    MinusTen,
    /// -11 °C: older British and Indian use (as restated elsewhere).
    MinusEleven,
}

impl Datum {
    pub const fn celsius(self) -> i32 {
        match self {
            Self::Zero => 0,
            Self::MinusFive => -5,
            Self::MinusTen => -10,
            Self::MinusEleven => -11,
        }
    }
}

/// Degree-hours, never without the datum they were counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TemperatureTime {
    /// Celsius degrees times hours.
    pub degree_hours: Decimal,
    pub datum: Datum,
}

impl TemperatureTime {
    pub fn of(history: &[Spell], datum: Datum) -> Self {
        let above = |spell: &Spell| {
            let degrees = spell.celsius - Decimal::from(datum.celsius());
            degrees.max(Decimal::ZERO) * spell.hours
        };
        Self {
            degree_hours: history.iter().map(above).sum(),
            datum,
        }
    }

    /// Hours at the standard temperature that are worth as much, to two decimals.
    pub fn equivalent_hours(self, standard: Standard) -> Decimal {
        let degrees = Decimal::from(standard.celsius() - self.datum.celsius());
        rounding::to_places(self.degree_hours / degrees, 2)
    }
}

/// The temperature at which a strength curve was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standard {
    /// 23 °C (73.4 °F): North American laboratories.
    C23,
    /// 20 °C: European ones.
    C20,
}

impl Standard {
    pub const fn celsius(self) -> i32 {
        match self {
            Self::C23 => 23,
            Self::C20 => 20,
        }
    }
}

/// Q, the activation energy over the gas constant, in kelvin (from memory).
pub const ACTIVATION: Decimal = dec!(5000);

/// Q from an activation energy in joules a mole.
pub fn activation_of(joules_per_mole: Decimal) -> Decimal {
    joules_per_mole / dec!(8.314462618)
}

/// Hours at the standard temperature that the history is worth, to two decimals.
pub fn equivalent_hours(history: &[Spell], activation: Decimal, standard: Standard) -> Decimal {
    let worth = |spell: &Spell| {
        float(spell.hours) * speed(float(spell.celsius), float(activation), standard)
    };
    two_decimals(history.iter().map(worth).sum())
}

/// How fast concrete at this temperature ages, compared with 23 °C.
pub(super) fn speed_at_fahrenheit(fahrenheit: i32) -> f64 {
    let celsius = (f64::from(fahrenheit) - 32.0) / 1.8;
    speed(celsius, float(ACTIVATION), Standard::C23)
}

fn speed(celsius: f64, activation: f64, standard: Standard) -> f64 {
    let kelvin = celsius + 273.15;
    let standard = f64::from(standard.celsius()) + 273.15;
    libm::exp(-activation * (1.0 / kelvin - 1.0 / standard))
}

pub(super) fn float(number: Decimal) -> f64 {
    number
        .to_f64()
        .expect("every decimal is near some binary number")
}

pub(super) fn two_decimals(number: f64) -> Decimal {
    let exact = Decimal::from_f64(number).expect("hours and percentages are small");
    rounding::to_places(exact, 2)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 12 h at 15 °C, 12 h at 25, 24 h at 20, 24 h at 10: constructed for
    /// regression, for no published history worked both ways was found.
    fn history() -> [Spell; 4] {
        [
            (dec!(12), dec!(15)),
            (dec!(12), dec!(25)),
            (dec!(24), dec!(20)),
            (dec!(24), dec!(10)),
        ]
        .map(|(hours, celsius)| Spell { hours, celsius })
    }

    #[test]
    fn degree_hours_by_every_datum() {
        #[track_caller]
        fn case(datum: Datum, degree_hours: Decimal, at_23: Decimal, at_20: Decimal) {
            let sum = TemperatureTime::of(&history(), datum);
            assert_eq!(sum.degree_hours, degree_hours);
            assert_eq!(sum.equivalent_hours(Standard::C23), at_23);
            assert_eq!(sum.equivalent_hours(Standard::C20), at_20);
        }
        case(Datum::Zero, dec!(1200), dec!(52.17), dec!(60));
        case(Datum::MinusTen, dec!(1920), dec!(58.18), dec!(64));
        case(Datum::MinusFive, dec!(1560), dec!(55.71), dec!(62.40));
    }

    #[test]
    fn equivalent_age_of_the_same_history() {
        #[track_caller]
        fn case(activation: Decimal, standard: Standard, hours: Decimal) {
            assert_eq!(equivalent_hours(&history(), activation, standard), hours);
        }
        case(ACTIVATION, Standard::C23, dec!(52.20)); // 52.196
        case(ACTIVATION, Standard::C20, dec!(62.04));
        case(activation_of(dec!(40000)), Standard::C23, dec!(52.73));
        case(activation_of(dec!(45000)), Standard::C23, dec!(51.07));
        let parts = [dec!(7.51), dec!(13.44), dec!(20.19), dec!(11.05)];
        for (spell, hours) in history().into_iter().zip(parts) {
            let worth = equivalent_hours(&[spell], ACTIVATION, Standard::C23);
            assert!((worth - hours).abs() <= dec!(0.01), "{worth}");
        }
    }

    #[test]
    fn no_credit_below_the_datum() {
        let frost = Spell {
            hours: dec!(24),
            celsius: dec!(-12),
        };
        let sum = TemperatureTime::of(&[frost], Datum::MinusEleven);
        assert_eq!(sum.degree_hours, Decimal::ZERO);
        let sum = TemperatureTime::of(&[frost, frost], Datum::Zero);
        assert_eq!(sum.degree_hours, Decimal::ZERO);
    }

    /// At the standard temperature an hour is an hour, whatever the method.
    #[test]
    fn standard_hours_are_worth_themselves() {
        for standard in [Standard::C23, Standard::C20] {
            let spell = Spell {
                hours: dec!(100),
                celsius: Decimal::from(standard.celsius()),
            };
            assert_eq!(
                equivalent_hours(&[spell], ACTIVATION, standard),
                dec!(100.00)
            );
            for datum in [Datum::Zero, Datum::MinusTen] {
                let sum = TemperatureTime::of(&[spell], datum);
                assert_eq!(sum.equivalent_hours(standard), dec!(100));
            }
        }
    }

    #[test]
    fn warmer_is_faster() {
        for fahrenheit in 33..110 {
            assert!(speed_at_fahrenheit(fahrenheit) < speed_at_fahrenheit(fahrenheit + 1));
        }
    }
}
