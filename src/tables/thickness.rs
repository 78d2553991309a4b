//! How thick a slab on the ground is at least, by what goes over it.
//!
//! IBC 1910.1 as a copy of it reads: a slab on the ground is 3 1/2 in at least; the
//! house code (IRC R506.1) is known for the same and could not be read. Under wheels
//! more is common practice, and no source was found for it.

use super::{Read, Source};
use crate::values::Length;

const PEOPLE: Length = Length::sixty_fourths(224);
const SOURCE: Source = Source::new("IBC 1910.1", "", Read::Primary);
const CARS: Length = Length::inches_whole(4);
const TRUCKS: Length = Length::inches_whole(6);

/// The least thickness, and who says so.
pub const fn least(cars: bool, trucks: bool) -> (Length, Source) {
    match (cars, trucks) {
        (_, true) => (TRUCKS, Source::PRACTICE),
        (true, false) => (CARS, Source::PRACTICE),
        (false, false) => (PEOPLE, SOURCE),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heavier_things_ask_for_more() {
        let all = [least(false, false), least(true, false), least(true, true)];
        let inches: Vec<String> = all.iter().map(|one| one.0.to_string()).collect();
        assert_eq!(inches, ["3 1/2 in", "4 in", "6 in"]);
    }
}
