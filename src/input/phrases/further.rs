//! `10% per 50 ft past 50 ft`: how much longer work takes over a long way.

use super::positive;
use super::reader::phrase;
use crate::values::{Length, Percent};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Further {
    pub more: Percent,
    pub each: Length,
    pub past: Length,
}

phrase!(
    Further,
    "rise",
    "bad-way",
    "how much longer it takes over a long way",
    "write so much more for each stretch past the usual way, for example `10% per 50 ft past 50 ft`",
    |said| {
        let (more, way) = said.halves(" per ")?;
        let (each, past) = way.halves(" past ")?;
        Ok(Further {
            more: said.need(more.read().ok())?,
            each: said.need(positive(each.text()).ok())?,
            past: said.need(past.read().ok())?,
        })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_how_much_longer_a_long_way_takes() {
        let read: Further = "12% per 50 ft past 40 ft".parse().unwrap();
        assert_eq!(read.more, "12%".parse().unwrap());
        assert_eq!(read.each, Length::feet_whole(50));
        assert_eq!(read.past, Length::feet_whole(40));
        let others = [
            "12%",
            "12% per 50 ft",
            "12 per 50 ft past 40 ft",
            "12% per 0 ft past 40 ft",
        ];
        refused::<Further>("bad-way", &others);
    }
}
