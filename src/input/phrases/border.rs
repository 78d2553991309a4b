//! `12 in of washed pebbles`: a band of another finish along the open edges.

use std::str::FromStr;

use super::positive;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BorderPhrase {
    None,
    Of { width: Length, finish: String },
}

impl FromStr for BorderPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "none" {
            return Ok(Self::None);
        }
        let (width, finish) = text.split_once(" of ").ok_or_else(|| {
            Unreadable::new(
                "bad-border",
                format!("cannot read `{text}` as a border"),
                "write its width and its finish, for example `12 in of washed pebbles`, or `none`",
            )
        })?;
        Ok(Self::Of {
            width: positive(width)?,
            finish: finish.trim().to_owned(),
        })
    }
}
