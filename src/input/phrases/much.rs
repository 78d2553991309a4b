//! `60 lb per 100 sq ft`, `2`: so much for so much, or so many each time.

use super::Ratio;
use super::reader::phrase;
use crate::values::Amount;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Much {
    For(Ratio),
    Each(Amount),
}

phrase!(
    Much,
    "rate or number",
    "bad-much",
    "how much is bought",
    "write so much for so much, `60 lb per 100 sq ft`, or how many each time, `2`",
    |said| {
        let much = match said.split(" per ") {
            Some(_) => Much::For(said.read()?),
            None => Much::Each(said.read()?),
        };
        match much {
            Much::Each(many) if many.value.is_zero() => Err(said.refuse()),
            _ => Ok(much),
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_so_much_for_so_much_and_how_many() {
        let rate = "60 lb per 100 sq ft";
        assert_eq!(rate.parse(), Ok(Much::For(rate.parse().unwrap())));
        assert_eq!("2".parse(), Ok(Much::Each("2".parse().unwrap())));
        refused::<Much>("bad-much", &["0", "two", "2 lb per", "lb per ft"]);
    }
}
