//! Writing lines for signatures and dates, with small words under them.

use super::super::block::{Align, Field, Inking};
use super::super::error::LayoutError;
use super::super::mark::rule;
use super::super::piece::{Body, Piece, Solid};
use super::super::style::{Style, grid};
use super::{Composer, Place};
use crate::press::drawing::point;
use crate::press::page::{Owner, StructureRole};

/// Where the line is drawn in a row with lines; above it is room for a hand.
const LINE_AT: f32 = 24.0;

impl Composer<'_> {
    pub(super) fn fields(
        &mut self,
        place: Place,
        fields: &[Field],
    ) -> Result<Vec<Piece>, LayoutError> {
        let has_lines = fields.iter().any(|field| field.line);
        let mut solid = Solid {
            height: if has_lines {
                LINE_AT + grid::LINE
            } else {
                grid::LINE
            },
            ..Solid::default()
        };
        let over_at = if has_lines {
            LINE_AT - grid::LINE / 2.0
        } else {
            grid::LINE - 3.0
        };
        let mut x = place.x;
        for field in fields {
            let width = grid::span(field.span);
            let inside = Place { x, width, ..place };
            if field.line {
                let (from, to) = (point(x, LINE_AT), point(x + width, LINE_AT));
                solid.marks.push(rule(from, to, 0.6, self.look.ink));
            }
            self.field(&mut solid, inside, field, over_at)?;
            x += width + grid::GUTTER;
        }
        Ok(vec![Piece::new(Body::Solid(solid))])
    }

    fn field(
        &mut self,
        solid: &mut Solid,
        place: Place,
        field: &Field,
        over_at: f32,
    ) -> Result<(), LayoutError> {
        if let Some(over) = &field.over {
            let (set, manner) = self.fitted(&over.text, over.style, Inking::Ink, place.width)?;
            let node = self.node(StructureRole::Paragraph, Some(place.parent));
            let count = set.len();
            for (at, line) in set.into_iter().enumerate() {
                // Further lines stand above the first, so the last keeps its place.
                let above =
                    manner.setting.line * f32::from(u8::try_from(count - at - 1).unwrap_or(0));
                let x = match over.align {
                    Align::Left => place.x,
                    Align::Right | Align::Decimal => place.x + place.width - line.width,
                };
                let start = point(x, over_at - above);
                solid
                    .marks
                    .extend(self.line(line, manner, start, Owner::Node(node)));
            }
        }
        if !field.under.is_empty() {
            let manner = self.manner(Style::Small, Inking::Soft);
            let node = self.node(StructureRole::Paragraph, Some(place.parent));
            let mut y = LINE_AT;
            for line in self.lines(&field.under, manner, place.width)? {
                y += grid::LINE;
                let start = point(place.x, y - manner.setting.descent);
                solid
                    .marks
                    .extend(self.line(line, manner, start, Owner::Node(node)));
            }
            solid.height = solid.height.max(y);
        }
        Ok(())
    }
}
