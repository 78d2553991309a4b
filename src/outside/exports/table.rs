//! Comma-separated lines with a head (RFC 4180), UTF-8, for spreadsheets.
//!
//! A text that a spreadsheet would take for a formula, because it begins with `=`, `+`,
//! `-`, `@`, a tab or a line break, gets an apostrophe before it. Numbers are written as
//! they are.

use rust_decimal::Decimal;

use crate::values::Money;

/// One cell, by what it holds.
pub enum Cell {
    Text(String),
    Number(String),
    Nothing,
}

impl Cell {
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// `1305.00`.
    pub fn money(money: Money) -> Self {
        Self::Number(money.dollars().to_string())
    }

    /// `7.5`, exact and without trailing zeros.
    pub fn decimal(number: Decimal) -> Self {
        Self::Number(number.normalize().to_string())
    }

    pub fn count(number: usize) -> Self {
        Self::Number(number.to_string())
    }

    fn written(self) -> String {
        const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];
        match self {
            Self::Text(text) if text.starts_with(FORMULA) => format!("'{text}"),
            Self::Text(text) | Self::Number(text) => text,
            Self::Nothing => String::new(),
        }
    }
}

/// What may be missing.
pub fn or_nothing<T>(value: Option<T>, cell: impl FnOnce(T) -> Cell) -> Cell {
    value.map_or(Cell::Nothing, cell)
}

/// The head and the rows, each ending in a line break.
pub fn written(head: &[String], rows: Vec<Vec<Cell>>) -> String {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    let records = rows
        .into_iter()
        .map(|row| row.into_iter().map(Cell::written).collect());
    for record in std::iter::once(head.to_vec()).chain(records) {
        let record: Vec<String> = record;
        writer
            .write_record(&record)
            .expect("rows are as long as their head, and memory does not refuse them");
    }
    let bytes = writer.into_inner().expect("memory does not refuse them");
    String::from_utf8(bytes).expect("what went in was text")
}

/// A head of fixed names.
pub fn head(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_cannot_become_formulas_and_numbers_stay_numbers() {
        let rows = vec![
            vec![Cell::text("=1+1"), Cell::money(Money::cents(-329))],
            vec![Cell::text("a \"b\", c"), Cell::Nothing],
            vec![Cell::text("@x"), Cell::decimal(Decimal::new(750, 2))],
        ];
        assert_eq!(
            written(&head(&["text", "number"]), rows),
            "text,number\r\n'=1+1,-3.29\r\n\"a \"\"b\"\", c\",\r\n'@x,7.5\r\n"
        );
    }
}
