//! Pieces to pages: what stays together, what moves on, what is divided.

use super::error::LayoutError;
use super::piece::{Body, Flows, Piece, Solid, end_of};
use super::style::grid;
use super::together::{can_start, cluster, divisible};
use crate::press::drawing::point;
use crate::press::page::{Bookmark, Mark, NodeId, Owner};
use std::collections::{BTreeMap, VecDeque};
use std::ops::Range;

/// What one attempt at the pages found out; the next one starts from it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Settled {
    /// Page number, from 1, of each named part.
    pub pages: BTreeMap<String, usize>,
    /// Version taken by each `Fit`.
    pub fits: BTreeMap<String, usize>,
    pub page_count: usize,
}

#[derive(Debug, Default)]
pub(super) struct Filled {
    pub pages: Vec<Vec<Mark>>,
    pub settled: Settled,
    pub outline: Vec<Bookmark>,
    pub bounds: Vec<(NodeId, usize, [f32; 4])>,
    /// Nodes of versions that were not taken.
    pub unused: Vec<Range<usize>>,
}

/// Sets all pieces; the first page starts at the first `top`, later ones at the second.
pub(super) fn fill(pieces: Vec<Piece>, [first, later]: [f32; 2]) -> Result<Filled, LayoutError> {
    let mut filled = Filled::default();
    let mut flow = VecDeque::from(pieces);
    let mut top = first;
    loop {
        filled.pages.push(Vec::new());
        filled.column(&mut flow, top, true)?;
        if flow.is_empty() {
            break;
        }
        top = later;
    }
    filled.settled.page_count = filled.pages.len();
    Ok(filled)
}

impl Filled {
    /// Fills from `y` down to the page's end; what does not fit stays in `flow`.
    ///
    /// `fresh` says that the page is still empty, so that something must be placed.
    fn column(
        &mut self,
        flow: &mut VecDeque<Piece>,
        mut y: f32,
        mut fresh: bool,
    ) -> Result<f32, LayoutError> {
        let mut first = true;
        while let Some(next) = flow.front() {
            match &next.body {
                Body::NewPage => {
                    flow.pop_front();
                    if fresh {
                        continue;
                    }
                    break;
                }
                Body::Fit { .. } => {
                    let piece = flow.pop_front().expect("the flow has a front");
                    self.choose(piece, flow, y, first);
                    continue;
                }
                Body::Solid(_) | Body::Columns(_) | Body::Whole(..) | Body::Flows(_) => {}
            }
            let together = cluster(flow);
            if end_of(flow.iter().take(together), y, first) <= grid::BOTTOM {
                for piece in flow.drain(..together) {
                    y = self.place(piece, y, first)?;
                    first = false;
                }
                fresh = false;
                continue;
            }
            let before_last = end_of(flow.iter().take(together - 1), y, first);
            let last = &flow[together - 1];
            let last_first = first && together == 1;
            match &last.body {
                Body::Whole(parts, bond)
                    if fresh || divisible(last, *bond, last.start(before_last, last_first)) =>
                {
                    let (before, snapped) = (last.before, last.snapped);
                    let mut parts = parts.clone();
                    if let Some(part) = parts.first_mut() {
                        part.before = before;
                        part.snapped |= snapped;
                    }
                    let rest = flow.split_off(together - 1);
                    flow.extend(parts);
                    flow.extend(rest.into_iter().skip(1));
                }
                Body::Columns(_) | Body::Flows(_)
                    if (fresh && together == 1)
                        || can_start(&last.body, last.start(before_last, last_first)) =>
                {
                    for piece in flow.drain(..together - 1) {
                        y = self.place(piece, y, first)?;
                        first = false;
                    }
                    let piece = flow.pop_front().expect("the cluster has a last piece");
                    let must = fresh && together == 1;
                    let waiting = flow.len();
                    y = self.divide(piece, flow, y, first, must)?;
                    if waiting < flow.len() {
                        break;
                    }
                    first = false;
                    fresh = false;
                }
                Body::Solid(_) | Body::Columns(_) | Body::Whole(..) | Body::Flows(_) if !fresh => {
                    break;
                }
                Body::Solid(solid) if together == 1 => {
                    return Err(LayoutError::TooLarge {
                        what: solid.what.clone(),
                    });
                }
                // Too many pieces want to stay together: part them after the first.
                Body::Solid(_)
                | Body::Columns(_)
                | Body::Whole(..)
                | Body::Flows(_)
                | Body::NewPage
                | Body::Fit { .. } => {
                    let piece = flow.front_mut().expect("the flow has a front");
                    piece.keep_next = false;
                }
            }
        }
        Ok(y)
    }

