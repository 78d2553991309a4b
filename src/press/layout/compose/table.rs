//! Tables: columns of fixed or remaining width, numbers on one decimal point.

use super::super::block::{
    Align, Cell, CellPart, CellVoice, Inking, RowKind, Table, TableColumn, TableRow,
};
use super::super::error::LayoutError;
use super::super::mark::rule;
use super::super::piece::{Body, Piece, Solid};
use super::super::style::{Style, grid};
use super::words::Manner;
use super::{Composer, HALF, Place};
use crate::press::drawing::point;
use crate::press::page::{Mark, NodeId, Owner, Scope, StructureRole};
use crate::press::text::{Rich, TextLine};
use std::rc::Rc;

/// A column with its place on the page.
#[derive(Clone, Copy)]
struct PlacedColumn {
    left: f32,
    width: f32,
    /// Of the longest part behind a decimal point, the point included.
    places: f32,
    spec: TableColumn,
}

impl Composer<'_> {
    pub(super) fn table(&mut self, place: Place, table: &Table) -> Result<Vec<Piece>, LayoutError> {
        let node = self.node(StructureRole::Table, Some(place.parent));
        let columns = self.set_columns(place, table)?;
        let mut pieces = Vec::new();
        let mut head = None;
        if let Some(cells) = &table.head {
            let group = self.node(StructureRole::TableHead, Some(node));
            let solid = self.head_row(group, &columns, cells)?;
            head = Some(Rc::new(solid.clone()));
            let mut piece = Piece::new(Body::Solid(solid)).after(HALF).kept();
            piece.beside_title = table.head_beside_title;
            pieces.push(piece);
        }
        let group = self.node(StructureRole::TableBody, Some(node));
        for (at, row) in table.rows.iter().enumerate() {
            let mut piece = self.row(group, place, &columns, row, table.close)?;
            if at == 0 {
                piece.before = HALF;
            }
            // A total row is never parted from the row above.
            piece.keep_next = table
                .rows
                .get(at + 1)
                .is_some_and(|next| next.kind == RowKind::Total);
            piece.head.clone_from(&head);
            pieces.push(piece);
        }
        Ok(pieces)
    }

    fn set_columns(&self, place: Place, table: &Table) -> Result<Vec<PlacedColumn>, LayoutError> {
        let mut widths = Vec::new();
        for (at, spec) in table.columns.iter().enumerate() {
            let wanted = f32::from(spec.width);
            widths.push(match spec.align {
                Align::Left => wanted,
                // Numbers are not broken: their column grows.
                Align::Right | Align::Decimal if spec.width != 0 => {
                    wanted.max(self.widest(table, at, *spec)? + grid::GUTTER)
                }
                Align::Right | Align::Decimal => 0.0,
            });
        }
        let rest = place.width - widths.iter().sum::<f32>();
        let mut left = place.x;
        let mut set = Vec::new();
        for (at, (spec, width)) in table.columns.iter().zip(widths).enumerate() {
            let width = if spec.width == 0 {
                rest.max(0.0)
            } else {
                width
            };
            set.push(PlacedColumn {
                left,
                width,
                places: match spec.align {
                    Align::Decimal => self.places(table, at, *spec)?,
                    Align::Left | Align::Right => 0.0,
                },
                spec: *spec,
            });
            left += width;
        }
        Ok(set)
    }

    fn cells(table: &Table, column: usize) -> impl Iterator<Item = (&Rich, RowKind)> {
        table
            .rows
            .iter()
            .filter_map(move |row| Some((row.cells.get(column)?, row.kind)))
            .flat_map(|(cell, kind)| cell.words().map(move |words| (words, kind)))
    }

    fn widest(&self, table: &Table, at: usize, spec: TableColumn) -> Result<f32, LayoutError> {
        let mut widest = 0.0_f32;
        for (cell, kind) in Self::cells(table, at) {
            let manner = self.cell_manner(spec.voice, kind, table.close);
            for line in self.lines(cell, manner, f32::INFINITY)? {
                widest = widest.max(line.width);
            }
        }
        Ok(widest)
    }

    fn places(&self, table: &Table, at: usize, spec: TableColumn) -> Result<f32, LayoutError> {
        let mut widest = 0.0_f32;
        for (cell, kind) in Self::cells(table, at) {
            widest = widest
                .max(self.behind_point(cell, self.cell_manner(spec.voice, kind, table.close))?);
        }
        Ok(widest)
    }

    fn behind_point(&self, cell: &Rich, manner: Manner) -> Result<f32, LayoutError> {
        let words = cell.words();
        let Some(point) = words.rfind('.') else {
            return Ok(0.0);
        };
        let behind = self.lines(&Rich::plain(&words[point..]), manner, f32::INFINITY)?;
        Ok(behind.first().map_or(0.0, |line| line.width))
    }

    fn cell_manner(&self, voice: CellVoice, kind: RowKind, close: bool) -> Manner {
        let style = if close { Style::Note } else { Style::Body };
        let manner = match voice {
            CellVoice::Plain => self.manner(style, Inking::Ink),
            CellVoice::Bold => self.manner(style, Inking::Ink).bold(),
            CellVoice::Soft => self.manner(Style::Note, Inking::Soft),
        };
        match kind {
            RowKind::Plain | RowKind::Group => manner,
            RowKind::Sum | RowKind::Total => manner.bold(),
        }
    }

    fn head_row(
        &mut self,
        group: NodeId,
        columns: &[PlacedColumn],
        cells: &[Rich],
    ) -> Result<Solid, LayoutError> {
        let row = self.node(StructureRole::TableRow, Some(group));
        let manner = self.manner(Style::Note, Inking::Soft);
        let mut solid = Solid {
            height: grid::LINE,
            ..Solid::default()
        };
        for (column, cell) in columns.iter().zip(cells) {
            // An empty cell heads nothing.
            let role = if cell.is_empty() {
                StructureRole::DataCell
            } else {
                StructureRole::HeaderCell(Scope::Column)
            };
            let owner = Owner::Node(self.node(role, Some(row)));
            let set = self.lines(cell, manner, column.limit(columns))?;
            self.stack(&mut solid, set, manner, *column, owner, 0.0);
        }
        Ok(solid)
    }

    fn row(
        &mut self,
        group: NodeId,
        place: Place,
        columns: &[PlacedColumn],
        row: &TableRow,
        close: bool,
    ) -> Result<Piece, LayoutError> {
        let node = self.node(StructureRole::TableRow, Some(group));
        let mut solid = Solid {
            height: grid::LINE,
            what: row
                .cells
                .iter()
                .flat_map(Cell::words)
                .map(Rich::words)
                .collect::<Vec<_>>()
                .join(" "),
            ..Solid::default()
        };
        if row.kind == RowKind::Total {
            let y = -HALF / 2.0;
            let (from, to) = (point(place.x, y), point(place.x + place.width, y));
            solid.marks.push(rule(from, to, 0.5, self.look.ink));
        }
        for (at, (column, cell)) in columns.iter().zip(&row.cells).enumerate() {
            let role = if at == 0 && cell.words().any(|words| !words.is_empty()) {
                StructureRole::HeaderCell(Scope::Row)
            } else {
                StructureRole::DataCell
            };
            let within = Place {
                parent: self.node(role, Some(node)),
                x: column.left,
                width: column.limit(columns),
            };
            let manner = self.cell_manner(column.spec.voice, row.kind, close);
            self.cell(&mut solid, within, *column, cell, manner)?;
        }
        let white = match row.kind {
            RowKind::Plain if close => 0.0,
            RowKind::Group | RowKind::Sum if close => HALF * 2.0 / 3.0,
            RowKind::Plain | RowKind::Group | RowKind::Sum | RowKind::Total => HALF,
        };
        Ok(Piece::new(Body::Solid(solid)).after(white))
    }

    /// Sets what a cell holds, one part under the other.
    fn cell(
        &mut self,
        solid: &mut Solid,
        within: Place,
        column: PlacedColumn,
        cell: &Cell,
        manner: Manner,
    ) -> Result<(), LayoutError> {
        let mut top = 0.0;
        for part in &cell.0 {
            top = match part {
                CellPart::Figure(name) => self.draw(solid, within, top, name)?,
                CellPart::Words(words) => {
                    // Several parts are paragraphs, so that their words do not run together aloud.
                    let owner = match cell.0.len() {
                        1 => within.parent,
                        _ => self.node(StructureRole::Paragraph, Some(within.parent)),
                    };
                    let slack = match column.spec.align {
                        Align::Decimal => column.places - self.behind_point(words, manner)?,
                        Align::Left | Align::Right => 0.0,
                    };
                    let column = PlacedColumn {
                        width: column.width - slack,
                        ..column
                    };
                    let set = self.lines(words, manner, within.width)?;
                    self.stack(solid, set, manner, column, Owner::Node(owner), top)
                }
            };
        }
        Ok(())
    }

    /// Sets a cell's lines into a row, which grows to hold them; answers their foot.
    fn stack(
        &self,
        solid: &mut Solid,
        set: Vec<TextLine>,
        manner: Manner,
        column: PlacedColumn,
        owner: Owner,
        top: f32,
    ) -> f32 {
        let mut y = top;
        for line in set {
            y += grid::LINE;
            let x = match column.spec.align {
                Align::Left => column.left,
                Align::Right | Align::Decimal => column.left + column.width - line.width,
            };
            let at = point(x, y - manner.setting.descent);
            let marks: Vec<Mark> = self.line(line, manner, at, owner);
            solid.marks.extend(marks);
        }
        solid.height = solid.height.max(y);
        y
    }
}

impl PlacedColumn {
    /// Width for words: words on the left leave air before the next column.
    fn limit(&self, columns: &[Self]) -> f32 {
        let last = columns.iter().all(|other| other.left <= self.left);
        match self.spec.align {
            Align::Left if !last => (self.width - HALF).max(grid::LINE),
            Align::Left | Align::Right | Align::Decimal => self.width.max(grid::LINE),
        }
    }
}
