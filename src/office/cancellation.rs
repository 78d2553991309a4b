//! The days of a customer's right to cancel (16 CFR 429, as restated; never legal advice).
//!
//! A business day is any calendar day except Sunday and the federal holidays (429.0(f), as
//! quoted by a state banking division in 1998). The rule does not say whether a holiday's
//! observed day counts; the date on the form may be later than the third day and never
//! earlier (429.1(c), quoted second-hand), so neither the day itself nor its observed day
//! is counted.

use chrono::{Datelike, Weekday};

use super::job::Job;
use crate::tables::holidays::holiday;
use crate::values::Day;

/// The third business day after signing, at whose midnight the right ends.
pub fn last_day(signed: Day) -> Day {
    business_days_after(signed, 3)
}

/// The last day to pay back what was paid, where the customer cancels in time: ten business days
/// after the cancellation (429.1(g), second-hand).
pub fn refund(cancelled: Job<'_>) -> Option<Day> {
    let (_, accepted) = cancelled.account.accepted()?;
    let in_time = cancelled.day <= accepted.cancel_until?.0;
    in_time.then(|| business_days_after(cancelled.day, 10))
}

fn business_days_after(day: Day, count: u32) -> Day {
    let (mut day, mut left) = (day, count);
    while 0 < left {
        day = day.plus(1);
        if counts(day) {
            left -= 1;
        }
    }
    day
}

fn counts(day: Day) -> bool {
    day.date().weekday() != Weekday::Sun && holiday(day).is_none()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed from the rule by an independent table and checked there with a public list of
    /// holidays; the later of the two readings.
    #[test]
    fn the_last_day_is_never_too_early() {
        #[track_caller]
        fn case(signed: &str, last: &str) {
            assert_eq!(
                last_day(signed.parse().unwrap()).to_string(),
                last,
                "{signed}"
            );
        }

        case("2026-03-02", "2026-03-05");
        case("2026-03-04", "2026-03-07");
        case("2026-03-05", "2026-03-09");
        case("2026-03-06", "2026-03-10");
        case("2026-03-07", "2026-03-11");
        case("2026-03-08", "2026-03-11");
        case("2026-11-25", "2026-11-30");
        case("2026-07-02", "2026-07-08");
        case("2026-05-22", "2026-05-27");
        case("2026-12-31", "2027-01-05");
    }
}
