//! Slips with quotes, which feet and inch marks invite.

use super::scene::Scene;
use crate::reading::place::Place;
use crate::reading::problem::Problem;

/// `name: "Dana`
pub(super) fn unclosed(place: Place) -> Problem {
    let place = Place {
        end: place.start + 1,
        ..place
    };
    Problem::new("unclosed-quote", "this quote is never closed")
        .at(place)
        .help("put the same quote sign at the end of the value; or take this one out")
}

/// `size: "14'-6" x 3'"`: text after what the parser takes for the closing quote.
pub(super) fn goes_on(scene: &Scene) -> Problem {
    let (line, line_start) = scene.sources.line(scene.place);
    let from = scene.last.end as usize;
    let upto = scene.place.start as usize;
    let text = scene.sources.text(scene.place.file);
    let opening = text
        .get(from..upto)
        .and_then(|between| opening_quote(between).map(|at| from + at));
    let Some(opening) = opening else {
        return unclosed(scene.place);
    };
    if opening < line_start {
        return unclosed(scene.spot(opening, 1));
    }
    let end = line_start + line.split(" #").next().unwrap_or(line).trim_end().len();
    let value = text.get(opening..end).unwrap_or_default();
    Problem::new("after-quote", "the value goes on after its closing quote")
        .at(scene.spot(upto, end.saturating_sub(upto)))
        .also(scene.spot(opening, 1), "the quote opened here")
        .help(without_inner_quotes(value))
}

/// What to write in place of a value that starts with a quote and goes on after the next.
fn without_inner_quotes(value: &str) -> String {
    let (opening, rest) = value.split_at(value.len().min(1));
    let closed = rest.strip_suffix(opening);
    let inner = closed.unwrap_or(rest);
    let digits = inner.contains(|letter: char| letter.is_ascii_digit());
    if digits && value.contains('\'') && value.contains('"') {
        return format!("feet and inch marks need no quotes round them: write `{inner}`");
    }
    let other = if opening == "'" { '"' } else { '\'' };
    // Without a quote at the end, those further in belong to the text.
    let text = if closed.is_some() { inner } else { value };
    if text.contains(other) || too_long_to_repeat(text) {
        return format!("put `{other}` round the whole value, and use only `{opening}` inside");
    }
    format!("write `{other}{text}{other}`")
}

/// Says to put quotes round a value, in the sign it does not hold itself.
pub(super) fn quoted(key: &str, value: &str) -> String {
    let sign = if value.contains('"') { '\'' } else { '"' };
    if too_long_to_repeat(value) || value.contains(sign) {
        return format!("put `{sign}` before and after the value");
    }
    format!("write `{key}{sign}{value}{sign}`")
}

/// A help line repeats a short value as it should be written, but not a paragraph.
fn too_long_to_repeat(value: &str) -> bool {
    60 < value.chars().count()
}

/// A quote sign opens a value only at the start of one.
fn opening_quote(text: &str) -> Option<usize> {
    let mut before = ' ';
    for (at, letter) in text.char_indices() {
        if matches!(letter, '"' | '\'') && (before.is_whitespace() || "[{,:".contains(before)) {
            return Some(at);
        }
        before = letter;
    }
    None
}

/// `"C:\yard"`
pub(super) fn backslash(place: Place) -> Problem {
    Problem::new(
        "backslash",
        "between double quotes a backslash starts a special sign, and this one is unknown",
    )
    .at(place)
    .help("put single quotes round the value, or write the backslash twice")
}
