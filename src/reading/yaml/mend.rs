//! Blanks out what could not be read, so that the rest of the file is still looked at.
//!
//! The mended text keeps every byte in its place and the key of the bad line, whose value
//! then counts as reported.

use super::line::YamlLine;
use std::borrow::Cow;
use std::ops::Range;

/// A text, its bad spots blanked, and where they were.
pub(super) struct Mended<'a> {
    pub(super) text: Cow<'a, str>,
    pub(super) spots: Vec<Range<usize>>,
    /// Tabs at the front of lines were replaced.
    pub(super) tabs: bool,
}

impl<'a> Mended<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Mended {
            text: Cow::Borrowed(text),
            spots: Vec::new(),
            tabs: false,
        }
    }

    /// Whether a byte stands where something was blanked, or at the end of that.
    pub(super) fn is_mended(&self, byte: usize) -> bool {
        let mut spots = self.spots.iter();
        spots.any(|spot| spot.start <= byte && byte <= spot.end)
    }

    /// Puts one space in place of each tab at the front of a line. Where tabs and spaces
    /// are mixed the lines may not line up after that, which is then no news.
    pub(super) fn replace_tabs(&mut self) {
        let mut at_front = true;
        let replaced = self.text.chars().map(|letter| {
            let tab = at_front && letter == '\t';
            at_front =
                matches!(letter, '\n' | '\r') || at_front && matches!(letter, ' ' | '\t' | '-');
            if tab { ' ' } else { letter }
        });
        self.text = Cow::Owned(replaced.collect());
        self.tabs = true;
    }

    /// Blanks the line of a byte and what hangs on it.
    pub(super) fn blank(&mut self, byte: usize) {
        let start = self.line_start(byte);
        let line = YamlLine::of(self.line_at(start));
        // Keys that follow a dash line up with the first of them, not with the dash.
        let indent = line.indent + line.dashes;
        let mut end = self.line_end(start);
        while end < self.text.len() {
            let line = YamlLine::of(self.line_at(end));
            if line.indent <= indent && !line.is_blank() {
                break;
            }
            end = self.line_end(end);
        }
        self.replace(start..end);
    }

    /// Blanks the group of lines that the last spot stands in; `false` if there is none.
    /// Lines in a wrong column come to this, as their neighbours share the trouble.
    pub(super) fn widen(&mut self) -> bool {
        let Some(spot) = self.spots.pop() else {
            return false;
        };
        let indent = YamlLine::of(self.line_at(spot.start)).indent;
        let mut start = spot.start;
        while 0 < start {
            start = self.line_start(start - 1);
            let line = YamlLine::of(self.line_at(start));
            if !line.is_blank() && line.indent < indent {
                self.blank(start);
                return true;
            }
        }
        false
    }

    /// Keeps dashes and a key in the first line, and every line break.
    fn replace(&mut self, range: Range<usize>) {
        let first = self.line_at(range.start);
        let line = YamlLine::of(first);
        let lead = line.indent + line.dashes;
        let key = line.key();
        let mut mended = first[..lead].replace('\t', " ");
        if let Some(key) = key {
            mended.push_str(key);
            mended.push(':');
        }
        let kept = range.start + lead + key.map_or(0, |key| key.len() + 1);
        let blank = |byte: u8| {
            if matches!(byte, b'\n' | b'\r') {
                char::from(byte)
            } else {
                ' '
            }
        };
        mended.extend(
            self.text.as_bytes()[kept..range.end]
                .iter()
                .map(|&byte| blank(byte)),
        );
        self.text.to_mut().replace_range(range.clone(), &mended);
        self.spots.push(range);
    }

    fn line_start(&self, byte: usize) -> usize {
        let mut before = self.text.as_bytes()[..byte.min(self.text.len())].iter();
        before
            .rposition(|byte| matches!(byte, b'\n' | b'\r'))
            .map_or(0, |at| at + 1)
    }

    /// After the line break; one of two bytes counts as two lines, the second empty.
    fn line_end(&self, start: usize) -> usize {
        let mut after = self.text.as_bytes()[start..].iter();
        after
            .position(|byte| matches!(byte, b'\n' | b'\r'))
            .map_or(self.text.len(), |at| start + at + 1)
    }

    fn line_at(&self, start: usize) -> &str {
        self.text[start..self.line_end(start)].trim_end_matches(['\n', '\r'])
    }
}
