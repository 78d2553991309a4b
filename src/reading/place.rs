//! Where something stands: a byte range in one of the texts being read.

use crate::values::Part;

/// One of the texts in [`Sources`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct FileId(pub u16);

/// A byte range in a text; it sorts by file, then by where it starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    pub file: FileId,
    pub start: u32,
    pub end: u32,
}

impl Place {
    /// Whether it marks no letter, as that of a usual value whose group nobody wrote.
    pub const fn is_nowhere(self) -> bool {
        self.start == self.end
    }

    /// Where a part of the text stands that was read here, if the text stands here letter for
    /// letter, plain or in quotes; else the whole.
    #[must_use]
    pub fn narrowed(self, part: &Part) -> Place {
        let length = (self.end - self.start) as usize;
        let quote = match length.checked_sub(part.of) {
            Some(0) => 0,
            Some(2) => 1,
            Some(_) | None => return self,
        };
        let at = |byte| u32::try_from(byte).expect("no text is longer than its place");
        Place {
            start: self.start + quote + at(part.range.start),
            end: self.start + quote + at(part.range.end),
            ..self
        }
    }

    /// From the start of this place to the end of `last`.
    #[must_use]
    pub fn to(self, last: Place) -> Place {
        Place {
            end: self.end.max(last.end),
            ..self
        }
    }
}

/// A value and the place it was read from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct At<T> {
    pub value: T,
    pub place: Place,
}

impl<T> At<T> {
    pub const fn new(value: T, place: Place) -> Self {
        At { value, place }
    }

    /// The same place with another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> At<U> {
        At {
            value: change(self.value),
            place: self.place,
        }
    }
}

/// The texts being read, by name: what a [`Place`] points into.
#[derive(Clone, Debug, Default)]
pub struct Sources(Vec<SourceText>);

#[derive(Clone, Debug)]
struct SourceText {
    name: String,
    text: String,
    /// The byte at which each line starts; the first is 0.
    line_starts: Vec<usize>,
}

impl Sources {
    /// Keeps a text under the name that messages will show, without its byte order mark.
    pub fn add(&mut self, name: &str, mut text: String) -> FileId {
        // A mark at the front is how some editors say UTF-8; it is no part of the text.
        if text.starts_with('\u{feff}') {
            text.drain(..'\u{feff}'.len_utf8());
        }
        let file = FileId(u16::try_from(self.0.len()).expect("no command reads 65,536 files"));
        let line_starts = line_starts(&text);
        let name = name.to_owned();
        self.0.push(SourceText {
            name,
            text,
            line_starts,
        });
        file
    }

    /// The name given to [`Sources::add`].
    pub fn name(&self, file: FileId) -> &str {
        &self.source(file).name
    }

    /// The whole text.
    pub fn text(&self, file: FileId) -> &str {
        &self.source(file).text
    }

    /// The text at a place; empty when the place does not fit the text.
    pub fn slice(&self, place: Place) -> &str {
        let (start, end) = (place.start as usize, place.end as usize);
        self.text(place.file).get(start..end).unwrap_or_default()
    }

    /// Line and column of the start of a place, from 1; a column is a character.
    pub fn line_and_column(&self, place: Place) -> (usize, usize) {
        let source = self.source(place.file);
        let line = self.line_index(place);
        let start = source.line_starts[line];
        let before = source.text[start..]
            .char_indices()
            .take_while(|(at, _)| start + at < place.start as usize);
        (line + 1, before.count() + 1)
    }

    /// The line a place starts in, without its line break, and the byte where that line starts.
    pub fn line(&self, place: Place) -> (&str, usize) {
        let source = self.source(place.file);
        let line = self.line_index(place);
        let start = source.line_starts[line];
        let end = source.line_starts.get(line + 1);
        let text = &source.text[start..end.copied().unwrap_or(source.text.len())];
        (text.trim_end_matches(['\r', '\n']), start)
    }

    /// Counted from 0.
    fn line_index(&self, place: Place) -> usize {
        let starts = &self.source(place.file).line_starts;
        starts.partition_point(|&start| start <= place.start as usize) - 1
    }

    fn source(&self, file: FileId) -> &SourceText {
        &self.0[usize::from(file.0)]
    }
}

/// A line ends with `\n`, `\r\n` or a lone `\r`, as YAML has it.
fn line_starts(text: &str) -> Vec<usize> {
    let bytes = text.as_bytes();
    let ends = bytes.iter().enumerate().filter(|&(at, byte)| match byte {
        b'\n' => true,
        b'\r' => bytes.get(at + 1) != Some(&b'\n'),
        _ => false,
    });
    std::iter::once(0)
        .chain(ends.map(|(at, _)| at + 1))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place(start: u32) -> Place {
        Place {
            file: FileId(0),
            start,
            end: start + 1,
        }
    }

    #[test]
    fn lines_and_columns_count_from_one_in_characters() {
        #[track_caller]
        fn case(text: &str, byte: u32, expected: (usize, usize)) {
            let mut sources = Sources::default();
            sources.add("job.yaml", text.to_owned());
            assert_eq!(sources.line_and_column(place(byte)), expected, "{text:?}");
        }

        case("", 0, (1, 1));
        case("ab", 1, (1, 2));
        case("ab\ncd\n", 3, (2, 1));
        case("ab\ncd\n", 6, (3, 1));
        case("ab\r\ncd", 4, (2, 1));
        case("ab\rcd", 4, (2, 2));
        case("é: x", 2, (1, 2));
        case("\u{feff}ab", 1, (1, 2));
        case("ab", 99, (1, 3));
    }

    #[test]
    fn a_line_comes_without_its_break() {
        let mut sources = Sources::default();
        sources.add("job.yaml", "one\r\ntwo\nthree".to_owned());
        assert_eq!(sources.line(place(1)), ("one", 0));
        assert_eq!(sources.line(place(5)), ("two", 5));
        assert_eq!(sources.line(place(11)), ("three", 9));
    }

    #[test]
    fn places_sort_by_file_then_start() {
        let later_file = Place {
            file: FileId(1),
            ..place(0)
        };
        assert!(place(7) < later_file && place(3) < place(7));
    }
}
