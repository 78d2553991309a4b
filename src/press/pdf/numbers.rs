//! Numbers as the file writes them: thousandths of a point, and no minus zero.

use std::fmt::Write;

use lopdf::Object;

/// A thousandth of a point is a third of a micrometre; more digits only make the file larger.
pub fn number(value: f32) -> Object {
    Object::Real(thousandths(value))
}

pub fn numbers<const N: usize>(values: [f32; N]) -> Vec<Object> {
    values.map(number).to_vec()
}

/// A count or an index, where the format wants a signed integer.
pub fn integer(value: usize) -> Object {
    Object::Integer(i64::try_from(value).expect("nothing in a document is counted past 2^63"))
}

/// Two capital digits a byte.
pub fn hexadecimal(bytes: &[u8]) -> String {
    let mut digits = String::with_capacity(2 * bytes.len());
    for byte in bytes {
        write!(digits, "{byte:02X}").expect("memory takes every character written to it");
    }
    digits
}

/// Adding zero turns -0 into 0, so that the sign of nothing never reaches the file.
fn thousandths(value: f32) -> f32 {
    libm::roundf(value * 1000.0) / 1000.0 + 0.0
}

#[cfg(test)]
mod tests {
    use super::thousandths;

    #[test]
    fn numbers_are_short_and_zero_has_no_sign() {
        #[track_caller]
        fn case(value: f32, written: &str) {
            assert_eq!(thousandths(value).to_string(), written);
        }

        case(612.0, "612");
        case(0.1 + 0.2, "0.3");
        case(-0.0, "0");
        case(-0.0001, "0");
        case(791.999_94, "792");
        case(72.3456, "72.346");
    }
}
