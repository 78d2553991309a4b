//! `4 in of crushed stone`: how deep a base, of what.

use super::reader::phrase;
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BasePhrase {
    None,
    Of { depth: Length, material: String },
}

phrase!(
    BasePhrase,
    "depth of material",
    "bad-base",
    "a base",
    "write depth and material, for example `4 in of crushed stone`, or `none`",
    |said| {
        if said.is("none") {
            return Ok(BasePhrase::None);
        }
        let (depth, material) = said.halves(" of ")?;
        Ok(BasePhrase::Of {
            depth: depth.read()?,
            material: material.text().to_owned(),
        })
    }
);
