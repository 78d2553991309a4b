//! What a day is in the week and in the year.

use chrono::{Datelike, Weekday};

use super::Day;

impl Day {
    pub fn is_saturday(self) -> bool {
        self.date().weekday() == Weekday::Sat
    }

    pub fn is_sunday(self) -> bool {
        self.date().weekday() == Weekday::Sun
    }

    pub fn is_monday(self) -> bool {
        self.date().weekday() == Weekday::Mon
    }

    pub fn is_friday(self) -> bool {
        self.date().weekday() == Weekday::Fri
    }

    pub fn is_thursday(self) -> bool {
        self.date().weekday() == Weekday::Thu
    }

    /// Month and day of the month, as they are written: November 3 is (11, 3).
    pub fn in_year(self) -> (u32, u32) {
        (self.date().month(), self.date().day())
    }
}
