//! Numbers of quotes: the owner's pattern, one row of numbers for each year and series.

use std::fmt;

use super::reader::phrase;
use crate::values::Day;

/// How numbers look: `YYYY` or `YY` is the year, zeros the counted part, the rest stays as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// What is in front of the zeros, as written.
    row: String,
    digits: usize,
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
        let year = &day.to_string()[..4];
        self.row.replace("YYYY", year).replace("YY", &year[2..])
    }
}

phrase!(
    Pattern,
    "pattern",
    "bad-pattern",
    "numbers of quotes",
    "write, for example, `YYYY-0000`: the year, a dash, and as many zeros as digits",
    |said| {
        let refuse = |why: &str| {
            let text = said.text();
            said.because(format!("cannot number quotes by `{text}`: {why}"))
        };
        let row = said.text().trim_end_matches('0');
        let digits = said.text().len() - row.len();
        if digits == 0 {
            return Err(refuse("it ends in no zeros"));
        }
        if !row.chars().all(|c| c.is_ascii_alphanumeric() || c == '-') {
            return Err(refuse(
                "only letters, digits and dashes can stand in a file's name",
            ));
        }
        if let Some((before, after)) = row.split_once("YYYY").or_else(|| row.split_once("YY")) {
            // A single letter in front of the year belongs to a series.
            let again = if before.contains("YY") { before } else { after };
            let again = again.trim_matches(|c| c != 'Y');
            if !again.is_empty() {
                return Err(said.part(again).twice("the year"));
            }
        }
        if 8 < digits || 12 < row.len() {
            return Err(refuse("it is too long"));
        }
        let row = row.to_owned();
        Ok(Pattern { row, digits })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
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
        let others = ["YYYY", "YYYY/0000", "0000000000", "no. 00"];
        refused::<Pattern>("bad-pattern", &others);
        let twice = ["YYYY-YYYY-0000", "YY-YYYY-0000", "YYYY-YY-00", "YYY-00"];
        refused::<Pattern>("said-twice", &twice);
    }
}
