//! Numbers of quotes: the owner's pattern, one row of numbers for each year and series.

use std::fmt;
use std::str::FromStr;

use crate::reading::written::written;
use crate::values::{Day, Unreadable};

/// How numbers look: `YYYY` or `YY` is the year, zeros the counted part, the rest stays as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    before: String,
    year: Year,
    between: String,
    digits: usize,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Year {
    None,
    Two,
    Four,
}

/// A number as it stands on paper.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Number(String);

impl Number {
    /// A number that somebody typed or a file is named by.
    pub fn written(text: &str) -> Option<Self> {
        let fits = |c: char| c.is_ascii_alphanumeric() || c == '-';
        let sound = text.chars().all(fits) && text.chars().any(|c| c.is_ascii_digit());
        (sound && text.len() <= 24).then(|| Self(text.to_owned()))
    }

    pub fn text(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Number {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&self.0)
    }
}

impl Pattern {
    /// The number of this count, in the row of that day's year.
    pub fn number(&self, day: Day, count: u32) -> Number {
        let (row, digits) = (self.row(day), self.digits);
        Number(format!("{row}{count:0digits$}"))
    }

    /// The count of a number that belongs to the row of that day's year.
    pub fn count(&self, day: Day, number: &Number) -> Option<u32> {
        let counted = number.0.strip_prefix(&self.row(day))?;
        let plain = self.digits <= counted.len() && counted.bytes().all(|b| b.is_ascii_digit());
        let count = counted.parse().ok()?;
        // A count longer than its zeros has no zero in front.
        (plain && self.number(day, count) == *number).then_some(count)
    }

    /// What all numbers of a year begin with.
    pub fn row(&self, day: Day) -> String {
        let year = day.to_string();
        let year = match self.year {
            Year::None => "",
            Year::Two => &year[2..4],
            Year::Four => &year[..4],
        };
        format!("{}{year}{}", self.before, self.between)
    }
}

impl FromStr for Pattern {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = |why: &str| {
            Unreadable::new(
                "bad-pattern",
                format!("cannot number quotes by `{text}`: {why}"),
                "write, for example, `YYYY-0000`: the year, a dash, and as many zeros as digits",
            )
        };
        let digits = text.len() - text.trim_end_matches('0').len();
        if digits == 0 {
            return Err(refuse("it ends in no zeros"));
        }
        let rest = &text[..text.len() - digits];
        let (before, year, between) = if let Some((before, between)) = rest.split_once("YYYY") {
            (before, Year::Four, between)
        } else if let Some((before, between)) = rest.split_once("YY") {
            (before, Year::Two, between)
        } else {
            (rest, Year::None, "")
        };
        let plain = |part: &str| part.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
        if !plain(before) || !plain(between) || between.contains('Y') {
            return Err(refuse(
                "only letters, digits and dashes can stand in a file's name",
            ));
        }
        if 8 < digits || 12 < rest.len() {
            return Err(refuse("it is too long"));
        }
        Ok(Self {
            before: before.to_owned(),
            year,
            between: between.to_owned(),
            digits,
        })
    }
}

written! { Pattern = "pattern"; }

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        text.parse().unwrap()
    }

    #[test]
    fn a_pattern_numbers_each_year_by_itself() {
        let pattern: Pattern = "YYYY-0000".parse().unwrap();
        let may = day("2026-05-04");
        assert_eq!(pattern.number(may, 41).text(), "2026-0041");
        assert_eq!(pattern.number(may, 12_345).text(), "2026-12345");
        let count = |text: &str| pattern.count(may, &Number::written(text).unwrap());
        assert_eq!(count("2026-0041"), Some(41));
        assert_eq!(count("2026-12345"), Some(12_345));
        assert_eq!(count("2025-0041"), None);
        assert_eq!(count("2026-041"), None);
        assert_eq!(count("2026-00041"), None);
        assert_eq!(count("B2026-0041"), None);
    }

    #[test]
    fn a_series_has_letters_of_its_own() {
        let pattern: Pattern = "B-YY-000".parse().unwrap();
        assert_eq!(pattern.number(day("2026-05-04"), 7).text(), "B-26-007");
        let plain: Pattern = "Q00000".parse().unwrap();
        assert_eq!(plain.number(day("2026-05-04"), 7).text(), "Q00007");
    }

    #[test]
    fn a_pattern_must_be_able_to_name_a_file() {
        for text in [
            "YYYY",
            "YYYY/0000",
            "YYYY-YYYY-0000",
            "0000000000",
            "no. 00",
        ] {
            assert!(text.parse::<Pattern>().is_err(), "{text}");
        }
    }
}
