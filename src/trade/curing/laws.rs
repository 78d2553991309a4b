//! What must hold for every timeline, whatever the weather, the cement and the owner's figures.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::Cement;
use super::rules::{CuringRules, Floors, Thresholds};
use super::timeline::{Conditions, timeline};
use crate::values::Percent;

fn days(cool: i32, warm: i32, cement: Cement, rules: &CuringRules) -> Vec<(u32, u32)> {
    let conditions = Conditions { cool, warm, cement };
    let found = timeline(&conditions, rules).milestones;
    found.iter().map(|m| (m.warm, m.cool)).collect()
}

#[test]
fn cooler_is_never_earlier() {
    for cement in Cement::ALL {
        let mut before = days(95, 95, cement, &CuringRules::default());
        for fahrenheit in (20..95).rev() {
            let now = days(fahrenheit, fahrenheit, cement, &CuringRules::default());
            for (earlier, later) in before.iter().zip(&now) {
                assert!(earlier.0 <= later.0 && earlier.1 <= later.1, "{fahrenheit}");
            }
            assert!(now.iter().all(|(warm, cool)| warm == cool));
            before = now;
        }
        let apart = days(45, 85, cement, &CuringRules::default());
        assert!(apart.iter().all(|(warm, cool)| warm <= cool));
        // Written the other way round it is the same.
        assert_eq!(apart, days(85, 45, cement, &CuringRules::default()));
    }
}

#[test]
fn floors_always_hold() {
    let floors = Floors {
        walk: 5,
        car: 40,
        heavy: 60,
        seal: 90,
    };
    let rules = CuringRules {
        floors,
        ..CuringRules::default()
    };
    for cement in Cement::ALL {
        for cool in [33, 50, 70] {
            let found = days(cool, 90, cement, &rules);
            for ((warm, _), floor) in found.iter().zip([5, 40, 60, 90]) {
                assert!(floor <= *warm, "{cement:?} {cool}");
            }
        }
    }
    // Where the curve is quick the floor is the answer itself.
    let found = days(80, 90, Cement::HighEarly, &rules);
    assert_eq!(found, [(5, 5), (40, 40), (60, 60), (90, 90)]);
}

#[test]
fn blended_is_never_earlier_than_ordinary() {
    for fahrenheit in 33..=90 {
        for lag in [dec!(-10), dec!(0), dec!(20), dec!(100), dec!(999999)] {
            let rules = CuringRules {
                blended_lag: Percent::new(lag),
                ..CuringRules::default()
            };
            let ordinary = days(fahrenheit, 90, Cement::Ordinary, &rules);
            let blended = days(fahrenheit, 90, Cement::Blended, &rules);
            for (one, other) in ordinary.iter().zip(&blended) {
                assert!(one.0 <= other.0 && one.1 <= other.1, "{fahrenheit} {lag}");
            }
        }
    }
    let cool = |cement| days(60, 80, cement, &CuringRules::default())[1].1;
    assert!(cool(Cement::Ordinary) < cool(Cement::Blended));
}

#[test]
fn more_strength_is_never_earlier() {
    let car = |threshold: i64| {
        let rules = CuringRules {
            thresholds: Thresholds {
                car: Percent::new(Decimal::from(threshold)),
                ..Thresholds::default()
            },
            ..CuringRules::default()
        };
        days(50, 70, Cement::Ordinary, &rules)
    };
    for threshold in 1..120 {
        for (less, more) in car(threshold).iter().zip(&car(threshold + 1)) {
            assert!(less.0 <= more.0 && less.1 <= more.1, "{threshold}");
        }
    }
    assert!(car(60)[1].1 < car(90)[1].1);
}

#[test]
fn a_heavier_use_never_comes_first() {
    let rules = CuringRules {
        floors: Floors {
            walk: 10,
            car: 3,
            heavy: 2,
            seal: 28,
        },
        ..CuringRules::default()
    };
    let found = days(85, 90, Cement::HighEarly, &rules);
    assert!(
        found[0].0 <= found[1].0 && found[1].0 <= found[2].0,
        "{found:?}"
    );
    assert_eq!(found[1].0, 10);
}

#[test]
fn the_band_rises_and_warm_is_on_top() {
    let conditions = Conditions {
        cool: 45,
        warm: 75,
        cement: Cement::Blended,
    };
    let found = timeline(&conditions, &CuringRules::default());
    let band = found.band(42);
    assert_eq!(band.first().map(|m| m.day), Some(Decimal::ZERO));
    assert_eq!(band.last().map(|m| m.day), Some(dec!(42)));
    assert!(band.iter().all(|m| m.cool <= m.warm));
    for pair in band.windows(2) {
        assert!(pair[0].day < pair[1].day);
        assert!(pair[0].warm < pair[1].warm && pair[0].cool < pair[1].cool);
    }
    for until in [0, 1, 3, 7, 8, 100, 321] {
        let band = found.band(until);
        assert_eq!(band.last().map(|m| m.day), Some(Decimal::from(until)));
        assert!(band.len() < 100, "{until}: {}", band.len());
    }
}
