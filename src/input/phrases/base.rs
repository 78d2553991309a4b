//! `4 in of crushed stone`: how deep a base, of what.

use std::str::FromStr;

use crate::values::{Length, Unreadable};

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BasePhrase {
    None,
    Of { depth: Length, material: String },
}

impl FromStr for BasePhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "none" {
            return Ok(Self::None);
        }
        let (depth, material) = text.split_once(" of ").ok_or_else(|| {
            Unreadable::new(
                "bad-base",
                format!("cannot read `{text}` as a base"),
                "write depth and material, for example `4 in of crushed stone`, or `none`",
            )
        })?;
        Ok(Self::Of {
            depth: depth.parse()?,
            material: material.trim().to_owned(),
        })
    }
}
