//! A problem found in what the owner wrote, and the list of all of them.

use super::place::Place;
use crate::values::Unreadable;

/// What is wrong, where, and what to do about it.
///
/// The message is one line, lower case, without a full stop; the reader's own word stands
/// in backticks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// Printed in brackets, as in `error[unknown-key]`; each has its folder in `tests/errors`.
    pub code: &'static str,
    pub message: String,
    pub place: Option<Place>,
    /// What to do now.
    pub help: Option<String>,
    /// Other places that belong to it, each with a note such as `first written here`.
    pub also: Vec<(Place, String)>,
}

impl Problem {
    pub fn new(code: &'static str, message: impl Into<String>) -> Self {
        Problem {
            code,
            message: message.into(),
            place: None,
            help: None,
            also: Vec::new(),
        }
    }

    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }

    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    #[must_use]
    pub fn also(mut self, place: Place, note: impl Into<String>) -> Self {
        self.also.push((place, note.into()));
        self
    }
}

impl From<Unreadable> for Problem {
    fn from(unreadable: Unreadable) -> Self {
        Problem::new(unreadable.code, unreadable.message).help(unreadable.help)
    }
}

/// Proof that a problem was pushed: whoever comes back with nothing has said why.
///
/// Only this floor makes one, for a problem just pushed or for a node or name marked as reported.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reported(());

/// What was read, or the proof that its problem was reported.
pub type Read<T> = Result<T, Reported>;

impl Reported {
    /// For what an earlier problem is about already.
    pub(super) const fn before() -> Self {
        Reported(())
    }
}

/// Every problem found so far, in the order found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problems(Vec<Problem>);

impl Problems {
    pub fn new() -> Self {
        Problems::default()
    }

    pub fn push(&mut self, problem: Problem) -> Reported {
        self.0.push(problem);
        Reported(())
    }

    /// The proof of one of the problems found so far, if there is any.
    ///
    /// # Errors
    /// When a problem was found.
    pub fn none(&self) -> Read<()> {
        self.none_since(0)
    }

    /// The same for what was found since there were `before` of them.
    ///
    /// # Errors
    /// When a problem was found since.
    pub fn none_since(&self, before: usize) -> Read<()> {
        if self.0.len() <= before {
            Ok(())
        } else {
            Err(Reported(()))
        }
    }

    /// What a value type says of a text it cannot read, at the text's place.
    pub fn unreadable(&mut self, unreadable: Unreadable, place: Place) -> Reported {
        let part = unreadable.part.clone();
        let place = part.map_or(place, |part| place.narrowed(&part));
        self.push(Problem::from(unreadable).at(place))
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn len(&self) -> usize {
        self.0.len()
    }

    pub fn iter(&self) -> std::slice::Iter<'_, Problem> {
        self.0.iter()
    }

    /// By file and place, those without a place last; equal places keep the order found.
    pub fn sorted(&self) -> Vec<&Problem> {
        let mut sorted: Vec<&Problem> = self.0.iter().collect();
        sorted.sort_by_key(|problem| (problem.place.is_none(), problem.place));
        sorted
    }
}

impl Extend<Problem> for Problems {
    fn extend<I: IntoIterator<Item = Problem>>(&mut self, problems: I) {
        self.0.extend(problems);
    }
}

impl IntoIterator for Problems {
    type Item = Problem;
    type IntoIter = std::vec::IntoIter<Problem>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a> IntoIterator for &'a Problems {
    type Item = &'a Problem;
    type IntoIter = std::slice::Iter<'a, Problem>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}
