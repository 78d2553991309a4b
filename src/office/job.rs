//! A job on record on the day something is done with it.

use super::account::Account;
use super::record::{Accepted, Figures, Quote};
use crate::reading::{Problem, Problems, Read};
use crate::values::Day;

/// A job by its number, with all that was recorded of it until this day.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    pub number: &'a str,
    pub day: Day,
    pub account: &'a Account<'a>,
}

impl<'a> Job<'a> {
    /// The quote that counts, and its day.
    pub fn quote(self, problems: &mut Problems) -> Read<(Day, &'a Quote)> {
        let quote = self.account.quote();
        quote.ok_or_else(|| problems.push(self.no_quote()))
    }

    /// What was signed, and its day.
    pub fn accepted(self, problems: &mut Problems) -> Read<(Day, &'a Accepted)> {
        let accepted = self.account.accepted();
        accepted.ok_or_else(|| problems.push(self.not_accepted()))
    }

    /// What was signed, changes included.
    pub fn contract(self, problems: &mut Problems) -> Read<Figures> {
        let contract = self.account.contract();
        contract.ok_or_else(|| problems.push(self.not_accepted()))
    }

    pub(super) fn no_quote(self) -> Problem {
        let number = self.number;
        Problem::new("no-such-quote", format!("there is no quote {number}"))
            .help("`flatwork jobs` lists the numbers")
    }

    pub fn not_accepted(self) -> Problem {
        let number = self.number;
        Problem::new("not-accepted", format!("{number} has not been accepted")).help(format!(
            "when it is signed: `flatwork accept {number} --by NAME`"
        ))
    }
}
