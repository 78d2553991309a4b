//! Federal holidays of the United States, on their own day and on the weekday they are kept.

use super::{Read, Source};
use crate::values::Day;

pub const SOURCE: Source = Source::new("5 U.S.C. 6103", "", Read::Secondary);

/// The holiday that falls on `day` or is kept on it.
pub fn holiday(day: Day) -> Option<&'static str> {
    on(day).or_else(|| {
        // On a Saturday it is kept the day before, on a Sunday the day after.
        let moved = if day.is_friday() {
            day.plus(1)
        } else if day.is_monday() {
            day.plus(-1)
        } else {
            return None;
        };
        fixed(moved)
    })
}

fn on(day: Day) -> Option<&'static str> {
    fixed(day).or_else(|| by_weekday(day))
}

fn fixed(day: Day) -> Option<&'static str> {
    Some(match day.in_year() {
        (1, 1) => "New Year's Day",
        (6, 19) => "Juneteenth",
        (7, 4) => "Independence Day",
        (11, 11) => "Veterans Day",
        (12, 25) => "Christmas Day",
        _ => return None,
    })
}

fn by_weekday(day: Day) -> Option<&'static str> {
    let (month, date) = day.in_year();
    if day.is_thursday() {
        return (month == 11 && (22..=28).contains(&date)).then_some("Thanksgiving Day");
    }
    if !day.is_monday() {
        return None;
    }
    Some(match (month, date) {
        (1, 15..=21) => "Martin Luther King's birthday",
        (2, 15..=21) => "Washington's birthday",
        (5, 25..=31) => "Memorial Day",
        (9, 1..=7) => "Labor Day",
        (10, 8..=14) => "Columbus Day",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The holidays of 2026, counted on a calendar; July 4 is a Saturday and is kept on the 3rd.
    #[test]
    fn the_year_2026_has_its_eleven_and_one_moved() {
        let first: Day = "2026-01-01".parse().unwrap();
        let found: Vec<String> = (0..365)
            .map(|days| first.plus(days))
            .filter(|day| holiday(*day).is_some())
            .map(|day| day.to_string()[5..].to_owned())
            .collect();
        let expected = [
            "01-01", "01-19", "02-16", "05-25", "06-19", "07-03", "07-04", "09-07", "10-12",
            "11-11", "11-26", "12-25",
        ];
        assert_eq!(found, expected);
    }

    /// January 1, 2022 was a Saturday, so December 31, 2021 was kept.
    #[test]
    fn a_new_year_on_saturday_is_kept_in_the_old_year() {
        assert_eq!(
            holiday("2021-12-31".parse().unwrap()),
            Some("New Year's Day")
        );
        assert_eq!(holiday("2022-01-03".parse().unwrap()), None);
    }
}
