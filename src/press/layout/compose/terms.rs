//! Lists of plain rows, and of words with their texts.

use super::super::block::{Inking, TermVoice, Terms};
use super::super::error::LayoutError;
use super::super::piece::{Body, Piece};
use super::super::style::{Style, grid};
use super::{Composer, HALF, Place};
use crate::press::page::{NodeId, Owner, StructureRole};
use crate::press::text::Rich;

/// Rows of up to so many lines are not divided between pages.
const UNDIVIDED: usize = 6;

impl Composer<'_> {
    pub(super) fn list(&mut self, place: Place, rows: &[Rich]) -> Result<Vec<Piece>, LayoutError> {
        let manner = self.manner(Style::Body, Inking::Ink);
        let list = self.node(StructureRole::List, Some(place.parent));
        let mut pieces = Vec::new();
        for row in rows {
            let set = self.lines(row, manner, place.width)?;
            let body = self.item_body(list);
            pieces.extend(undivided(
                self.line_pieces(set, manner, place.x, Owner::Node(body)),
                HALF,
            ));
        }
        Ok(pieces)
    }

    pub(super) fn terms(&mut self, place: Place, terms: &Terms) -> Result<Vec<Piece>, LayoutError> {
        let text_manner = self.manner(Style::Body, Inking::Ink);
        let word_manner = match terms.voice {
            TermVoice::Bold => text_manner.bold(),
            TermVoice::Soft => self.manner(Style::Note, Inking::Soft),
        };
        let list = self.node(StructureRole::List, Some(place.parent));
        let column = f32::from(terms.width);
        let mut pieces = Vec::new();
        for (word, text) in &terms.rows {
            let item = self.node(StructureRole::ListItem, Some(list));
            let label = Owner::Node(self.node(StructureRole::Label, Some(item)));
            let body = Owner::Node(self.node(StructureRole::ListBody, Some(item)));
            let words = self.lines(word, word_manner, column - grid::GUTTER / 2.0)?;
            let texts = self.lines(text, text_manner, place.width - column)?;
            let mut row = self.line_pieces(words, word_manner, place.x, label);
            let mut beside = self.line_pieces(texts, text_manner, place.x + column, body);
            if row.len() < beside.len() {
                std::mem::swap(&mut row, &mut beside);
            }
            for (line, other) in row.iter_mut().zip(beside) {
                join(line, other, place.x);
            }
            pieces.extend(undivided(row, f32::from(terms.gap) * HALF));
        }
        Ok(pieces)
    }

    fn item_body(&mut self, list: NodeId) -> NodeId {
        let item = self.node(StructureRole::ListItem, Some(list));
        self.node(StructureRole::ListBody, Some(item))
    }
}

/// Puts the marks of both lines into one, left before right.
fn join(line: &mut Piece, other: Piece, left: f32) {
    let (Body::Solid(into), Body::Solid(mut from)) = (&mut line.body, other.body) else {
        return;
    };
    let from_is_left =
        super::super::mark::words_reach(&from.marks).is_some_and(|(start, _)| start <= left + 0.01);
    if from_is_left {
        std::mem::swap(&mut into.marks, &mut from.marks);
    }
    into.marks.append(&mut from.marks);
}

fn undivided(mut row: Vec<Piece>, gap: f32) -> Vec<Piece> {
    let count = row.len();
    for (at, line) in row.iter_mut().enumerate() {
        line.keep_next |= at + 1 < count && count <= UNDIVIDED;
    }
    if let Some(first) = row.first_mut() {
        first.before = gap;
    }
    row
}
