//! Shows a problem with its line and a caret, as text for a terminal.

use super::place::{Place, Sources};
use super::problem::{Problem, Problems};
use std::fmt::Write as _;
use unicode_width::UnicodeWidthChar as _;

/// Columns of a source line that are shown; a longer line is cut around the caret.
const WINDOW: usize = 100;
/// Columns kept before the caret when a line is cut.
const LEAD: usize = 40;
/// Columns a tab takes; it is printed as spaces, so that the caret below stays in step.
const TAB: usize = 4;

/// One problem; `severity` is `error` or `advice`. Ends with a line break.
pub fn show(problem: &Problem, severity: &str, sources: &Sources) -> String {
    let mut out = format!("{severity}[{}]: {}\n", problem.code, safe(&problem.message));
    let places = problem
        .place
        .iter()
        .chain(problem.also.iter().map(|(place, _)| place));
    let gutter = places
        .map(|&place| sources.line_and_column(place).0.to_string().len())
        .max();
    let indent = gutter.unwrap_or(1) + 1;
    if let Some(place) = problem.place {
        excerpt(&mut out, place, "", indent, sources);
    }
    for (place, note) in &problem.also {
        excerpt(&mut out, *place, note, indent, sources);
    }
    for line in problem.help.iter().flat_map(|help| help.lines()) {
        write_line(&mut out, format_args!("{:indent$}help: {}", "", safe(line)));
    }
    out
}

/// Every problem, by file and place, with an empty line between.
pub fn show_all(problems: &Problems, severity: &str, sources: &Sources) -> String {
    let shown = problems.sorted().into_iter();
    let shown: Vec<String> = shown
        .map(|problem| show(problem, severity, sources))
        .collect();
    shown.join("\n")
}

fn excerpt(out: &mut String, place: Place, note: &str, indent: usize, sources: &Sources) {
    let (line, column) = sources.line_and_column(place);
    let name = safe(sources.name(place.file));
    let note = if note.is_empty() {
        String::new()
    } else {
        format!(": {}", safe(note))
    };
    let (text, carets) = line_and_carets(place, sources);
    let gutter = indent - 1;
    write_line(
        out,
        format_args!("{:gutter$}--> {name}:{line}:{column}{note}", ""),
    );
    write_line(out, format_args!("{:indent$}|", ""));
    write_line(out, format_args!("{line:gutter$} | {text}"));
    write_line(out, format_args!("{:indent$}| {carets}", ""));
}

/// Writing to a `String` cannot fail; lines never end in spaces.
fn write_line(out: &mut String, line: std::fmt::Arguments) {
    let start = out.len();
    write!(out, "{line}").expect("a String takes any text");
    out.truncate(start + out[start..].trim_end().len());
    out.push('\n');
}

/// The line as shown, cut to the window, and the carets that stand below it.
fn line_and_carets(place: Place, sources: &Sources) -> (String, String) {
    let (line, line_start) = sources.line(place);
    let letters: Vec<(usize, char)> = line.char_indices().collect();
    let index = |byte: u32| letters.partition_point(|&(at, _)| line_start + at < byte as usize);
    let first = index(place.start);
    let last = index(place.end).max(first);

    // Where each character starts, in columns; one more entry for the end of the line.
    let mut columns = vec![0];
    columns.extend(letters.iter().scan(0, |column, &(_, letter)| {
        *column += cell(letter).1;
        Some(*column)
    }));
    let (mut from, mut to) = (0, letters.len());
    if WINDOW < columns[to] {
        from = columns.partition_point(|&column| column + LEAD < columns[first]);
        to = columns.partition_point(|&column| column <= columns[from] + WINDOW) - 1;
    }
    let before = if 0 < from { "…" } else { "" };
    let after = if to < letters.len() { "…" } else { "" };
    let shown: String = letters[from..to]
        .iter()
        .map(|&(_, letter)| cell(letter).0)
        .collect();
    let lead = before.chars().count() + columns[first] - columns[from];
    let carets = (columns[last.min(to).max(first)] - columns[first]).max(1);
    (
        format!("{before}{shown}{after}"),
        format!("{}{}", " ".repeat(lead), "^".repeat(carets)),
    )
}

/// How one character is shown, and the columns that takes.
fn cell(letter: char) -> (String, usize) {
    if letter == '\t' {
        return (" ".repeat(TAB), TAB);
    }
    let shown = if harmless(letter) { letter } else { '\u{fffd}' };
    (shown.to_string(), shown.width().unwrap_or(0))
}

/// Text of the owner inside a message: nothing in it may steer the terminal.
fn safe(text: &str) -> String {
    text.chars()
        .map(|letter| if harmless(letter) { letter } else { '\u{fffd}' })
        .collect()
}

/// Control characters and those that reverse the direction of writing are not shown as such.
fn harmless(letter: char) -> bool {
    !letter.is_control()
        && !matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}
