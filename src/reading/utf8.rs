//! Bytes of a file become text, if they are UTF-8.

use super::place::{FileId, Place, Sources};
use super::problem::{Problem, Problems, Read};

/// Adds a file to the sources; if it is not UTF-8, reports the spot with a caret instead.
pub fn source(
    name: &str,
    bytes: impl Into<Vec<u8>>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Read<FileId> {
    let error = match String::from_utf8(bytes.into()) {
        Ok(text) => return Ok(sources.add(name, text)),
        Err(error) => error,
    };
    let at = error.utf8_error().valid_up_to();
    let problem = not_utf8(error.as_bytes(), at);
    // The text with a replacement sign in the bad spot, only so that the message can show it.
    let shown = String::from_utf8_lossy(error.as_bytes()).into_owned();
    let mark = if shown.starts_with('\u{feff}') {
        '\u{feff}'.len_utf8()
    } else {
        0
    };
    let file = sources.add(name, shown);
    let offset = |at: usize| u32::try_from(at.saturating_sub(mark)).unwrap_or(u32::MAX);
    Err(problems.push(problem.at(Place {
        file,
        start: offset(at),
        end: offset(at + '\u{fffd}'.len_utf8()),
    })))
}

fn not_utf8(bytes: &[u8], at: usize) -> Problem {
    // The marks with which editors announce the two-byte encodings.
    if bytes.starts_with(b"\xff\xfe") || bytes.starts_with(b"\xfe\xff") {
        return Problem::new("not-utf8", "the file is saved as UTF-16, not UTF-8")
            .help("in the editor choose Save As, and the encoding UTF-8");
    }
    let line = bytes[..at].split(|&byte| byte == b'\n').count();
    Problem::new(
        "not-utf8",
        format!(
            "the file is not UTF-8 text: byte {at}, in line {line}, is {:#04x}",
            bytes[at]
        ),
    )
    .help("in the editor choose Save As, and the encoding UTF-8; or retype the sign in that spot")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_the_first_byte_that_is_not_utf8() {
        #[track_caller]
        fn case(bytes: &[u8], message: &str) {
            let (mut sources, mut problems) = (Sources::default(), Problems::new());
            assert!(source("job.yaml", bytes, &mut sources, &mut problems).is_err());
            assert_eq!(problems.iter().next().expect("a problem").message, message);
        }

        case(
            b"a: 1\nb: fa\xe7ade\n",
            "the file is not UTF-8 text: byte 10, in line 2, is 0xe7",
        );
        case(
            b"\xff",
            "the file is not UTF-8 text: byte 0, in line 1, is 0xff",
        );
        case(b"\xff\xfea\0", "the file is saved as UTF-16, not UTF-8");
        case(
            b"ab\xc3",
            "the file is not UTF-8 text: byte 2, in line 1, is 0xc3",
        );
    }

    #[test]
    fn points_a_caret_at_that_byte() {
        let (mut sources, mut problems) = (Sources::default(), Problems::new());
        let bytes = b"\xef\xbb\xbfa: 1\nb: fa\xe7ade\n".as_slice();
        assert!(source("job.yaml", bytes, &mut sources, &mut problems).is_err());
        let place = problems.iter().next().and_then(|problem| problem.place);
        let place = place.expect("a place");
        assert_eq!(sources.line_and_column(place), (2, 6));
        assert_eq!(sources.slice(place), "\u{fffd}");
    }
}
