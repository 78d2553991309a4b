//! Long lines broken at spaces, so that a working fits a terminal.

use unicode_width::UnicodeWidthStr;

/// As many columns as a line may take.
const WIDTH: usize = 100;

/// `text` behind `first`, its further lines behind `rest`; a single long word stays whole.
pub fn wrapped(first: &str, rest: &str, text: &str) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = first.to_owned();
    let mut empty = true;
    // Two spaces before a rule are kept: they set it apart from the working.
    for word in text.split_inclusive(' ') {
        if !empty && WIDTH < line.width() + word.trim_end().width() {
            lines.push(line.trim_end().to_owned());
            rest.clone_into(&mut line);
        }
        line.push_str(word);
        empty = false;
    }
    lines.push(line.trim_end().to_owned());
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_text_goes_on_below_its_start() {
        let lines = wrapped("- ", "    ", &"12345 ".repeat(18));
        assert_eq!(lines.len(), 2);
        assert_eq!(lines[0].width(), 97);
        assert_eq!(lines[1], "    12345 12345");
        assert_eq!(wrapped("- ", "  ", "a  b"), ["- a  b"]);
    }
}
