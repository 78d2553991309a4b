//! Tables: `col` for each column, `thead` and `tbody` as in HTML.

use super::error::{MarkupError, Wrong};
use super::inline;
use super::node::{Element, Mixed};
use super::values::{ALIGNS, KINDS, VOICES};
use crate::press::layout::block::{
    Align, Block, Cell, CellPart, CellVoice, RowKind, Table, TableColumn, TableRow,
};

pub(super) fn read(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["id", "head", "rows"])?;
    let mut table = Table {
        head_beside_title: element.choice(
            "head",
            &[("beside-title", true), ("above", false)],
            false,
        )?,
        close: element.choice("rows", &[("close", true), ("apart", false)], false)?,
        ..Table::default()
    };
    for child in element.children()? {
        match child.name() {
            "col" => table.columns.push(column(child)?),
            "thead" => {
                child.allow(&[])?;
                for row in child.children()? {
                    row.expect("tr")?;
                    row.allow(&[])?;
                    let words = |cell| inline::rich(cell);
                    table.head = Some(cells(row, "th", table.columns.len(), words)?);
                }
            }
            "tbody" => {
                child.allow(&[])?;
                for row in child.children()? {
                    row.expect("tr")?;
                    row.allow(&["kind"])?;
                    table.rows.push(TableRow {
                        kind: row.choice("kind", &KINDS, RowKind::Plain)?,
                        cells: cells(row, "td", table.columns.len(), parts)?,
                    });
                }
            }
            _ => return Err(child.unknown()),
        }
    }
    Ok(Block::Table(table))
}

fn column(element: Element<'_>) -> Result<TableColumn, MarkupError> {
    element.allow(&["width", "align", "voice"])?;
    Ok(TableColumn {
        width: element.number("width", 516, 0)?,
        align: element.choice("align", &ALIGNS, Align::Left)?,
        voice: element.choice("voice", &VOICES, CellVoice::Plain)?,
    })
}

fn cells<'a, T>(
    row: Element<'a>,
    name: &str,
    columns: usize,
    read: impl Fn(Element<'a>) -> Result<T, MarkupError>,
) -> Result<Vec<T>, MarkupError> {
    let mut cells = Vec::new();
    for cell in row.children()? {
        cell.expect(name)?;
        cell.allow(&[])?;
        cells.push(read(cell)?);
    }
    if cells.len() == columns {
        Ok(cells)
    } else {
        Err(row.error(Wrong::CellCount {
            cells: cells.len(),
            columns,
        }))
    }
}

/// Words, or `p`s and `figure`s one under the other.
fn parts(cell: Element<'_>) -> Result<Cell, MarkupError> {
    let stacked = cell.mixed().any(|part| match part {
        Mixed::Element(element) => ["p", "figure"].contains(&element.name()),
        Mixed::Text(_) => false,
    });
    if !stacked {
        return Ok(inline::rich(cell)?.into());
    }
    let mut parts = Vec::new();
    for part in cell.children()? {
        parts.push(match part.name() {
            "p" => {
                part.allow(&[])?;
                CellPart::Words(inline::rich(part)?)
            }
            "figure" => {
                part.allow(&["name"])?;
                CellPart::Figure(part.required("name")?.to_owned())
            }
            _ => return Err(part.unknown()),
        });
    }
    Ok(Cell(parts))
}
