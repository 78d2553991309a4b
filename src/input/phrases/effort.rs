//! `1.2 hours per 100 ft`, `2 crew hours`: work for so much, or for each time.

use super::Ratio;
use super::reader::phrase;
use crate::values::{Amount, Unreadable};

/// Hours of people or of the crew.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effort {
    For(Ratio),
    Each(Amount),
}

impl Effort {
    const fn much(self) -> Amount {
        match self {
            Self::For(ratio) => ratio.much,
            Self::Each(much) => much,
        }
    }
}

phrase!(
    Effort,
    "hours",
    "bad-hours",
    "hours of work",
    "write hours for so much, `1.2 hours per 100 ft`, or for each time, `2 crew hours` or `1/2 hour`",
    |said| {
        let effort = match said.split(" per ") {
            Some(_) => Effort::For(said.read()?),
            None => Effort::Each(said.read().map_err(|error: Unreadable| {
                let is_no_number = error.help == Amount::HOW;
                if is_no_number { said.refuse() } else { error }
            })?),
        };
        if effort.much().unit.is_time() {
            Ok(effort)
        } else {
            Err(said.refuse())
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_hours_for_so_much_and_for_each_time() {
        let rate = "1.2 hours per 100 ft";
        assert_eq!(rate.parse(), Ok(Effort::For(rate.parse().unwrap())));
        let each = "2 crew hours";
        assert_eq!(each.parse(), Ok(Effort::Each(each.parse().unwrap())));
        refused::<Effort>("bad-hours", &["2 ft", "2 lb per ft", "2", "half an hour"]);
    }
}
