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
    } else if bare.contains(['e', 'E']) && scientific(bare) {
        "write all the digits, without an exponent: `1000`, not `1e3`".to_owned()
    } else {
        "write digits with at most one point, such as `12.50`".to_owned()
    }
}

fn scientific(text: &str) -> bool {
    text.bytes()
        .all(|byte| byte.is_ascii_digit() || b".eE+-".contains(&byte))
}

#[cfg(test)]
mod tests {
    use super::*;
    use rust_decimal_macros::dec;

    #[test]
    fn reads_plain_digits_exactly() {
        #[track_caller]
        fn case(text: &str, expected: Decimal) {
            let number = exact(text).expect("a plain number");
            assert_eq!(
                (number, number.scale()),
                (expected, expected.scale()),
                "{text}"
            );
        }

        case("0", dec!(0));
        case("12.50", dec!(12.50));
        case("0.1", dec!(0.1));
        case("007", dec!(7));
        case("999999999999.999999999", dec!(999999999999.999999999));
    }

    #[test]
    fn says_what_to_write_instead() {
        #[track_caller]
        fn case(text: &str, code: &str, help: &str) {
            let unreadable = exact(text).expect_err(text);
            assert_eq!(
                (unreadable.code, unreadable.help.as_str()),
                (code, help),
                "{text}"
            );
        }

        let plain = "write digits with at most one point, such as `12.50`";
        case(
            "1e3",
            "not-a-number",
            "write all the digits, without an exponent: `1000`, not `1e3`",
        );
        case(
            "1.5E-2",
            "not-a-number",
            "write all the digits, without an exponent: `1000`, not `1e3`",
        );
        case(
            "1_000",
            "not-a-number",
            "leave out the underscores; write `1000`",
        );
        case(
            "1,000.50",
            "not-a-number",
            "leave out the commas; write `1000.50`",
        );
        case("$5", "not-a-number", "leave out the dollar sign; write `5`");
        case(
            "$1,200.00",
            "not-a-number",
            "leave out the dollar sign; write `1200.00`",
        );
        case("+1", "not-a-number", "leave out the plus sign; write `1`");
        case("1.", "not-a-number", "leave out the last point; write `1`");
        case(
            ".5",
            "not-a-number",
            "put a zero before the point; write `0.5`",
        );
        case(
            "-1",
            "not-a-number",
            "a number below zero has no meaning here; write it without the sign",
        );
        case("1.2.3", "not-a-number", plain);
        case("five", "not-a-number", plain);
        case("", "not-a-number", plain);
        case(" 1", "not-a-number", plain);
        case("١٢", "not-a-number", plain);
        let long = "at most 12 digits before the point and 9 after it";
        case("1000000000000", "number-too-long", long);
        case("0.0000000001", "number-too-long", long);
        case(&"9".repeat(5000), "number-too-long", long);
    }
}
