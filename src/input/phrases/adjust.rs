//! `raise 2 in`, `lower 1 in`: an existing cover brought to the new surface.

use super::reader::phrase;
use crate::values::Length;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Adjust {
    Raise(Length),
    Lower(Length),
}

phrase!(
    Adjust,
    "length and direction",
    "bad-adjust",
    "a cover brought to the new surface",
    "write `raise 2 in` or `lower 1 in`",
    |said| match said.after("raise ") {
        Some(by) => by.positive().map(Adjust::Raise),
        None => said
            .need(said.after("lower "))?
            .positive()
            .map(Adjust::Lower),
    }
);
