//! From which day a slab may be walked on, driven on and sealed.
//!
//! Each use waits for its share of the ordered strength and for the owner's
//! floor in days, whichever is later, once for concrete that stays warm and once
//! for concrete that stays cool. Whole days, always up.

use rust_decimal::Decimal;

use super::Cement;
use super::rules::CuringRules;
use super::strength::{Course, Growth};
use crate::values::Percent;

/// The coldest concrete a curve is drawn for: below it water freezes and hardening stops.
pub const COLDEST: i32 = 33;
/// Heat beyond this is given no credit: it hurries the first days and costs
/// strength later; common practice, no source.
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
    /// As counted, see [`Conditions::counted`]; with a season, those of the day of the pour.
    pub conditions: Conditions,
    /// One for each use, lightest first.
    pub milestones: Vec<Milestone>,
    warm: Growth,
    cool: Growth,
}

/// The first day of every use, at temperatures that stay.
#[cfg(test)]
pub fn timeline(conditions: &Conditions, rules: &CuringRules) -> Timeline {
    by_season(conditions, &[], rules)
}

/// The first day of every use, at these temperatures on the first days, cool and warm; frost is counted as such.
pub fn by_season(conditions: &Conditions, days: &[(i32, i32)], rules: &CuringRules) -> Timeline {
    let (told, conditions) = (*conditions, conditions.counted());
    let lag = rules.counted_lag();
    let course = |each: fn(&(i32, i32)) -> i32, then| Course {
        days: days.iter().map(|day| each(day).min(WARMEST)).collect(),
        then,
    };
    let growth = |course: Course| Growth::new(conditions.cement, &course, lag);
    let warm = growth(course(|(_, warm)| *warm, conditions.warm));
    let cool = growth(course(|(cool, _)| *cool, conditions.cool));
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
        // Frost that is counted day by day is told as it is.
        conditions: if days.is_empty() { conditions } else { told },
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

    /// The band from the pour to a day: every quarter day of the first week, where
    /// it bends most, then some fifty moments more.
    pub fn band(&self, until: u32) -> Vec<Moment> {
        let first_week = (0..28).map(|quarter| Decimal::new(quarter * 25, 2));
        let step = usize::try_from(until / 50).unwrap_or(1).max(1);
        let rest = (7..until).step_by(step).map(Decimal::from);
        let last = Decimal::from(until);
        first_week
            .chain(rest)
            .take_while(|day| *day < last)
            .chain([last])
            .map(|day| self.at(day))
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 80 °F ages 1.230 days a day, 60 °F 0.647; 75% of type I stands at
    /// 8.28 standard days, 95% at 19.74, 25% at 1.27.
    #[test]
    fn a_mild_spring() {
        let conditions = Conditions {
            cool: 60,
            warm: 80,
            cement: Cement::Ordinary,
        };
        let found = timeline(&conditions, &CuringRules::default()).milestones;
        let found: Vec<_> = found.iter().map(|m| (m.warm, m.cool)).collect();
        assert_eq!(found, [(2, 2), (7, 13), (17, 31), (28, 28)]);
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
