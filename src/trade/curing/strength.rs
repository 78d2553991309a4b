//! Strength with age, as a percentage of the strength at 28 days.
//!
//! f(t) = f28 × t / (a + b t), t in days at 23 °C, moist cured: the ACI 209R-92
//! model, read on a copy of ACI 209.2R-08 (Table A.4, Eq. A-17). It scales the
//! *mean* strength at 28 days. Taking the ordered strength instead is cautious
//! only if the mix reaches what was ordered, and a slab left to dry loses up to
//! half of what it could have. It is not exactly 1 at 28 days.
//!
//! Between curves and temperatures stands the equivalent age, exp(-Q (1/T - 1/Ts)) in
//! kelvin: a method of ASTM C1074, whose body was not opened; Q of 5,000 K and Ts of
//! 23 °C are those it is known for. Ages of days at different temperatures add up; at 32 °F and below
//! nothing is added, since water freezes (the datum of 0 °C that C1074 is said to give). This file may
//! use floats.

use rust_decimal::Decimal;
use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use rust_decimal_macros::dec;

use super::season::FREEZING;
use crate::input::book::Cement;
use crate::values::{Percent, rounding};

/// Q, the activation energy over the gas constant, in kelvin.
const ACTIVATION: f64 = 5000.0;
/// Where the curves were measured: 23 °C in kelvin.
const STANDARD: f64 = 23.0 + 273.15;

impl Cement {
    /// a in days, and b.
    const fn constants(self) -> (f64, f64) {
        match self {
            Self::Ordinary | Self::Blended => (4.0, 0.85),
            Self::HighEarly => (2.3, 0.92),
        }
    }

    /// Of the strength at 28 days, at an age at 23 °C.
    fn fraction(self, standard_days: f64) -> f64 {
        let (a, b) = self.constants();
        standard_days / (a + b * standard_days)
    }
}

/// How warm concrete is from the pour on, in Fahrenheit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Course {
    /// On each of the first days.
    pub days: Vec<i32>,
    /// On all days after them.
    pub then: i32,
}

/// The strength of one mix that takes one course of temperatures.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Growth {
    cement: Cement,
    /// Days at 23 °C that it is old at the end of each of the first days.
    ages: Vec<f64>,
    /// Days at 23 °C that each day after them is worth.
    speed: f64,
}

impl Growth {
    /// A lag of 20% makes blended cement take 1.2 times as long, and leaves other cements alone.
    pub fn new(cement: Cement, course: &Course, blended_lag: Percent) -> Self {
        let stretch = match cement {
            Cement::Blended => 1.0 + float(blended_lag.fraction()),
            Cement::Ordinary | Cement::HighEarly => 1.0,
        };
        let mut age = 0.0;
        let ages = course.days.iter().map(|fahrenheit| {
            if FREEZING < *fahrenheit {
                age += speed_at_fahrenheit(*fahrenheit) / stretch;
            }
            age
        });
        Self {
            cement,
            ages: ages.collect(),
            speed: speed_at_fahrenheit(course.then) / stretch,
        }
    }

    /// Days at 23 °C at the end of a whole day.
    fn age_of(&self, day: u32) -> f64 {
        let known = u32::try_from(self.ages.len()).unwrap_or(u32::MAX);
        let upto = usize::try_from(day.min(known)).unwrap_or(usize::MAX);
        let of_known = upto.checked_sub(1).map_or(0.0, |last| self.ages[last]);
        of_known + f64::from(day.saturating_sub(known)) * self.speed
    }

    /// The same, between two whole days along a straight line.
    fn age(&self, day: Decimal) -> f64 {
        let whole = day.to_u32().unwrap_or(u32::MAX);
        let before = self.age_of(whole);
        before + float(day.fract()) * (self.age_of(whole.saturating_add(1)) - before)
    }

    /// Strength on a day after the pour, to two decimals.
    pub fn percent(&self, day: Decimal) -> Percent {
        let fraction = self.cement.fraction(self.age(day));
        Percent::new(two_decimals(fraction * 100.0))
    }

    /// The first whole day on which the strength has been reached.
    ///
    /// More than 100% counts as 100%, which every curve passes.
    pub fn first_day(&self, wanted: Percent) -> u32 {
        let wanted = float(wanted.number().min(dec!(100))) / 100.0;
        (1..=u32::MAX)
            .find(|day| wanted <= self.cement.fraction(self.age_of(*day)))
            .expect("every curve passes 100% within a few years at any temperature counted")
    }
}

/// How fast concrete at this temperature ages, compared with 23 °C.
fn speed_at_fahrenheit(fahrenheit: i32) -> f64 {
    let kelvin = (f64::from(fahrenheit) - 32.0) / 1.8 + 273.15;
    libm::exp(-ACTIVATION * (1.0 / kelvin - 1.0 / STANDARD))
}

