//! From which day a slab may be walked on, driven on and sealed.
//!
//! Each use waits for its share of the ordered strength and for the owner's
//! floor in days, whichever is later, once for concrete that stays warm and once
//! for concrete that stays cool. Whole days, always up.

use rust_decimal::Decimal;

use super::rules::Rules;
use super::strength::{Cement, Growth};
use crate::values::Percent;

/// The coldest concrete a curve is drawn for: below it water freezes and hardening stops.
pub const COLDEST: i32 = 33;
/// Heat beyond this is given no credit: it hurries the first days and costs
/// strength later (from memory).
pub const WARMEST: i32 = 90;

/// Temperatures of the concrete in Fahrenheit, and its cement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Conditions {
    pub cool: i32,
    pub warm: i32,
    pub cement: Cement,
}

impl Conditions {
    /// The temperatures as they are counted and printed: from 33 to 90 °F, cool first.
    #[must_use]
    pub fn counted(self) -> Self {
        let cool = self.cool.min(self.warm).clamp(COLDEST, WARMEST);
        let warm = self.cool.max(self.warm).clamp(COLDEST, WARMEST);
        Self {
            cool,
            warm,
            cement: self.cement,
        }
    }
}

/// What a homeowner wants to do with a slab, lightest first.
///
/// Deicing is not among them: it has no day, it waits for the second winter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Use {
    Walk,
    /// A passenger car.
    Car,
    /// A pickup with a load, a moving van.
    Heavy,
    /// Sealing, once the slab is dry; it waits for days, not for strength.
    Seal,
}

/// The first day of one use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Milestone {
    pub use_: Use,
    /// If the concrete stays warm.
    pub warm: u32,
    /// If it stays cool; never before `warm`.
    pub cool: u32,
}

/// Strength on one day, in percent of the ordered strength, to two decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    /// Days after the pour.
    pub day: Decimal,
    pub warm: Percent,
    pub cool: Percent,
}

/// When a slab may be used, and the band of strength behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Timeline {
    /// As counted, see [`Conditions::counted`].
    pub conditions: Conditions,
    /// One for each use, lightest first.
    pub milestones: Vec<Milestone>,
    warm: Growth,
    cool: Growth,
}

/// The first day of every use.
pub fn timeline(conditions: &Conditions, rules: &Rules) -> Timeline {
    let conditions = conditions.counted();
    let lag = rules.counted_lag();
    let warm = Growth::new(conditions.cement, conditions.warm, lag);
    let cool = Growth::new(conditions.cement, conditions.cool, lag);
    let (floors, thresholds) = (&rules.floors, &rules.thresholds);

    let mut milestones: Vec<Milestone> = Vec::new();
    for (use_, threshold, floor) in [
        (Use::Walk, thresholds.walk, floors.walk),
        (Use::Car, thresholds.car, floors.car),
        (Use::Heavy, thresholds.heavy, floors.heavy),
    ] {
        // A heavier use never comes first, even if the owner's figures say so.
        let (warm_before, cool_before) = milestones.last().map_or((0, 0), |m| (m.warm, m.cool));
        milestones.push(Milestone {
            use_,
            warm: warm.first_day(threshold).max(floor).max(warm_before),
            cool: cool.first_day(threshold).max(floor).max(cool_before),
        });
    }
    milestones.push(Milestone {
        use_: Use::Seal,
        warm: floors.seal,
        cool: floors.seal,
    });
    Timeline {
        conditions,
        milestones,
        warm,
        cool,
    }
}

impl Timeline {
    /// Strength on a day.
    pub fn at(&self, day: Decimal) -> Moment {
        Moment {
            day,
            warm: self.warm.percent(day),
            cool: self.cool.percent(day),
        }
    }

    /// The band up to a day: every quarter day of the first week, then every day.
    pub fn band(&self, until: u32) -> Vec<Moment> {
        let first_week = (0..28).map(|quarter| Decimal::new(quarter * 25, 2));
        first_week
            .chain((7..=until).map(Decimal::from))
            .take_while(|day| *day <= Decimal::from(until))
            .map(|day| self.at(day))
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::super::rules::{Floors, Thresholds};
    use super::*;

    fn days(cool: i32, warm: i32, cement: Cement, rules: &Rules) -> Vec<(u32, u32)> {
        let conditions = Conditions { cool, warm, cement };
        let found = timeline(&conditions, rules).milestones;
        found.iter().map(|m| (m.warm, m.cool)).collect()
    }

    /// By hand: 80 °F ages 1.230 days a day, 60 °F 0.647; 75% of type I stands at
    /// 8.28 standard days, 95% at 19.74, 25% at 1.27.
    #[test]
    fn a_mild_spring() {
        let found = days(60, 80, Cement::Ordinary, &Rules::default());
        assert_eq!(found, [(2, 2), (7, 13), (17, 31), (28, 28)]);
    }

    #[test]
    fn cooler_is_never_earlier() {
        for cement in Cement::ALL {
            let mut before = days(95, 95, cement, &Rules::default());
            for fahrenheit in (20..95).rev() {
                let now = days(fahrenheit, fahrenheit, cement, &Rules::default());
                for (earlier, later) in before.iter().zip(&now) {
                    assert!(earlier.0 <= later.0 && earlier.1 <= later.1, "{fahrenheit}");
                }
                assert!(now.iter().all(|(warm, cool)| warm == cool));
                before = now;
            }
            let apart = days(45, 85, cement, &Rules::default());
            assert!(apart.iter().all(|(warm, cool)| warm <= cool));
            // Written the other way round it is the same.
            assert_eq!(apart, days(85, 45, cement, &Rules::default()));
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
        let rules = Rules {
            floors,
            ..Rules::default()
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
                let rules = Rules {
                    blended_lag: Percent::new(lag),
                    ..Rules::default()
                };
                let ordinary = days(fahrenheit, 90, Cement::Ordinary, &rules);
                let blended = days(fahrenheit, 90, Cement::Blended, &rules);
                for (one, other) in ordinary.iter().zip(&blended) {
                    assert!(one.0 <= other.0 && one.1 <= other.1, "{fahrenheit} {lag}");
                }
            }
        }
        let cool = |cement| days(60, 80, cement, &Rules::default())[1].1;
        assert!(cool(Cement::Ordinary) < cool(Cement::Blended));
    }

    #[test]
    fn more_strength_is_never_earlier() {
        let car = |threshold: i64| {
            let rules = Rules {
                thresholds: Thresholds {
                    car: Percent::new(Decimal::from(threshold)),
                    ..Thresholds::default()
                },
                ..Rules::default()
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
        let rules = Rules {
            floors: Floors {
                walk: 10,
                car: 3,
                heavy: 2,
                seal: 28,
            },
            ..Rules::default()
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
        let found = timeline(&conditions, &Rules::default());
        let band = found.band(42);
        assert_eq!(band.first().map(|m| m.day), Some(Decimal::ZERO));
        assert_eq!(band.last().map(|m| m.day), Some(dec!(42)));
        assert!(band.iter().all(|m| m.cool <= m.warm));
        for pair in band.windows(2) {
            assert!(pair[0].day < pair[1].day);
            assert!(pair[0].warm < pair[1].warm && pair[0].cool < pair[1].cool);
        }
        assert_eq!(found.band(3).last().map(|m| m.day), Some(dec!(3)));
    }

    #[test]
    fn temperatures_are_counted_within_bounds() {
        let wild = Conditions {
            cool: -10,
            warm: 130,
            cement: Cement::Ordinary,
        };
        let counted = wild.counted();
        assert_eq!((counted.cool, counted.warm), (COLDEST, WARMEST));
    }
}
