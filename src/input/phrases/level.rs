//! `3 in down`: how high a place lies, measured from one that is as good as any.

use super::reader::phrase;
use crate::values::Length;

/// Above the place the owner measures from, or with a minus below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Level(pub Length);

phrase!(
    Level,
    "length up or down",
    "bad-level",
    "a level",
    "write `0`, `3 in down`, `1 1/2 in up`, or what you shot, `99.75 ft`",
    |said| {
        if said.is("0") {
            return Ok(Level(Length::ZERO));
        }
        let down = said.before(" down").or_else(|| said.after("-"));
        match down {
            Some(down) => Ok(Level(-down.read::<Length>()?)),
            None => Ok(Level(said.before(" up").unwrap_or(said).read()?)),
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_how_high_a_place_lies() {
        let said = ["0", "3 in down", "-3 in", "2 in up", "8 ft 3 in"];
        let read = [0, -3, -3, 2, 99].map(|inches| Level(Length::inches_whole(inches)));
        assert_eq!(said.map(|text| text.parse::<Level>().unwrap()), read);
        refused::<Level>("bad-length", &["low", "up"]);
    }
}
