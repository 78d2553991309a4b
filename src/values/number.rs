//! Plain decimal numbers, exactly as written: digits with at most one point between them.

use rust_decimal::Decimal;

/// Digits allowed before the point: a trillion of anything is a slip.
const WHOLE_DIGITS: usize = 12;
/// Digits allowed after the point.
const DECIMAL_PLACES: usize = 9;

/// Reads `12`, `0.5`, `12.50`: no sign, exponent, comma, currency or underscore.
///
/// The twelve digits before and nine after the point are why later arithmetic in decimals
/// (28 digits) cannot overflow.
pub fn digits(text: &str) -> Option<Decimal> {
    let (before, after) = text.split_once('.').unwrap_or((text, "0"));
    let fits = before.len() <= WHOLE_DIGITS && after.len() <= DECIMAL_PLACES;
    let exact = || Decimal::from_str_exact(text).ok();
    (fits && plain(before) && plain(after)).then(exact)?
}

/// Reads a whole number: `3`, not `+3` or `3.0`.
pub fn whole(text: &str) -> Option<u32> {
    plain(text).then(|| text.parse().ok())?
}

/// Reads `12.50`, `1/4`, `½`, and `2 1/2`: a whole number and then a fraction.
pub fn mixed(text: &str) -> Option<Decimal> {
    let mut parts = text.split_whitespace();
    let first = parts.next()?;
    let Some(second) = parts.next() else {
        return single(first);
    };
    if parts.next().is_some() || !is_fraction(second) {
        return None;
    }
    let whole = digits(first).filter(|number| number.fract().is_zero())?;
    Some(whole + single(second)?)
}

/// A fraction or a plain number.
pub(super) fn single(text: &str) -> Option<Decimal> {
    let quarters = |count: i64| Some(Decimal::new(count * 25, 2));
    match text {
        "¼" => return quarters(1),
        "½" => return quarters(2),
        "¾" => return quarters(3),
        _ => {}
    }
    let Some((top, bottom)) = text.split_once('/') else {
        return digits(text);
    };
    let bottom = digits(bottom).filter(|bottom| !bottom.is_zero())?;
    Some(digits(top)? / bottom)
}

pub(super) fn is_fraction(text: &str) -> bool {
    text.contains(['/', '¼', '½', '¾'])
}

fn plain(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// What to do about a number that is none, where the slip is a usual one.
///
/// `put` sets the number that was meant among the words that stood around it.
pub fn slip(text: &str, put: impl Fn(&str) -> String) -> Option<String> {
    let bare = text.trim();
    let without = |unwanted: &[char]| bare.replace(unwanted, "");
    let (reason, meant) = if bare.starts_with('$') {
        ("leave out the dollar sign", without(&['$', ',', ' ']))
    } else if bare.contains(',') {
        ("leave out the commas", without(&[',']))
    } else if bare.contains('_') {
        ("leave out the underscores", without(&['_']))
    } else if bare.starts_with('+') {
        ("leave out the plus sign", without(&['+']))
    } else if bare.starts_with('-') {
        let meant = without(&['-']);
        ("a number below zero has no meaning here", meant)
    } else if bare.starts_with('.') {
        ("put a zero before the point", format!("0{bare}"))
    } else if bare.ends_with('.') {
        (
            "leave out the last point",
            bare.trim_end_matches('.').to_owned(),
        )
    } else if let Ok(number) = Decimal::from_scientific(bare) {
        ("leave out the exponent", number.normalize().to_string())
    } else if is_too_long(bare) {
        return Some(format!(
            "a number has at most {WHOLE_DIGITS} digits before the point and {DECIMAL_PLACES} after it"
        ));
    } else {
        return None;
    };
    digits(&meant).map(|_| format!("{reason}; write `{}`", put(&meant)))
}

/// More digits than any measure or price needs.
fn is_too_long(text: &str) -> bool {
    let (before, after) = text.split_once('.').unwrap_or((text, "0"));
    plain(before) && plain(after)
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn reads_plain_digits_exactly() {
        #[track_caller]
        fn case(text: &str, expected: Decimal) {
            let number = digits(text).expect("a plain number");
            assert_eq!(number.to_string(), expected.to_string(), "{text}");
        }
        case("0", dec!(0));
        case("12.50", dec!(12.50));
        case("0.1", dec!(0.1));
        case("007", dec!(7));
        case("999999999999.999999999", dec!(999999999999.999999999));
    }

    #[test]
    fn a_fraction_may_follow_a_whole_number_and_nothing_else_may() {
        for (text, number) in [
            ("2 1/2", Some(dec!(2.5))),
            ("1/4", Some(dec!(0.25))),
            ("3 ½", Some(dec!(3.5))),
            ("2 3", None),
            ("1/2 1/2", None),
            ("2.5 1/2", None),
            ("2 1/2 1/4", None),
            ("1/0", None),
            ("", None),
        ] {
            assert_eq!(mixed(text), number, "{text}");
        }
    }

    #[test]
    fn says_what_to_write_instead() {
        #[track_caller]
        fn case(text: &str, help: &str) {
            assert_eq!(digits(text), None, "{text}");
            let said = slip(text, |number| format!("{number} ft"));
            assert_eq!(said.as_deref().unwrap_or_default(), help, "{text}");
        }
        case("1e3", "leave out the exponent; write `1000 ft`");
        case("9.8e3", "leave out the exponent; write `9800 ft`");
        case("1.5E-2", "leave out the exponent; write `0.015 ft`");
        case("1_000", "leave out the underscores; write `1000 ft`");
        case("1,000.50", "leave out the commas; write `1000.50 ft`");
        case("$5", "leave out the dollar sign; write `5 ft`");
        case("$1,200.00", "leave out the dollar sign; write `1200.00 ft`");
        case("+1", "leave out the plus sign; write `1 ft`");
        case("1.", "leave out the last point; write `1 ft`");
        case(".5", "put a zero before the point; write `0.5 ft`");
        let below = "a number below zero has no meaning here; write `1 ft`";
        case("-1", below);
        for text in ["1.2.3", "five", "", "$five", "-five", "1e99", "١٢"] {
            case(text, "");
        }
        let long = "a number has at most 12 digits before the point and 9 after it";
        case("1000000000000", long);
        case("0.0000000001", long);
        case(&"9".repeat(5000), long);
    }
}
