//! Paragraphs to lines: breaks by UAX #14, filled greedily, no hyphenation.

use super::rich::Voice;
use super::shape::{Unshapable, shape, width};
use crate::press::drawing::Face;
use crate::press::page::Glyph;
use std::collections::BTreeMap;
use unicode_linebreak::{BreakOpportunity, linebreaks};

/// One line: runs of glyphs, each in one voice, in reading order.
///
/// The space at a line's end stays as a glyph, since words extracted from the
/// page would otherwise run together; it does not count in the width.
#[derive(Clone, Debug, Default)]
pub struct TextLine {
    pub runs: Vec<(Voice, Vec<Glyph>)>,
    /// Points.
    pub width: f32,
}

/// Breaks a text into lines not wider than `limit` points.
///
/// A word wider than the limit is broken between characters. A last line of
/// one short word gets company when the line above can spare a word.
pub fn lines(
    text: &[(Voice, String)],
    face: Face,
    size: f32,
    tracking: i32,
    limit: f32,
) -> Result<Vec<TextLine>, Unshapable> {
    let whole: String = text.iter().map(|(_, part)| part.as_str()).collect();
    let source = Voiced {
        voices: voices(text),
        whole: &whole,
        face,
        size,
        tracking,
    };
    if !whole.contains(FORCED) {
        let line = source.line(0, whole.len())?;
        if line.width <= limit {
            return Ok(vec![line]);
        }
    }
    let mut starts = vec![0];
    let mut open = 0; // start of the line being filled
    let mut last = 0; // last break that still fits
    let guess = Guess::new(&source)?;
    for &(stop, forced) in &guess.stops {
        while !guess.fits(&source, open, stop, limit)? {
            if last == open {
                last = source.emergency(open, stop, limit)?;
                if stop <= last {
                    break;
                }
            }
            open = last;
            starts.push(open);
        }
        last = stop;
        if forced {
            open = stop;
            starts.push(open);
        }
    }
    accompany_last(&mut starts, &source, limit)?;
    let ends = starts.iter().copied().skip(1).chain([whole.len()]);
    starts
        .iter()
        .copied()
        .zip(ends)
        .map(|(start, end)| source.line(start, end))
        .collect()
}

/// Characters after which UAX #14 demands a new line.
const FORCED: [char; 7] = [
    '\n', '\r', '\u{b}', '\u{c}', '\u{85}', '\u{2028}', '\u{2029}',
];

/// The text with what it is set in.
struct Voiced<'a> {
    /// End of each stretch, and its voice.
    voices: Vec<(usize, Voice)>,
    whole: &'a str,
    face: Face,
    size: f32,
    tracking: i32,
}

/// Widths of the words one by one, which add up to a line's width but for the
/// kerning between them: enough to know most lines without shaping them.
struct Guess {
    /// Where lines may end, and whether they must.
    stops: Vec<(usize, bool)>,
    /// Width from the start of the text to each stop.
    widths: BTreeMap<usize, f32>,
}

impl Guess {
    fn new(source: &Voiced<'_>) -> Result<Self, Unshapable> {
        let whole = source.whole;
        let mut stops: Vec<(usize, bool)> = linebreaks(whole)
            .map(|(at, kind)| (at, kind == BreakOpportunity::Mandatory && at < whole.len()))
            .collect();
        if stops.is_empty() {
            stops.push((whole.len(), false));
        }
        let (mut widths, mut before, mut sum) = (BTreeMap::from([(0, 0.0)]), 0, 0.0);
        for &(stop, _) in &stops {
            let runs = source.runs(before, stop)?;
            sum += runs
                .iter()
                .map(|(_, glyphs)| width(glyphs, source.size))
                .sum::<f32>();
            widths.insert(stop, sum);
            before = stop;
        }
        Ok(Self { stops, widths })
    }

    /// Whether the line fits; shaped as a whole only when the guess is close to the limit.
    fn fits(
        &self,
        source: &Voiced<'_>,
        open: usize,
        stop: usize,
        limit: f32,
    ) -> Result<bool, Unshapable> {
        if let (Some(from), Some(to)) = (self.widths.get(&open), self.widths.get(&stop)) {
            let with_space = to - from;
            // Kerning with spaces and the space at the end stay well within an em.
            if with_space <= limit - source.size / 2.0 {
                return Ok(true);
            }
            if limit + source.size < with_space {
                return Ok(false);
            }
        }
        Ok(source.width(open, stop)? <= limit)
    }
}

