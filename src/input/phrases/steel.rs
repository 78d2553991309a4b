//! `no. 4 at 18 in`: which bars, how far apart both ways.

use std::str::FromStr;

use crate::tables::bars::Bar;
use crate::values::{Length, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BarsPhrase {
    None,
    Both { bar: Bar, spacing: Length },
}

impl FromStr for BarsPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "none" {
            return Ok(Self::None);
        }
        let (bar, spacing) = text.split_once(" at ").ok_or_else(|| {
            Unreadable::new(
                "bad-bars",
                format!("cannot read `{text}` as bars"),
                "write bar and spacing, for example `no. 4 at 18 in`, or `none`",
            )
        })?;
        Ok(Self::Both {
            bar: bar.trim().parse()?,
            spacing: super::size::positive(spacing)?,
        })
    }
}
