//! Shows a problem with its line and a caret, as text for a terminal.

use super::place::{Place, Sources};
use super::problem::{Problem, Problems};
use std::fmt::Write as _;
use unicode_width::UnicodeWidthChar as _;

/// Columns of a source line that are shown; a longer line is cut around the caret.
const WINDOW: usize = 100;
/// Columns kept before the caret when a line is cut.
const LEAD: usize = 40;
/// Characters of a message or help line that are shown.
const LONGEST_TEXT: usize = 600;
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
    let gutter = indent - 1;
    // A file as a whole, or a usual value whose group is not written, stands on no line.
    if place.is_nowhere() && !note.is_empty() {
        let note = safe(note);
        write_line(
            out,
            format_args!(
                "{:gutter$}--> {name}: {note}, the usual one: no line says another",
                ""
            ),
        );
        return;
    }
    let note = if note.is_empty() {
        String::new()
    } else {
        format!(": {}", safe(note))
    };
    let (text, carets) = line_and_carets(place, sources);
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

/// Text of the owner inside a message: nothing in it may steer the terminal or flood it.
fn safe(text: &str) -> String {
    let mut letters = text.chars();
    let start = letters.by_ref().take(LONGEST_TEXT);
    let mut shown: String = start
        .map(|letter| if harmless(letter) { letter } else { '\u{fffd}' })
        .collect();
    if letters.next().is_some() {
        shown.push('…');
    }
    shown
}

/// Control characters and those that reverse the direction of writing are not shown as such.
fn harmless(letter: char) -> bool {
    !letter.is_control()
        && !matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Shows a problem at the first `needle` of a text.
    fn shown(text: &str, needle: &str) -> String {
        let mut sources = Sources::default();
        let start = text.find(needle).expect("the needle is in the text");
        let offset = |at: usize| u32::try_from(at).expect("short");
        let place = Place {
            file: sources.add("job.yaml", text.to_owned()),
            start: offset(start),
            end: offset(start + needle.len()),
        };
        let problem = Problem::new("some-code", "a message").at(place);
        show(&problem.help("what to do"), "error", &sources)
    }

    #[track_caller]
    fn case(text: &str, needle: &str, excerpt: &[&str]) {
        let shown = shown(text, needle);
        let lines: Vec<&str> = shown.lines().collect();
        assert_eq!(lines[3..lines.len() - 1], *excerpt, "{shown}");
    }

    #[test]
    fn shows_place_line_caret_and_help() {
        let text = format!("{}  - item: rebar-5\n", "# a line\n".repeat(9));
        let expected = "\
error[some-code]: a message
  --> job.yaml:10:11
   |
10 |   - item: rebar-5
   |           ^^^^^^^
   help: what to do
";
        assert_eq!(shown(&text, "rebar-5"), expected);
    }

    #[test]
    fn the_caret_stands_below_what_it_means() {
        case("\ta: b c", "b", &["1 |     a: b c", "  |        ^"]);
        case("日本: b c", "b", &["1 | 日本: b c", "  |       ^"]);
        case("日本: b c", "本", &["1 | 日本: b c", "  |   ^^"]);
        case("é: b", "b", &["1 | é: b", "  |    ^"]);
        case("e\u{301}: b", "b", &["1 | e\u{301}: b", "  |    ^"]);
        case(
            "a: \u{1b}[31m b",
            "b",
            &["1 | a: \u{fffd}[31m b", "  |          ^"],
        );
        case(
            "a: \u{202e}x b",
            "b",
            &["1 | a: \u{fffd}x b", "  |       ^"],
        );
        case("a: one\n  two", "one\n  two", &["1 | a: one", "  |    ^^^"]);
        case("a: one", "", &["1 | a: one", "  | ^"]);
    }

    #[test]
    fn a_long_line_is_cut_around_the_caret() {
        let text = format!("{}HERE{}", "x".repeat(500), "y".repeat(500));
        let line = format!("1 | …{}HERE{}…", "x".repeat(40), "y".repeat(56));
        let carets = format!("  | {}^^^^", " ".repeat(41));
        case(&text, "HERE", &[&line, &carets]);
    }

    #[test]
    fn without_a_place_there_is_message_and_help() {
        let problem = Problem::new("no-book", "no price book \u{7}named").help("name one");
        let expected = "advice[no-book]: no price book \u{fffd}named\n  help: name one\n";
        assert_eq!(show(&problem, "advice", &Sources::default()), expected);
    }

    #[test]
    fn problems_are_sorted_and_the_place_of_another_is_shown_too() {
        let mut sources = Sources::default();
        let file = sources.add("job.yaml", "a: 1\nb: 2\na: 3\n".to_owned());
        let at = |start| Place {
            file,
            start,
            end: start + 1,
        };
        let mut problems = Problems::new();
        problems.push(Problem::new("no-place", "nowhere"));
        problems.push(
            Problem::new("twice", "again")
                .at(at(10))
                .also(at(0), "first here"),
        );
        problems.push(Problem::new("second", "b").at(at(5)));
        let expected = "\
error[second]: b
 --> job.yaml:2:1
  |
2 | b: 2
  | ^

error[twice]: again
 --> job.yaml:3:1
  |
3 | a: 3
  | ^
 --> job.yaml:1:1: first here
  |
1 | a: 1
  | ^

error[no-place]: nowhere
";
        assert_eq!(show_all(&problems, "error", &sources), expected);
    }
}
