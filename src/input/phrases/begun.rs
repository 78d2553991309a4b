//! `12 ton`, `6 ton or 8 cu yd`: a piece for so much begun, of whichever is reached first.

use super::reader::phrase;
use crate::values::{Amount, Unit};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Begun {
    pub much: Amount,
    /// In another unit of the same.
    pub or: Option<Amount>,
}

phrase!(
    Begun,
    "amount",
    "bad-each",
    "how much one piece is for",
    "write an amount, for example `12 ton`, or two of which the first that is reached counts, `6 ton or 8 cu yd`",
    |said| {
        let much = |part: Option<super::reader::Said<'_>>| match part {
            None => Ok(None),
            Some(part) => {
                let much: Amount = part.read()?;
                if much.value.is_zero() || much.unit == Unit::Plain {
                    return Err(said.refuse());
                }
                Ok(Some(much))
            }
        };
        let (first, second) = match said.split(" or ") {
            Some((first, second)) => (first, Some(second)),
            None => (said, None),
        };
        let begun = Begun {
            much: said.need(much(Some(first))?)?,
            or: much(second)?,
        };
        let is_twice = begun.or.is_some_and(|or| or.unit == begun.much.unit);
        if is_twice {
            Err(said.refuse())
        } else {
            Ok(begun)
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_how_much_a_piece_is_for() {
        let much = |text: &str| text.parse::<Amount>().unwrap();
        let one = Begun {
            much: much("12 ton"),
            or: None,
        };
        assert_eq!("12 ton".parse(), Ok(one));
        let two = Begun {
            much: much("6 ton"),
            or: Some(much("8 cu yd")),
        };
        assert_eq!("6 ton or 8 cu yd".parse(), Ok(two));
        refused::<Begun>(
            "bad-each",
            &["0 ton", "12", "6 ton or 8 ton", "6 ton or 0 cu yd"],
        );
    }
}