fn float(number: Decimal) -> f64 {
    number
        .to_f64()
        .expect("every decimal is near some binary number")
}

fn two_decimals(number: f64) -> Decimal {
    let exact = Decimal::from_f64(number).expect("percentages are small");
    rounding::to_places(exact, 2)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steady(then: i32) -> Course {
        Course {
            days: Vec::new(),
            then,
        }
    }

    /// Days on the same course count alike, whether they are listed or not; frozen days count nothing.
    #[test]
    fn ages_add_up_day_by_day() {
        let lag = Percent::new(dec!(0));
        let growth = |days: &[i32], then| {
            let course = Course {
                days: days.to_vec(),
                then,
            };
            Growth::new(Cement::Ordinary, &course, lag)
        };
        let (listed, plain) = (growth(&[50; 20], 50), growth(&[], 50));
        for day in [
            dec!(0.25),
            dec!(1),
            dec!(19.5),
            dec!(20),
            dec!(20.75),
            dec!(45),
        ] {
            assert_eq!(listed.percent(day), plain.percent(day), "{day}");
        }
        let frozen = growth(&[55, 55, 55, 32, 20, -10, 50], 50);
        assert_eq!(frozen.percent(dec!(3)), frozen.percent(dec!(6)));
        assert!(frozen.percent(dec!(6)) < frozen.percent(dec!(6.25)));
        // Three days at 55 °F, by hand: exp(-5000 (1/285.93 - 1/296.15)) = 0.547 a day.
        assert!((growth(&[55; 3], 33).age(dec!(3)) - 1.64).abs() < 0.005);
    }

    /// ACI 209.2R-08 Table A.4, moist cured (read on a copy). The ratios follow from a and b;
    /// the published table prints three places.
    #[test]
    fn agrees_with_the_ratios_of_aci_209() {
        #[track_caller]
        fn case(cement: Cement, row: [i64; 9]) {
            for (days, thousandths) in [1, 3, 7, 14, 21, 28, 56, 91, 365].into_iter().zip(row) {
                let percent = two_decimals(cement.fraction(f64::from(days)) * 100.0);
                let printed = Decimal::new(thousandths, 1);
                let error = (percent - printed).abs();
                assert!(error <= dec!(0.051), "day {days}: {percent}");
            }
        }
        case(
            Cement::Ordinary,
            [206, 458, 704, 881, 961, 1007, 1085, 1119, 1161],
        );
        case(
            Cement::HighEarly,
            [311, 593, 801, 922, 971, 998, 1041, 1058, 1080],
        );
    }

    /// By another road: half of the ultimate strength (1/b) stands at a/b days,
    /// 4.71 and 2.50 as ACI 209.2R-08 prints them.
    #[test]
    fn half_of_the_ultimate_strength_stands_at_a_over_b() {
        #[track_caller]
        fn case(cement: Cement, half_age: f64, ultimate: f64) {
            let half = cement.fraction(half_age);
            assert!((half * 2.0 - ultimate).abs() < 0.002, "{half}");
        }
        case(Cement::Ordinary, 4.71, 1.176);
        case(Cement::HighEarly, 2.50, 1.087);
    }

    /// Seven days at 10 °C (50 °F) are 3.22 at 23 °C by Q of 5,000 K, and warmer is faster.
    #[test]
    fn a_cold_week_is_three_warm_days() {
        assert!((7.0 * speed_at_fahrenheit(50) - 3.22).abs() < 0.005);
        for fahrenheit in 33..110 {
            assert!(speed_at_fahrenheit(fahrenheit) < speed_at_fahrenheit(fahrenheit + 1));
        }
    }

    #[test]
    fn the_first_day_is_the_first() {
        let lag = Percent::new(dec!(20));
        for cement in Cement::ALL {
            for fahrenheit in [33, 45, 60, 73, 90] {
                let growth = Growth::new(cement, &steady(fahrenheit), lag);
                for wanted in [dec!(1), dec!(25), dec!(75), dec!(95), dec!(100)] {
                    let day = growth.first_day(Percent::new(wanted));
                    // Two decimals of a percent are within half a hundredth.
                    let slack = dec!(0.005);
                    assert!(wanted - slack <= growth.percent(Decimal::from(day)).number());
                    let before = growth.percent(Decimal::from(day - 1)).number();
                    assert!(before - slack < wanted, "{cement:?} {fahrenheit} {wanted}");
                }
            }
        }
    }

    #[test]
    fn a_wish_over_one_hundred_still_ends() {
        let growth = Growth::new(Cement::HighEarly, &steady(33), Percent::new(dec!(0)));
        let (hundred, more) = (Percent::new(dec!(100)), Percent::new(dec!(500)));
        assert_eq!(growth.first_day(hundred), growth.first_day(more));
    }
}
