//! `11-01 to 03-31`: a part of every year, both days included.

use super::reader::phrase;
use crate::values::Day;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Season {
    /// Month and day.
    pub from: (u32, u32),
    pub to: (u32, u32),
}

impl Season {
    /// A season that ends before it begins goes over New Year.
    pub fn holds(self, day: Day) -> bool {
        let day = day.in_year();
        if self.from <= self.to {
            self.from <= day && day <= self.to
        } else {
            self.from <= day || day <= self.to
        }
    }
}

phrase!(
    Season,
    "season",
    "bad-season",
    "a part of the year",
    "write month and day of its first and last day, for example `11-01 to 03-31`",
    |said| {
        let (from, to) = said.halves(" to ")?;
        let in_year = |text: &str| {
            // A leap year has every day that any year has.
            let day = format!("2000-{text}").parse();
            said.need(day.ok().map(Day::in_year))
        };
        Ok(Season {
            from: in_year(from.text())?,
            to: in_year(to.text())?,
        })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    fn holds(season: &str, day: &str) -> bool {
        let season: Season = season.parse().unwrap();
        season.holds(day.parse().unwrap())
    }

    #[test]
    fn a_winter_goes_over_new_year_and_counts_both_ends() {
        #[track_caller]
        fn case(day: &str, inside: bool) {
            assert_eq!(holds("11-01 to 03-31", day), inside, "{day}");
        }
        case("2026-10-31", false);
        case("2026-11-01", true);
        case("2027-01-01", true);
        case("2027-03-31", true);
        case("2027-04-01", false);
    }

    #[test]
    fn a_summer_lies_in_one_year() {
        assert!(holds("06-15 to 09-01", "2026-06-15"));
        assert!(!holds("06-15 to 09-01", "2026-12-15"));
    }

    #[test]
    fn what_is_no_part_of_a_year_is_refused() {
        let others = [
            "11-01",
            "11-01 to 02-30",
            "November to March",
            "1-11 to 3-31",
        ];
        refused::<Season>("bad-season", &others);
    }
}
