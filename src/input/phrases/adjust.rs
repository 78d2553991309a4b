//! `raise 2 in`, `lower 1 in`: an existing cover brought to the new surface.

use std::str::FromStr;

use super::positive;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Adjust {
    Raise(Length),
    Lower(Length),
}

impl FromStr for Adjust {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        match text.trim().split_once(' ') {
            Some(("raise", by)) => positive(by).map(Self::Raise),
            Some(("lower", by)) => positive(by).map(Self::Lower),
            _ => Err(Unreadable::new(
                "bad-adjust",
                format!("cannot read `{text}` as a cover brought to the new surface"),
                "write `raise 2 in` or `lower 1 in`",
            )),
        }
    }
}
