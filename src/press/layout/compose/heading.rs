//! Headings, and table heads that share a heading's line.

use super::super::block::Inking;
use super::super::error::LayoutError;
use super::super::piece::{Body, Piece};
use super::super::style::Style;
use super::words::Manner;
use super::{Composer, HALF, Place};
use crate::press::page::{Owner, StructureRole};
use crate::press::text::{Rich, TextLine};

impl Composer<'_> {
    pub(super) fn heading(
        &mut self,
        place: Place,
        level: u8,
        style: Style,
        gap: u8,
        text: &Rich,
    ) -> Result<Vec<Piece>, LayoutError> {
        let manner = self.manner(style, Inking::Ink);
        let set = self.even_lines(text, manner, place.width)?;
        if set.is_empty() {
            return Ok(Vec::new());
        }
        let node = self.node(StructureRole::Heading(level), Some(place.parent));
        let mut pieces = self.line_pieces(set, manner, place.x, Owner::Node(node));
        for piece in &mut pieces {
            piece.keep_next = true;
        }
        pieces[0].before = f32::from(gap) * HALF;
        if let Body::Solid(solid) = &mut pieces[0].body {
            let words: Vec<String> = self
                .resolved(text)
                .into_iter()
                .map(|(_, words)| words)
                .collect();
            solid
                .bookmarks
                .push((words.concat(), usize::from(level.saturating_sub(1))));
        }
        Ok(pieces)
    }

    /// As few lines as possible, as equally long as possible.
    fn even_lines(
        &self,
        text: &Rich,
        manner: Manner,
        width: f32,
    ) -> Result<Vec<TextLine>, LayoutError> {
        let mut set = self.lines(text, manner, width)?;
        if set.len() < 2 {
            return Ok(set);
        }
        let (mut narrow, mut wide) = (width / 2.0, width);
        while 2.0 < wide - narrow {
            let middle = f32::midpoint(narrow, wide);
            let tried = self.lines(text, manner, middle)?;
            if tried.len() <= set.len() && tried.iter().all(|line| line.width <= middle) {
                wide = middle;
                set = tried;
            } else {
                narrow = middle;
            }
        }
        Ok(set)
    }
}

/// Lifts a table's head onto the line of the title before it, where both have room.
pub(super) fn beside_title(mut pieces: Vec<Piece>) -> Vec<Piece> {
    let Some(at) = pieces.iter().position(|piece| piece.beside_title) else {
        return pieces;
    };
    if at == 0 {
        return pieces;
    }
    let (titles, heads) = pieces.split_at_mut(at);
    let (Some(title), Some(head)) = (titles.last_mut(), heads.first()) else {
        return pieces;
    };
    if let (Body::Solid(title_solid), Body::Solid(head_solid)) = (&mut title.body, &head.body)
        && !title_solid.bookmarks.is_empty()
        && title_solid.clear_of(head_solid)
        && title_solid.height <= head_solid.height
    {
        title_solid.marks.extend(head_solid.marks.clone());
        pieces.remove(at);
    }
    pieces
}
