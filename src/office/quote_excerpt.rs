//! The part of a quote's record that other prices are asked of; the rest is passed over unread.

use std::borrow::Cow;

use serde::Deserialize;
use serde_json::value::RawValue;

use super::chain;
use super::record::{InputKind, RecordError};
use super::text::{Cents, Day, Number};

/// A record of a quote, as far as it is looked at.
#[derive(Debug, Deserialize)]
pub struct RecordExcerpt<'a> {
    pub day: Day,
    #[serde(borrow)]
    pub what: QuoteExcerpt<'a>,
}

#[derive(Debug, Deserialize)]
pub struct QuoteExcerpt<'a> {
    pub job: Cow<'a, str>,
    pub customer: Cow<'a, str>,
    pub good_until: Day,
    pub pours: Vec<Day>,
    pub as_quoted: Vec<usize>,
    #[serde(borrow)]
    combinations: Vec<CombinationExcerpt<'a>>,
    #[serde(borrow)]
    inputs: Vec<InputExcerpt<'a>>,
}

#[derive(Debug, Deserialize)]
struct CombinationExcerpt<'a> {
    choice: Vec<usize>,
    #[serde(borrow)]
    lines: &'a RawValue,
}

/// A file as it was read; its text only where it is asked for.
#[derive(Debug, Deserialize)]
pub struct InputExcerpt<'a> {
    pub what: InputKind,
    pub name: Cow<'a, str>,
    pub sha256: Cow<'a, str>,
    #[serde(borrow)]
    text: &'a RawValue,
}

/// One line of a cost or a price, without its working.
#[derive(Debug, Deserialize)]
pub struct LineExcerpt<'a> {
    #[serde(borrow)]
    pub cause: Cow<'a, str>,
    #[serde(borrow)]
    pub side: Cow<'a, str>,
    #[serde(borrow)]
    pub class: Option<Cow<'a, str>>,
    #[serde(borrow)]
    pub item: Option<Cow<'a, str>>,
    pub quantity: Option<Number>,
    #[serde(borrow)]
    pub unit: Option<Cow<'a, str>>,
    #[serde(default)]
    pub pour: Option<usize>,
    pub price: Option<Number>,
    pub priced: Option<Day>,
    pub held_until: Option<Day>,
    pub amount: Cents,
}

impl<'a> RecordExcerpt<'a> {
    /// Looks at a record.
    ///
    /// # Errors
    /// When the seal does not fit the text, or the text is no record of a quote.
    pub fn at(text: &'a str) -> Result<Self, RecordError> {
        chain::seal(text).ok_or(RecordError::Seal)?;
        Ok(serde_json::from_str(text)?)
    }
}

impl<'a> QuoteExcerpt<'a> {
    /// The lines of one combination; none where the quote has no such choice.
    ///
    /// # Errors
    /// When they are no lines.
    pub fn lines(&self, choice: &[usize]) -> Result<Option<Vec<LineExcerpt<'a>>>, RecordError> {
        let mut combinations = self.combinations.iter();
        let found = combinations.find(|one| one.choice == choice);
        let lines = found.map(|one| serde_json::from_str(one.lines.get()));
        Ok(lines.transpose()?)
    }

    pub fn input(&self, what: InputKind) -> Option<&InputExcerpt<'a>> {
        self.inputs.iter().find(|input| input.what == what)
    }
}

impl InputExcerpt<'_> {
    /// The whole file, word for word.
    ///
    /// # Errors
    /// When it is no text.
    pub fn text(&self) -> Result<String, RecordError> {
        Ok(serde_json::from_str(self.text.get())?)
    }
}
