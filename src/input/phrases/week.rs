//! `Monday to Friday`, `2026-07-03, 2026-12-24 to 2027-01-01`: the days on which the crew works, and those off.

use super::reader::{Said, phrase};
use crate::values::{Day, Unreadable};

const NAMES: [&str; 7] = [
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
];

/// The days of a week on which the crew works, Monday first; at least one of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Week([bool; 7]);

impl Week {
    pub fn has(self, day: Day) -> bool {
        self.0[day.in_week()]
    }
}

phrase!(
    Week,
    "days of the week",
    "bad-week",
    "days of the week",
    "write, for example, `Monday to Friday`, or `Monday to Thursday and Saturday`",
    |said| {
        let mut days = [false; 7];
        for part in parts(said) {
            let (from, to) = part.split(" to ").unwrap_or((part, part));
            let mut day = in_week(from)?;
            let last = in_week(to)?;
            days[day] = true;
            // Friday to Monday goes over the end of the week.
            while day != last {
                day = (day + 1) % 7;
                days[day] = true;
            }
        }
        Ok(Week(days))
    }
);

/// Whole names, or as many letters of them as tell them apart.
fn in_week(said: Said<'_>) -> Result<usize, Unreadable> {
    let text = said.text().to_lowercase();
    let known = (3 <= text.len()).then(|| NAMES.iter().position(|name| name.starts_with(&text)));
    said.need(known.flatten())
}

fn parts(said: Said<'_>) -> impl Iterator<Item = Said<'_>> {
    let parts = said.text().split(',').flat_map(|part| part.split(" and "));
    parts.map(move |part| said.part(part))
}

/// Days on which the firm is closed, each from its first to its last.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DaysOff(Vec<(Day, Day)>);

impl DaysOff {
    pub fn has(&self, day: Day) -> bool {
        self.0.iter().any(|(from, to)| *from <= day && day <= *to)
    }
}

phrase!(
    DaysOff,
    "days",
    "bad-days-off",
    "days off",
    "write, for example, `2026-07-03, 2026-12-24 to 2027-01-01`, or `none`",
    |said| {
        if said.is("none") {
            return Ok(DaysOff::default());
        }
        let days = parts(said).map(|part| {
            let (from, to) = part.split(" to ").unwrap_or((part, part));
            let (from, to): (Day, Day) = (from.text().parse()?, to.text().parse()?);
            said.need((from <= to).then_some((from, to)))
        });
        days.collect::<Result<_, _>>().map(DaysOff)
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn a_week_is_read_by_its_days() {
        #[track_caller]
        fn case(week: &str, works: &str) {
            let week: Week = week.parse().unwrap();
            let monday: Day = "2026-06-15".parse().unwrap();
            let days = (0..7).map(|days| {
                if week.has(monday.plus(days)) {
                    'x'
                } else {
                    '-'
                }
            });
            assert_eq!(days.collect::<String>(), works);
        }
        case("Monday to Friday", "xxxxx--");
        case("mon to thu and sat", "xxxx-x-");
        case("Friday to Monday", "x---xxx");
        case("Tuesday, Wednesday", "-xx----");
        refused::<Week>("bad-week", &["", "weekdays", "Mo to Fr", "Monday to"]);
    }

    #[test]
    fn days_off_hold_both_ends() {
        let off: DaysOff = "2026-07-03, 2026-12-24 to 2027-01-01".parse().unwrap();
        let is_off = |day: &str| off.has(day.parse().unwrap());
        assert!(is_off("2026-07-03") && is_off("2026-12-24") && is_off("2027-01-01"));
        assert!(!is_off("2026-07-04") && !is_off("2027-01-02"));
        assert_eq!("none".parse(), Ok(DaysOff::default()));
        refused::<DaysOff>("bad-days-off", &["2026-07-04 to 2026-07-03"]);
        refused::<DaysOff>("bad-date", &["Christmas"]);
    }
}
