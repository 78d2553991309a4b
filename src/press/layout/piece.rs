//! Pieces: what is never divided, with its marks, waiting for a place on a page.

use super::mark::words_reach;
use super::style::grid;
use crate::press::drawing::{PagePoint, point};
use crate::press::page::{Mark, NodeId};
use std::ops::Range;
use std::rc::Rc;

#[derive(Clone, Debug)]
pub(super) struct Piece {
    /// White above; dropped at the top of a page or column.
    pub before: f32,
    /// Starts on a grid line.
    pub snapped: bool,
    /// Never the last of a page.
    pub keep_next: bool,
    /// A table head that may stand on the line of the title above it.
    pub beside_title: bool,
    /// The table head to repeat when this piece starts a page.
    pub head: Option<Rc<Solid>>,
    pub body: Body,
}

#[derive(Clone, Debug)]
pub(super) enum Body {
    Solid(Solid),
    Columns(Vec<Vec<Piece>>),
    /// Moves to the next page as a whole if it can.
    Whole(Vec<Piece>, Bond),
    /// One text in two equal columns.
    Flows(Flows),
    NewPage,
    Fit {
        name: String,
        versions: Vec<Version>,
    },
}

/// What becomes of something whole that does not fit on the rest of a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bond {
    /// Divided only if it is longer than a page.
    Firm,
    /// Divided as well if much of the page would stay empty.
    Loose,
}

/// One version of a `Fit`, and the structure nodes that only it uses.
#[derive(Clone, Debug)]
pub(super) struct Version {
    pub nodes: Range<usize>,
    pub pieces: Vec<Piece>,
}

/// Marks with x on the page and y from the piece's own top.
#[derive(Clone, Debug, Default)]
pub(super) struct Solid {
    pub height: f32,
    pub marks: Vec<Mark>,
    /// Figures with their box (left, top, right, bottom).
    pub figures: Vec<(NodeId, [f32; 4])>,
    pub anchors: Vec<String>,
    /// Title and level.
    pub bookmarks: Vec<(String, usize)>,
    /// For messages, when this is too large.
    pub what: String,
}

/// A text in two flows of equal width: all pieces at the left column's x.
#[derive(Clone, Debug)]
pub(super) struct Flows {
    pub pieces: Vec<Piece>,
    /// How many stand in the left flow when both fit.
    pub cut: usize,
    /// From the left column to the right one.
    pub across: f32,
}

impl Flows {
    /// Height when `cut` pieces stand on the left.
    pub fn height(&self, cut: usize, y: f32) -> f32 {
        let (left, right) = self.pieces.split_at(cut);
        end_of(left, y, true).max(end_of(right, y, true)) - y
    }
}

impl Piece {
    pub fn new(body: Body) -> Self {
        Self {
            before: 0.0,
            snapped: false,
            keep_next: false,
            beside_title: false,
            head: None,
            body,
        }
    }

    pub fn solid(height: f32, marks: Vec<Mark>) -> Self {
        Self::new(Body::Solid(Solid {
            height,
            marks,
            ..Solid::default()
        }))
    }

    pub fn after(mut self, white: f32) -> Self {
        self.before = white;
        self
    }

    pub fn kept(mut self) -> Self {
        self.keep_next = true;
        self
    }

    /// Names the place where this starts; names that found no place come back.
    pub fn named(&mut self, names: Vec<String>) -> Vec<String> {
        let first = match &mut self.body {
            Body::Solid(solid) => {
                solid.anchors.extend(names);
                return Vec::new();
            }
            Body::Columns(columns) => columns.iter_mut().find_map(|column| column.first_mut()),
            Body::Whole(pieces, _) => pieces.first_mut(),
            Body::Flows(flows) => flows.pieces.first_mut(),
            Body::NewPage => None,
            Body::Fit { versions, .. } => {
                for first in versions
                    .iter_mut()
                    .filter_map(|version| version.pieces.first_mut())
                {
                    first.named(names.clone());
                }
                return Vec::new();
            }
        };
        match first {
            Some(first) => first.named(names),
            None => names,
        }
    }

    /// Moves everything sideways.
    pub fn shift(&mut self, dx: f32) {
        let by = point(dx, 0.0);
        if let Some(head) = &mut self.head {
            let mut moved = (**head).clone();
            moved.shift(by);
            *head = Rc::new(moved);
        }
        match &mut self.body {
            Body::Solid(solid) => solid.shift(by),
            Body::Columns(columns) => columns.iter_mut().flatten().for_each(|one| one.shift(dx)),
            Body::Whole(pieces, _) => pieces.iter_mut().for_each(|one| one.shift(dx)),
            Body::Flows(flows) => flows.pieces.iter_mut().for_each(|one| one.shift(dx)),
            Body::NewPage => {}
            Body::Fit { versions, .. } => versions
                .iter_mut()
                .flat_map(|version| &mut version.pieces)
                .for_each(|one| one.shift(dx)),
        }
    }

    /// Where this piece starts when the white so far ends at `y`.
    pub fn start(&self, y: f32, first: bool) -> f32 {
        let y = if first { y } else { y + self.before };
        if self.snapped { grid::snapped(y) } else { y }
    }

    /// The height of the head to repeat above it.
    pub fn head_height(&self, first: bool) -> f32 {
        match &self.head {
            Some(head) if first => head.height + grid::LINE / 2.0,
            _ => 0.0,
        }
    }
}

impl Solid {
    pub fn shift(&mut self, by: PagePoint) {
        for mark in &mut self.marks {
            mark.ink.shift(by);
        }
        for (_, [left, top, right, bottom]) in &mut self.figures {
            *left += by.x;
            *right += by.x;
            *top += by.y;
            *bottom += by.y;
        }
    }

    /// Whether the words of both can stand on one line, this one's to the left.
    pub fn clear_of(&self, other: &Self) -> bool {
        match (words_reach(&self.marks), words_reach(&other.marks)) {
            (Some((_, right)), Some((left, _))) => right + grid::GUTTER <= left,
            _ => true,
        }
    }
}

/// Where these pieces would end if set one under the other from `y`.
pub(super) fn end_of<'a>(
    pieces: impl IntoIterator<Item = &'a Piece>,
    y: f32,
    mut first: bool,
) -> f32 {
    let mut end = y;
    for piece in pieces {
        let start = piece.start(end, first) + piece.head_height(first);
        end = start + height(&piece.body, start);
        first = false;
    }
    end
}

fn height(body: &Body, y: f32) -> f32 {
    match body {
        Body::Solid(solid) => solid.height,
        Body::Columns(columns) => columns
            .iter()
            .map(|column| end_of(column, y, true) - y)
            .fold(0.0, f32::max),
        Body::Whole(pieces, _) => end_of(pieces, y, true) - y,
        Body::Flows(flows) => flows.height(flows.cut, y),
        Body::NewPage => 0.0,
        Body::Fit { versions, .. } => versions
            .first()
            .map_or(0.0, |version| end_of(&version.pieces, y, true) - y),
    }
}
