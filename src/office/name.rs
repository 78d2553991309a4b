//! Names of records: number, place in the job's row, what happened.

use std::fmt;

use super::record::Event;
use crate::input::phrases::Number;

/// The name of one record's file, without its ending; names sort as things happened.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Name {
    pub number: Number,
    /// From 1, in the order things happened to this job.
    pub place: u32,
    pub event: Event,
}

impl Name {
    /// Reads a stem such as `2026-0041.02.accepted`; nothing else passes.
    pub fn read(stem: &str) -> Option<Self> {
        let mut parts = stem.split('.');
        let (number, place, event) = (parts.next()?, parts.next()?, parts.next()?);
        let name = Self {
            number: Number::written(number)?,
            place: place.parse().ok()?,
            event: Event::ALL.into_iter().find(|one| one.name() == event)?,
        };
        (parts.next().is_none() && name.to_string() == stem).then_some(name)
    }
}

/// `2026-0041.02.accepted`.
impl fmt::Display for Name {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            out,
            "{}.{:02}.{}",
            self.number,
            self.place,
            self.event.name()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_says_what_happened_and_when_in_the_row() {
        let name = Name::read("2026-0041.02.accepted").unwrap();
        assert_eq!((name.place, name.event), (2, Event::Accepted));
        assert_eq!(name.to_string(), "2026-0041.02.accepted");
        for wrong in [
            "2026-0041",
            "2026-0041.2.accepted",
            "2026-0041.02.agreed",
            "2026-0041.02.accepted.copy",
            "2026-0041.02.accepted (1)",
            "2026-0041 (conflict).02.accepted",
        ] {
            assert_eq!(Name::read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn names_of_a_job_sort_as_things_happened() {
        let mut names: Vec<Name> = [
            "2026-0041.10.paid",
            "2026-0041.02.accepted",
            "2026-0041.01.quote",
        ]
        .into_iter()
        .map(|stem| Name::read(stem).unwrap())
        .collect();
        names.sort();
        let places: Vec<u32> = names.iter().map(|name| name.place).collect();
        assert_eq!(places, [1, 2, 10]);
    }
}