    /// Takes the first version that fits on the rest of the page, else the last.
    fn choose(&mut self, piece: Piece, flow: &mut VecDeque<Piece>, y: f32, first: bool) {
        let Body::Fit { name, mut versions } = piece.body else {
            return;
        };
        let taken = versions
            .iter()
            .position(|version| end_of(&version.pieces, y, first) <= grid::BOTTOM)
            .unwrap_or(versions.len().saturating_sub(1));
        if versions.is_empty() {
            return;
        }
        let version = versions.remove(taken);
        self.unused
            .extend(versions.into_iter().map(|other| other.nodes));
        for piece in version.pieces.into_iter().rev() {
            flow.push_front(piece);
        }
        self.settled.fits.insert(name, taken);
    }

    /// Fills columns, or flows one after the other, as far as they go; the rest is put back for the next page.
    fn divide(
        &mut self,
        piece: Piece,
        flow: &mut VecDeque<Piece>,
        y: f32,
        first: bool,
        fresh: bool,
    ) -> Result<f32, LayoutError> {
        let start = piece.start(y, first);
        let mut end = start;
        let rest = match piece.body {
            Body::Columns(columns) => {
                let mut rests = Vec::new();
                for column in columns {
                    let mut column = VecDeque::from(column);
                    end = end.max(self.column(&mut column, start, fresh)?);
                    rests.push(Vec::from(column));
                }
                let some = rests.iter().any(|rest| !rest.is_empty());
                some.then_some(Body::Columns(rests))
            }
            Body::Flows(flows) => {
                let mut pieces = VecDeque::from(flows.pieces);
                end = self.column(&mut pieces, start, fresh)?;
                for piece in &mut pieces {
                    piece.shift(flows.across);
                }
                end = end.max(self.column(&mut pieces, start, false)?);
                for piece in &mut pieces {
                    piece.shift(-flows.across);
                }
                let some = !pieces.is_empty();
                some.then(|| Body::Flows(Flows::new(pieces.into(), flows.across)))
            }
            Body::Solid(_) | Body::Whole(..) | Body::NewPage | Body::Fit { .. } => None,
        };
        if let Some(rest) = rest {
            let mut rest = Piece::new(rest).after(piece.before);
            rest.keep_next = piece.keep_next;
            flow.push_front(rest);
        }
        Ok(end)
    }

    /// Places a piece that is known to fit; returns where it ends.
    fn place(&mut self, piece: Piece, y: f32, first: bool) -> Result<f32, LayoutError> {
        let mut start = piece.start(y, first);
        if let Some(head) = piece.head.as_deref()
            && first
        {
            self.repeat_head(head, start);
            start += piece.head_height(first);
        }
        match piece.body {
            Body::Solid(solid) => {
                let end = start + solid.height;
                self.stamp(solid, start);
                Ok(end)
            }
            Body::Columns(columns) => self.side_by_side(columns, start),
            Body::Flows(flows) => self.side_by_side(flows.columns(), start),
            Body::Whole(pieces, _) => self.all_of(pieces, start),
            Body::NewPage | Body::Fit { .. } => Ok(start),
        }
    }

    fn side_by_side(&mut self, columns: Vec<Vec<Piece>>, y: f32) -> Result<f32, LayoutError> {
        let mut end = y;
        for column in columns {
            end = end.max(self.all_of(column, y)?);
        }
        Ok(end)
    }

    /// Sets pieces that were measured to fit.
    fn all_of(&mut self, pieces: Vec<Piece>, y: f32) -> Result<f32, LayoutError> {
        let mut flow = VecDeque::from(pieces);
        let end = self.column(&mut flow, y, false)?;
        // Only a page break or a `Fit` inside something kept together can leave a rest.
        match flow.front() {
            None => Ok(end),
            Some(_) => Err(LayoutError::TooLarge {
                what: "a part that is kept together".to_owned(),
            }),
        }
    }

    fn repeat_head(&mut self, head: &Solid, y: f32) {
        let mut again = head.clone();
        again.shift(point(0.0, y));
        let page = self.pages.last_mut().expect("a page is open");
        page.extend(again.marks.into_iter().map(|mark| Mark {
            owner: Owner::Header,
            ink: mark.ink,
        }));
    }

    fn stamp(&mut self, mut solid: Solid, y: f32) {
        let page = self.pages.len() - 1;
        for mark in &mut solid.marks {
            mark.ink.shift(point(0.0, y));
        }
        self.pages[page].append(&mut solid.marks);
        for (node, [left, top, right, bottom]) in solid.figures {
            self.bounds
                .push((node, page, [left, top + y, right, bottom + y]));
        }
        for name in solid.anchors {
            self.settled.pages.entry(name).or_insert(page + 1);
        }
        for (title, level) in solid.bookmarks {
            self.outline.push(Bookmark {
                title,
                level,
                page,
                y,
            });
        }
    }
}
