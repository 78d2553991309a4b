//! Plain decimal numbers, exactly as written.

use crate::values::Unreadable;
use rust_decimal::Decimal;

/// Digits allowed before the point: a trillion of anything is a slip.
const WHOLE_DIGITS: usize = 12;
/// Digits allowed after the point.
const DECIMAL_PLACES: usize = 9;

/// Reads digits with at most one point between them: `12`, `0.5`, `12.50`.
///
/// The twelve digits before and nine after the point are why later arithmetic in decimals
/// (28 digits) cannot overflow.
pub fn exact(text: &str) -> Result<Decimal, Unreadable> {
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    let (whole, places) = text.split_once('.').unwrap_or((text, "0"));
    if !digits(whole) || !digits(places) {
        return Err(not_a_number(text));
    }
    if WHOLE_DIGITS < whole.len() || DECIMAL_PLACES < places.len() {
        return Err(Unreadable {
            code: "number-too-long",
            message: format!("`{text}` has more digits than any measure or price needs"),
            help: format!(
                "at most {WHOLE_DIGITS} digits before the point and {DECIMAL_PLACES} after it"
            ),
        });
    }
    text.parse().map_err(|_| not_a_number(text))
}

fn not_a_number(text: &str) -> Unreadable {
    Unreadable {
        code: "not-a-number",
        message: format!("`{text}` is not a plain number"),
        help: what_to_write(text),
    }
}

/// Names the slip where it is a usual one, with the number to write instead.
fn what_to_write(text: &str) -> String {
    let bare = text.trim();
    let without = |unwanted: &[char]| bare.replace(unwanted, "");
    let instead = |reason: &str, number: String| match exact(&number) {
        Ok(_) => format!("{reason}; write `{number}`"),
        Err(_) => format!("{reason}; write digits with at most one point, such as `12.50`"),
    };
    if bare.starts_with('$') {
        instead("leave out the dollar sign", without(&['$', ',', ' ']))
    } else if bare.contains(',') {
        instead("leave out the commas", without(&[',']))
    } else if bare.contains('_') {
        instead("leave out the underscores", without(&['_']))
    } else if bare.starts_with('+') {
        instead("leave out the plus sign", without(&['+']))
    } else if bare.starts_with('-') {
        "a number below zero has no meaning here; write it without the sign".to_owned()
    } else if bare.starts_with('.') {
        instead("put a zero before the point", format!("0{bare}"))
    } else if bare.ends_with('.') {
        instead(
            "leave out the last point",
            bare.trim_end_matches('.').to_owned(),
        )
    } else if bare.contains(['e', 'E']) && bare.parse::<Decimal>().is_err() && scientific(bare) {
        "write all the digits, without an exponent: `1000`, not `1e3`".to_owned()
    } else {
        "write digits with at most one point, such as `12.50`".to_owned()
    }
}

fn scientific(text: &str) -> bool {
    text.bytes()
        .all(|byte| byte.is_ascii_digit() || b".eE+-".contains(&byte))
}
