//! `4 in`: a length above zero, or `none`.

use crate::reading::Written;
use crate::values::{Length, Unreadable};

/// A length above zero.
///
/// # Errors
/// When it cannot be read, or is zero.
pub fn positive(text: &str) -> Result<Length, Unreadable> {
    if let Some(rest) = text.trim().strip_prefix('-') {
        return Err(Unreadable::new(
            "not-above-zero",
            format!("`{}` is below zero", text.trim()),
            format!("a size is above zero; did you mean `{rest}`?"),
        ));
    }
    let length: Length = text.parse()?;
    if length == Length::ZERO {
        return Err(Unreadable::new(
            "not-above-zero",
            format!("`{}` is nothing", text.trim()),
            "a size is above zero; leave the line out if there is nothing there",
        ));
    }
    Ok(length)
}

/// `none`, or more than nothing.
impl Written for Option<Length> {
    const KIND: &'static str = "length";

    fn written(text: &str) -> Result<Self, Unreadable> {
        if text == "none" {
            return Ok(None);
        }
        positive(text).map(Some)
    }
}
