//! Values that YAML cuts short without a word: at ` #`, and at a comma in braces.

use crate::reading::place::Place;
use crate::reading::problem::Problem;
use crate::reading::tree::Value;

/// `bars: #4 at 18 in` says nothing about bars, since ` #` starts a comment.
///
/// The comment stands on the line of the value. One with a space after its sign is believed. Without one it is taken for a part
/// of the value if there is no value before it, or if a digit follows.
pub(super) fn by_comment(value: &Value, comment: &str, place: Place) -> Option<Problem> {
    let digit = comment.starts_with(|letter: char| letter.is_ascii_digit());
    let part_of_value = match value {
        Value::Nothing => digit || comment.starts_with(char::is_alphanumeric),
        Value::Text(_) => digit,
        Value::List(_) | Value::Map(_) => false,
    };
    if !part_of_value {
        return None;
    }
    let comment = comment.trim_end();
    let instead = if digit {
        format!("write `no. {comment}`, or put quotes round the whole value")
    } else {
        "put quotes round the whole value".to_owned()
    };
    let message = format!("`#{comment}` is a comment to YAML, so the value ends before it");
    let help = format!("{instead}; if it is a comment, put a space after the `#`");
    let problem = Problem::new("comment-swallowed", message);
    Some(problem.at(place).help(help))
}

/// `{address: 12 Quarry Rd, Quillhaven}` has a key `Quillhaven` with neither colon nor value.
pub(super) fn by_comma(key: Place, text: &str) -> Option<Problem> {
    let after = text.get(key.end as usize..)?.trim_start();
    if after.starts_with(':') {
        return None;
    }
    let word = text.get(key.start as usize..key.end as usize)?;
    let message = format!("`{word}` stands between commas without a colon");
    let help = "between braces a comma ends a value: put quotes round a value with a comma in it";
    let problem = Problem::new("comma-in-value", message);
    Some(problem.at(key).help(help))
}
