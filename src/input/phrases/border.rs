//! `12 in of washed pebbles`: a band of another finish along the open edges.

use super::reader::phrase;
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BorderPhrase {
    None,
    Of { width: Length, finish: String },
}

phrase!(
    BorderPhrase,
    "width of a finish",
    "bad-border",
    "a border",
    "write its width and its finish, for example `12 in of washed pebbles`, or `none`",
    |said| {
        if said.is("none") {
            return Ok(BorderPhrase::None);
        }
        let (width, finish) = said.halves(" of ")?;
        Ok(BorderPhrase::Of {
            width: width.positive()?,
            finish: finish.text().to_owned(),
        })
    }
);
