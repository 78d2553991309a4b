//! Tables: `col` for each column, `thead` and `tbody` as in HTML.

use super::error::{MarkupError, Wrong};
use super::inline;
use super::node::Element;
use crate::press::layout::block::{Align, Block, CellVoice, Row, RowKind, Table, TableColumn};
use crate::press::text::Rich;

pub(super) const ALIGNS: [(&str, Align); 3] = [
    ("left", Align::Left),
    ("right", Align::Right),
    ("decimal", Align::Decimal),
];
const VOICES: [(&str, CellVoice); 3] = [
    ("plain", CellVoice::Plain),
    ("bold", CellVoice::Bold),
    ("soft", CellVoice::Soft),
];
const KINDS: [(&str, RowKind); 4] = [
    ("plain", RowKind::Plain),
    ("group", RowKind::Group),
    ("sum", RowKind::Sum),
    ("total", RowKind::Total),
];

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
                    table.head = Some(cells(row, "th", table.columns.len())?);
                }
            }
            "tbody" => {
                child.allow(&[])?;
                for row in child.children()? {
                    row.expect("tr")?;
                    row.allow(&["kind"])?;
                    table.rows.push(Row {
                        kind: row.choice("kind", &KINDS, RowKind::Plain)?,
                        cells: cells(row, "td", table.columns.len())?,
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

fn cells(row: Element<'_>, name: &str, columns: usize) -> Result<Vec<Rich>, MarkupError> {
    let mut cells = Vec::new();
    for cell in row.children()? {
        cell.expect(name)?;
        cell.allow(&[])?;
        cells.push(inline::rich(cell)?);
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
