//! Questions with boxes to tick, what each adds and the new total.

use super::super::block::{Inking, TickGroup, TickItem};
use super::super::error::LayoutError;
use super::super::mark::rule;
use super::super::piece::{Body, Bond, Piece, Solid};
use super::super::style::{Style, grid};
use super::words::Manner;
use super::{Composer, HALF, Place, whole};
use crate::press::drawing::{Path, Stroke, point};
use crate::press::frame::Frame;
use crate::press::page::{Mark, NodeId, Owner, Scope, StructureRole};
use crate::press::text::Rich;
use std::rc::Rc;

/// Side of a box to tick.
const BOX: f32 = 11.0;
/// From the left edge to the words.
const INDENT: f32 = 22.0;
/// The two columns of amounts.
const AMOUNT: f32 = 2.0 * grid::MODULE;
/// More items than this stand closer together.
const ROOMY: usize = 8;

/// An item's surroundings.
#[derive(Clone, Copy)]
struct ItemPlace<'a> {
    group: NodeId,
    place: Place,
    /// The word between this item's box and the one above, and from one box's top to the other's.
    joint: Option<(&'a Rich, f32)>,
}

impl Composer<'_> {
    pub(super) fn ticks(
        &mut self,
        place: Place,
        groups: &[TickGroup],
    ) -> Result<Vec<Piece>, LayoutError> {
        let table = self.node(StructureRole::Table, Some(place.parent));
        let count: usize = groups.iter().map(|group| group.items.len()).sum();
        let air = if count <= ROOMY { grid::LINE } else { HALF };
        let mut pieces = Vec::new();
        let mut head = None;
        for (at, group) in groups.iter().enumerate() {
            if let Some(heads) = &group.heads {
                let node = self.node(StructureRole::TableHead, Some(table));
                let solid = self.tick_heads(node, place, heads)?;
                head = Some(Rc::new(solid.clone()));
                let mut piece = Piece::new(Body::Solid(solid)).after(HALF).kept();
                piece.beside_title = true;
                pieces.push(piece);
            }
            let body = self.node(StructureRole::TableBody, Some(table));
            let mut inside = vec![self.question(body, place, group)?];
            let mut above = None;
            for (item_at, item) in group.items.iter().enumerate() {
                let within = ItemPlace {
                    group: body,
                    place,
                    joint: group.joined_by.as_ref().zip(above),
                };
                let mut piece = self.item(within, item)?;
                above = match &piece.body {
                    Body::Solid(solid) => Some(solid.height + air),
                    _ => None,
                };
                piece.before = if item_at == 0 { HALF } else { air };
                let last_in_group = item_at + 1 == group.items.len();
                if !(last_in_group && at + 1 == groups.len()) {
                    self.hairline(&mut piece, place, last_in_group, air);
                }
                inside.push(piece);
            }
            for piece in whole(inside, Bond::Firm) {
                let mut piece = piece.after(grid::LINE);
                piece.head.clone_from(&head);
                pieces.push(piece);
            }
        }
        Ok(pieces)
    }

    fn tick_heads(
        &mut self,
        group: NodeId,
        place: Place,
        heads: &(Rich, Rich),
    ) -> Result<Solid, LayoutError> {
        let row = self.node(StructureRole::TableRow, Some(group));
        self.node(StructureRole::DataCell, Some(row));
        let manner = self.manner(Style::Note, Inking::Soft);
        let mut solid = Solid {
            height: grid::LINE,
            ..Solid::default()
        };
        for (head, right) in [
            (&heads.0, place.right() - AMOUNT),
            (&heads.1, place.right()),
        ] {
            let cell = self.node(StructureRole::HeaderCell(Scope::Column), Some(row));
            solid.marks.extend(self.flush(head, manner, right, cell)?);
        }
        Ok(solid)
    }

    fn question(
        &mut self,
        body: NodeId,
        place: Place,
        group: &TickGroup,
    ) -> Result<Piece, LayoutError> {
        let row = self.node(StructureRole::TableRow, Some(body));
        let cell = self.node(StructureRole::HeaderCell(Scope::Row), Some(row));
        self.node(StructureRole::DataCell, Some(row));
        self.node(StructureRole::DataCell, Some(row));
        let manner = self.manner(Style::Body, Inking::Ink);
        let mut solid = Solid {
            what: group.question.words(),
            ..Solid::default()
        };
        self.stacked(&mut solid, &group.question, manner, place, cell)?;
        Ok(Piece::new(Body::Solid(solid)).kept())
    }

    fn item(&mut self, within: ItemPlace<'_>, item: &TickItem) -> Result<Piece, LayoutError> {
        let ItemPlace { place, .. } = within;
        let row = self.node(StructureRole::TableRow, Some(within.group));
        let cell = self.node(StructureRole::HeaderCell(Scope::Row), Some(row));
        let adds = self.node(StructureRole::DataCell, Some(row));
        let total = self.node(StructureRole::DataCell, Some(row));
        let body = self.manner(Style::Body, Inking::Ink);

        let mut solid = Solid {
            what: item.title.words(),
            ..Solid::default()
        };
        if let Some((words, above)) = within.joint {
            self.joint(&mut solid, place.x, words, above, cell)?;
        }
        solid.marks.push(self.tick_box(place.x));
        let beside = Place {
            x: place.x + INDENT,
            width: place.width - INDENT - 2.0 * AMOUNT,
            ..place
        };
        self.stacked(&mut solid, &item.title, body.bold(), beside, cell)?;
        let note = self.manner(Style::Note, Inking::Soft);
        self.stacked(&mut solid, &item.description, note, beside, cell)?;
        let right = place.right();
        solid
            .marks
            .extend(self.flush(&item.adds, body, right - AMOUNT, adds)?);
        solid
            .marks
            .extend(self.flush(&item.total, body.bold(), right, total)?);
        Ok(Piece::new(Body::Solid(solid)))
    }

    /// Lines below what the solid already holds.
    fn stacked(
        &self,
        solid: &mut Solid,
        text: &Rich,
        manner: Manner,
        place: Place,
        node: NodeId,
    ) -> Result<(), LayoutError> {
        for line in self.lines(text, manner, place.width)? {
            solid.height += grid::LINE;
            let at = point(place.x, solid.height - manner.setting.descent);
            solid
                .marks
                .extend(self.line(line, manner, at, Owner::Node(node)));
        }
        Ok(())
    }

    /// One line that ends at `right`, on the first baseline.
    fn flush(
        &self,
        text: &Rich,
        manner: Manner,
        right: f32,
        node: NodeId,
    ) -> Result<Vec<Mark>, LayoutError> {
        let mut marks = Vec::new();
        if let Some(line) = self.first_line(text, manner, f32::INFINITY)? {
            let at = point(right - line.width, grid::LINE - manner.setting.descent);
            marks.extend(self.line(line, manner, at, Owner::Node(node)));
        }
        Ok(marks)
    }

    fn tick_box(&self, x: f32) -> Mark {
        let place = Frame::at(x + 0.5, 0.5, BOX, BOX);
        let stroke = Stroke::solid(self.look.ink, 0.9);
        Mark::layout(Path::closed(&place.corners(), Some(stroke), None))
    }

    /// "or" half way between this box and the one whose top is so far above.
    fn joint(
        &self,
        solid: &mut Solid,
        x: f32,
        words: &Rich,
        above: f32,
        cell: NodeId,
    ) -> Result<(), LayoutError> {
        let manner = self.manner(Style::Note, Inking::Soft);
        let middle = x + 0.5 + BOX / 2.0;
        let Some(line) = self.first_line(words, manner, INDENT)? else {
            return Ok(());
        };
        let (upper, lower) = (BOX + 0.5 - above, 0.5);
        let baseline = f32::midpoint(upper, lower) + 2.5;
        let at = point(middle - line.width / 2.0, baseline);
        solid
            .marks
            .extend(self.line(line, manner, at, Owner::Node(cell)));
        for (from, to) in [(upper, baseline - 7.0), (baseline + 2.5, lower)] {
            if from + 1.0 < to {
                let (from, to) = (point(middle, from), point(middle, to));
                solid.marks.push(rule(from, to, 0.6, self.look.soft));
            }
        }
        Ok(())
    }

    /// A hairline below an item, from the edge at a group's end.
    fn hairline(&self, piece: &mut Piece, place: Place, whole_width: bool, air: f32) {
        let Body::Solid(solid) = &mut piece.body else {
            return;
        };
        let y = solid.height + air / 3.0;
        let from = if whole_width {
            place.x
        } else {
            place.x + INDENT
        };
        let (from, to) = (point(from, y), point(place.right(), y));
        solid.marks.push(rule(from, to, 0.4, self.look.rule));
    }
}

impl Place {
    fn right(self) -> f32 {
        self.x + self.width
    }
}
