//! Reads a phrase part by part: a part is said once, and none is left over.

use std::ops::RangeInclusive;
use std::str::FromStr;

use super::positive;
use crate::geometry::Compass;
use crate::values::{Length, Unreadable, number};

/// What a phrase should be, for the message when it is something else.
#[derive(Clone, Copy, Debug)]
pub(in crate::input) struct PhraseKind {
    pub code: &'static str,
    /// After `cannot read it as`.
    pub what: &'static str,
    pub help: &'static str,
}

/// A phrase, or a part of it that knows the whole.
#[derive(Clone, Copy, Debug)]
pub(in crate::input) struct Said<'a> {
    whole: &'a str,
    /// Always a slice of the whole.
    text: &'a str,
    kind: PhraseKind,
}

/// A value that is said in a phrase: its type and the guide's word for it, the code of its
/// message, what it cannot be read as and what to write, and how it is read.
macro_rules! phrase {
    ($type:ty, $guide:literal, $code:literal, $what:literal, $help:expr, $read:expr) => {
        impl std::str::FromStr for $type {
            type Err = $crate::values::Unreadable;

            fn from_str(text: &str) -> Result<Self, Self::Err> {
                let kind = $crate::input::phrases::reader::PhraseKind {
                    code: $code,
                    what: $what,
                    help: $help,
                };
                $crate::input::phrases::reader::read(text, kind, $read)
            }
        }

        $crate::reading::written::written! { $type = $guide; }
    };
}
pub(in crate::input) use phrase;

/// Reads a phrase of a kind.
pub(in crate::input) fn read<'a, T>(
    text: &'a str,
    kind: PhraseKind,
    reader: impl FnOnce(Said<'a>) -> Result<T, Unreadable>,
) -> Result<T, Unreadable> {
    reader(Said {
        whole: text,
        text: text.trim(),
        kind,
    })
}

impl<'a> Said<'a> {
    pub fn text(self) -> &'a str {
        self.text
    }

    pub fn is(self, text: &str) -> bool {
        self.text == text
    }

    /// This slice of it.
    pub fn part(self, text: &'a str) -> Self {
        Self {
            text: text.trim(),
            ..self
        }
    }

    /// The same, as a narrower kind with a help of its own.
    pub fn helped(mut self, help: &'static str) -> Self {
        self.kind.help = help;
        self
    }

    /// What follows these first words.
    pub fn after(self, first: &str) -> Option<Self> {
        self.text.strip_prefix(first).map(|rest| self.part(rest))
    }

    /// What stands before these last words.
    pub fn before(self, last: &str) -> Option<Self> {
        self.text.strip_suffix(last).map(|rest| self.part(rest))
    }

    /// Without these first words, if it has them.
    pub fn without(self, first: &str) -> Self {
        self.after(first).unwrap_or(self)
    }

    /// Both sides of the first of these words.
    pub fn split(self, between: &str) -> Option<(Self, Self)> {
        let (before, after) = self.text.split_once(between)?;
        Some((self.part(before), self.part(after)))
    }

    /// Both sides of words that have to be there.
    pub fn halves(self, between: &str) -> Result<(Self, Self), Unreadable> {
        self.need(self.split(between))
    }

    /// Both sides of the last of these words.
    pub fn split_last(self, between: &str) -> Option<(Self, Self)> {
        let (before, after) = self.text.rsplit_once(between)?;
        Some((self.part(before), self.part(after)))
    }

    /// What stands before the side it ends in, and that side.
    pub fn toward(self, what: &str) -> Result<(Self, Option<Compass>), Unreadable> {
        if let Some((before, last)) = self.split_last(" ")
            && let Ok(side) = last.read()
        {
            let (before, mut toward) = before.toward(what)?;
            last.once(what, &mut toward, side)?;
            return Ok((before, toward));
        }
        Ok((self, None))
    }

    /// What stands between any of these words; one part at least.
    pub fn parts(self, separators: &[&str]) -> Vec<Self> {
        let mut texts = vec![self.text];
        for separator in separators {
            texts = texts
                .into_iter()
                .flat_map(|text| text.split(separator))
                .collect();
        }
        texts.into_iter().map(|text| self.part(text)).collect()
    }

    /// Whatever can be read from text.
    pub fn read<T: FromStr<Err = Unreadable>>(self) -> Result<T, Unreadable> {
        self.text.parse()
    }

    /// A length above zero.
    pub fn positive(self) -> Result<Length, Unreadable> {
        positive(self.text)
    }

    /// A whole number between two others.
    pub fn count(self, fits: RangeInclusive<u32>) -> Option<u32> {
        number::whole(self.text).filter(|count| fits.contains(count))
    }

    /// A part that has to be there, or has to be what it is.
    pub fn need<T>(self, part: Option<T>) -> Result<T, Unreadable> {
        part.ok_or_else(|| self.refuse())
    }

    /// That the whole is no phrase of its kind.
    pub fn refuse(self) -> Unreadable {
        let PhraseKind { what, .. } = self.kind;
        self.because(format!("cannot read `{}` as {what}", self.whole.trim()))
    }

    /// That the whole is no phrase of its kind, and why.
    pub fn because(self, why: String) -> Unreadable {
        Unreadable::new(self.kind.code, why, self.kind.help)
    }

    /// Keeps what this part says, unless an earlier one said it.
    pub fn once<T>(self, what: &str, kept: &mut Option<T>, value: T) -> Result<(), Unreadable> {
        if kept.is_some() {
            return Err(self.twice(what));
        }
        *kept = Some(value);
        Ok(())
    }

    /// That an earlier part said what this one says.
    pub fn twice(self, what: &str) -> Unreadable {
        self.at(said_twice(self.text, what))
    }

    /// The same, about this part of the whole.
    pub fn at(self, unreadable: Unreadable) -> Unreadable {
        // A part is a slice of the whole, so it begins that much later in memory.
        let start = self.text.as_ptr().addr() - self.whole.as_ptr().addr();
        unreadable.part(start..start + self.text.len(), self.whole)
    }
}

/// That this was said before.
pub(in crate::input) fn said_twice(text: &str, what: &str) -> Unreadable {
    let message = format!("`{text}` says {what} a second time");
    Unreadable::new("said-twice", message, "say it once; take one of them out")
}

#[cfg(test)]
pub(in crate::input) mod tests {
    use std::fmt::Debug;

    use super::*;

    /// The code of the message for each of these texts.
    #[track_caller]
    pub fn refused<T: FromStr<Err = Unreadable> + Debug>(code: &str, texts: &[&str]) {
        for text in texts {
            let found = text.parse::<T>().map_err(|error| error.code);
            assert_eq!(found.unwrap_err(), code, "{text}");
        }
    }

    #[test]
    fn a_part_said_twice_is_pointed_at() {
        const KIND: PhraseKind = PhraseKind {
            code: "bad-lunch",
            what: "a lunch",
            help: "write `2 soups`",
        };
        let text = " 2 soups, 3 soups";
        let twice = read(text, KIND, |said| {
            let mut soups = None;
            for part in said.parts(&[","]) {
                let count = part.need(part.before("soups"))?.count(1..=9);
                part.once("how many soups", &mut soups, part.need(count)?)?;
            }
            Ok(soups)
        });
        let twice = twice.unwrap_err();
        assert_eq!(twice.message, "`3 soups` says how many soups a second time");
        assert_eq!(twice.part.map(|part| &text[part.range]), Some("3 soups"));
    }
}
