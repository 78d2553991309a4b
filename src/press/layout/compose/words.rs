//! Rich text to lines of marks.

use super::super::block::Inking;
use super::super::error::LayoutError;
use super::super::piece::Piece;
use super::super::style::{Setting, Style};
use super::{Composer, HALF, Place};
use crate::press::drawing::{Face, PagePoint, Rgb, point};
use crate::press::page::{Ink, Mark, Owner, Run, StructureRole};
use crate::press::text::{Rich, Span, TextLine, Voice, lines};
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Lines already set, by their words and all that shapes them: the same words come
/// again when pages are tried again.
pub(in super::super) type SetLines =
    RefCell<BTreeMap<(Vec<(Voice, String)>, Face, u32, i32, u32), Vec<TextLine>>>;

/// How to set some words.
#[derive(Clone, Copy)]
pub(in super::super) struct Manner {
    pub setting: Setting,
    pub color: Rgb,
}

impl Manner {
    pub fn bold(mut self) -> Self {
        self.setting.face = Face::Bold;
        self
    }
}

impl Composer<'_> {
    pub(in super::super) fn manner(&self, style: Style, ink: Inking) -> Manner {
        Manner {
            setting: style.setting(),
            color: match ink {
                Inking::Ink => self.look.ink,
                Inking::Soft => self.look.soft,
                Inking::Accent => self.look.accent,
            },
        }
    }

    /// Page numbers filled in, white space as in HTML: any run of it is one space.
    pub(super) fn resolved(&self, text: &Rich) -> Vec<(Voice, String)> {
        let mut stretches: Vec<(Voice, String)> = Vec::new();
        let mut open = true; // a space here would start the text or double one
        for span in &text.0 {
            let (voice, words) = match span {
                Span::Text(words, voice) => (*voice, words.clone()),
                Span::PageOf(name, voice) => {
                    let page = self.settled.pages.get(name).copied().unwrap_or(0);
                    (*voice, page.to_string())
                }
            };
            let mut kept = String::new();
            for character in words.chars() {
                if matches!(character, ' ' | '\n' | '\t' | '\r') {
                    if !open {
                        kept.push(' ');
                    }
                    open = true;
                } else {
                    kept.push(character);
                    open = false;
                }
            }
            match stretches.last_mut() {
                // One voice is shaped in one go.
                Some((before, all)) if *before == voice => all.push_str(&kept),
                _ if kept.is_empty() => {}
                _ => stretches.push((voice, kept)),
            }
        }
        if open && let Some((_, last)) = stretches.last_mut() {
            let kept = last.trim_end_matches(' ').len();
            last.truncate(kept);
        }
        stretches
    }

    pub(in super::super) fn lines(
        &self,
        text: &Rich,
        manner: Manner,
        limit: f32,
    ) -> Result<Vec<TextLine>, LayoutError> {
        let Setting {
            face,
            size,
            tracking,
            ..
        } = manner.setting;
        let stretches = self.resolved(text);
        if stretches.is_empty() {
            return Ok(Vec::new());
        }
        let key = (stretches, face, size.to_bits(), tracking, limit.to_bits());
        if let Some(set) = self.known.borrow().get(&key) {
            return Ok(set.clone());
        }
        let set = lines(&key.0, face, size, tracking, limit)?;
        self.known.borrow_mut().insert(key, set.clone());
        Ok(set)
    }

    /// The first line alone.
    pub(in super::super) fn first_line(
        &self,
        text: &Rich,
        manner: Manner,
        limit: f32,
    ) -> Result<Option<TextLine>, LayoutError> {
        Ok(self.lines(text, manner, limit)?.into_iter().next())
    }

    /// Lines in the largest size of a style in which one is enough, else in its smallest.
    pub(super) fn fitted(
        &self,
        text: &Rich,
        style: Style,
        ink: Inking,
        limit: f32,
    ) -> Result<(Vec<TextLine>, Manner), LayoutError> {
        let mut manner = self.manner(style, ink);
        let mut set = self.lines(text, manner, limit)?;
        for &size in style.smaller() {
            if set.len() < 2 {
                break;
            }
            manner.setting.size = size;
            set = self.lines(text, manner, limit)?;
        }
        Ok((set, manner))
    }

    /// The marks of one line with its baseline start at `at`.
    pub(in super::super) fn line(
        &self,
        line: TextLine,
        manner: Manner,
        at: PagePoint,
        owner: Owner,
    ) -> Vec<Mark> {
        let mut x = at.x;
        line.runs
            .into_iter()
            .map(|(voice, glyphs)| {
                let run = Run {
                    face: voice.face(manner.setting.face),
                    size: manner.setting.size,
                    color: match voice {
                        Voice::Plain | Voice::Bold => manner.color,
                        Voice::Soft => self.look.soft,
                    },
                    at: point(x, at.y),
                    upward: false,
                    glyphs,
                };
                x += super::super::mark::run_length(&run);
                Mark {
                    owner,
                    ink: Ink::Glyphs(run),
                }
            })
            .collect()
    }

    /// Lines as pieces, two of them kept together at either end.
    pub(super) fn line_pieces(
        &self,
        set: Vec<TextLine>,
        manner: Manner,
        x: f32,
        owner: Owner,
    ) -> Vec<Piece> {
        let count = set.len();
        let Setting { line, descent, .. } = manner.setting;
        set.into_iter()
            .enumerate()
            .map(|(at, words)| {
                let start = point(x, line - descent);
                let mut piece = Piece::solid(line, self.line(words, manner, start, owner));
                piece.keep_next = at + 1 < count && (at == 0 || at + 2 == count);
                piece
            })
            .collect()
    }

    pub(super) fn paragraph(
        &mut self,
        place: Place,
        style: Style,
        ink: Inking,
        gap: u8,
        text: &Rich,
    ) -> Result<Vec<Piece>, LayoutError> {
        let (set, manner) = self.fitted(text, style, ink, place.width)?;
        if set.is_empty() {
            return Ok(Vec::new());
        }
        let node = self.node(StructureRole::Paragraph, Some(place.parent));
        let mut pieces = self.line_pieces(set, manner, place.x, Owner::Node(node));
        pieces[0].before = f32::from(gap) * HALF;
        Ok(pieces)
    }
}