fn voices(text: &[(Voice, String)]) -> Vec<(usize, Voice)> {
    let mut end = 0;
    text.iter()
        .map(|(voice, part)| {
            end += part.len();
            (end, *voice)
        })
        .collect()
}

impl Voiced<'_> {
    fn runs(&self, start: usize, end: usize) -> Result<Vec<(Voice, Vec<Glyph>)>, Unshapable> {
        let mut runs = Vec::new();
        let mut from = start;
        for &(stretch_end, voice) in &self.voices {
            let to = end.min(stretch_end);
            if from < to {
                let face = voice.face(self.face);
                runs.push((voice, shape(face, &self.whole[from..to], self.tracking)?));
                from = to;
            }
        }
        Ok(runs)
    }

    /// Width without the space at the end.
    fn width(&self, start: usize, end: usize) -> Result<f32, Unshapable> {
        let words = self.whole[start..end].trim_end_matches([' ', '\n']);
        let runs = self.runs(start, start + words.len())?;
        Ok(runs
            .iter()
            .map(|(_, glyphs)| width(glyphs, self.size))
            .sum())
    }

    fn line(&self, start: usize, end: usize) -> Result<TextLine, Unshapable> {
        let kept = self.whole[start..end].trim_end_matches('\n').len();
        let runs = self.runs(start, start + kept)?;
        let mut all: f32 = runs
            .iter()
            .map(|(_, glyphs)| width(glyphs, self.size))
            .sum();
        if let Some((_, glyphs)) = runs.last() {
            let spaces = glyphs
                .iter()
                .rev()
                .take_while(|glyph| glyph.text == " ")
                .count();
            all -= width(&glyphs[glyphs.len() - spaces..], self.size);
        }
        Ok(TextLine { runs, width: all })
    }

    /// Where a word wider than the line must be broken; at least one character on.
    fn emergency(&self, start: usize, end: usize, limit: f32) -> Result<usize, Unshapable> {
        let mut fits = None;
        for (at, _) in self.whole[start..end].char_indices().skip(1) {
            if limit < self.width(start, start + at)? && fits.is_some() {
                break;
            }
            fits = Some(start + at);
        }
        Ok(fits.unwrap_or(end))
    }
}

/// Moves a word down when the last line would be one short word alone.
fn accompany_last(starts: &mut [usize], source: &Voiced<'_>, limit: f32) -> Result<(), Unshapable> {
    let &[.., above, last] = &*starts else {
        return Ok(());
    };
    let alone = &source.whole[last..];
    if alone.trim_end().contains(' ') || limit / 5.0 < source.width(last, source.whole.len())? {
        return Ok(());
    }
    let previous = linebreaks(&source.whole[..last])
        .map(|(at, _)| at)
        .filter(|&at| above < at && at < last)
        .last();
    if let Some(earlier) = previous
        && limit * 0.6 <= source.width(above, earlier)?
        && source.width(earlier, source.whole.len())? <= limit
    {
        *starts.last_mut().expect("there are at least two lines") = earlier;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(text: &str, limit: f32) -> Vec<String> {
        lines(
            &[(Voice::Plain, text.to_owned())],
            Face::Regular,
            9.5,
            0,
            limit,
        )
        .unwrap()
        .iter()
        .map(|line| {
            assert!(line.width <= limit, "{} in {limit}", line.width);
            line.runs
                .iter()
                .flat_map(|(_, glyphs)| glyphs.iter().map(|glyph| glyph.text.as_str()))
                .collect()
        })
        .collect()
    }

    #[test]
    fn lines_end_where_unicode_allows_and_keep_their_space() {
        let text =
            "old patio, 200\u{a0}sq\u{a0}ft, and lawn soil 8\u{a0}in deep; we haul both away";
        let all = set(text, 100.0);
        assert!(2 < all.len());
        assert_eq!(all.concat(), text);
        assert!(all[0].ends_with(' '), "{all:?}");
        assert!(!all.iter().any(|line| line.ends_with("200\u{a0}")));
    }

    #[test]
    fn a_word_wider_than_the_line_is_broken_between_characters() {
        let text = "see abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz now";
        let all = set(text, 60.0);
        assert_eq!(all.concat(), text);
        assert_eq!(all[0], "see ");
    }

    #[test]
    fn a_short_last_word_is_not_left_alone() {
        let text = "A troweled band with a tooled line beside it";
        let one = set(text, 1000.0);
        assert_eq!(one.len(), 1);
        let nearly = width(&shape(Face::Regular, text, 0).unwrap(), 9.5) - 1.0;
        let two = set(text, nearly);
        assert_eq!(two[1], "beside it");
    }
}
