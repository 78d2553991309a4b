//! Days of the calendar, without times or time zones.

use std::fmt;
use std::str::FromStr;

use chrono::{Datelike, NaiveDate, Weekday};

use super::Unreadable;

/// A day of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(NaiveDate);

impl Day {
    pub const fn new(date: NaiveDate) -> Self {
        Self(date)
    }

    pub const fn date(self) -> NaiveDate {
        self.0
    }

    pub fn plus(self, days: i64) -> Self {
        Self(self.0 + chrono::Duration::days(days))
    }

    /// Days from `earlier` to this one; negative when `earlier` is later.
    pub fn days_since(self, earlier: Self) -> i64 {
        (self.0 - earlier.0).num_days()
    }

    pub fn is_saturday(self) -> bool {
        self.0.weekday() == Weekday::Sat
    }

    pub fn is_sunday(self) -> bool {
        self.0.weekday() == Weekday::Sun
    }

    pub fn is_monday(self) -> bool {
        self.0.weekday() == Weekday::Mon
    }

    pub fn is_friday(self) -> bool {
        self.0.weekday() == Weekday::Fri
    }

    pub fn is_thursday(self) -> bool {
        self.0.weekday() == Weekday::Thu
    }

    /// From 0 on Monday to 6 on Sunday.
    pub fn in_week(self) -> usize {
        self.0.weekday().num_days_from_monday() as usize
    }

    /// Month and day of the month, as they are written: November 3 is (11, 3).
    pub fn in_year(self) -> (u32, u32) {
        (self.0.month(), self.0.day())
    }

    /// `May 4, 2026`.
    pub fn long(self) -> String {
        self.0.format("%B %-d, %Y").to_string()
    }

    /// `May 4`, beside a day of the same year; with its year beside another.
    pub fn beside(self, other: Self) -> String {
        if self.0.year() == other.0.year() {
            self.0.format("%B %-d").to_string()
        } else {
            self.long()
        }
    }

    /// `June 1 to 15, 2026`, as far as both have them with their month and year.
    pub fn to(self, last: Self) -> String {
        if self.month() == last.month() && self.0.year() == last.0.year() {
            format!("{} to {}", self.beside(last), last.0.format("%-d, %Y"))
        } else {
            format!("{} to {}", self.beside(last), last.long())
        }
    }

    /// `Mon 2026-05-04`, for the office.
    pub fn with_weekday(self) -> String {
        self.0.format("%a %Y-%m-%d").to_string()
    }

    /// `May`.
    pub fn month(self) -> String {
        self.0.format("%B").to_string()
    }

    /// Seconds from 1970 to noon of this day, for file dates.
    pub fn noon(self) -> i64 {
        let epoch = NaiveDate::from_ymd_opt(1970, 1, 1).expect("1970 began on a day");
        (self.0 - epoch).num_days() * 86_400 + 43_200
    }
}

/// `2026-05-04`.
impl fmt::Display for Day {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&self.0.format("%Y-%m-%d").to_string())
    }
}

impl FromStr for Day {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let shape = || {
            Unreadable::new(
                "bad-date",
                format!("cannot read `{text}` as a day"),
                "write year, month and day, for example `2026-05-04`",
            )
        };
        let parts: Vec<&str> = text.split('-').collect();
        let [year, month, day] = parts[..] else {
            return Err(shape());
        };
        let plain = |s: &str, length| s.len() == length && s.bytes().all(|b| b.is_ascii_digit());
        if !plain(year, 4) || !plain(month, 2) || !plain(day, 2) {
            return Err(shape());
        }
        let number = |s: &str| s.parse::<u32>().map_err(|_| shape());
        let year = i32::try_from(number(year)?).map_err(|_| shape())?;
        let found = NaiveDate::from_ymd_opt(year, number(month)?, number(day)?);
        match found {
            Some(date) if (1990..=2200).contains(&date.year()) => Ok(Self(date)),
            Some(_) => Err(Unreadable::new(
                "bad-date",
                format!("`{text}` is a far-off year"),
                "years from 1990 to 2200 are accepted; check the digits",
            )),
            None => Err(Unreadable::new(
                "no-such-day",
                format!("there is no day `{text}` in the calendar"),
                "check the month and the day; write year-month-day",
            )),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn knows_the_calendar() {
        let refused = |text: &str| text.parse::<Day>().err().map(|e| e.code);
        assert_eq!(refused("2028-02-29"), None);
        assert_eq!(refused("2026-02-29"), Some("no-such-day"));
        assert_eq!(refused("5/4/2026"), Some("bad-date"));
        assert_eq!(refused("0026-05-04"), Some("bad-date"));
        assert_eq!(
            "2026-05-04".parse::<Day>().map(Day::long),
            Ok("May 4, 2026".to_owned())
        );
    }
}
