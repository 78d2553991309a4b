//! Columns: one declaration of each makes the terminal's table, the CSV and the JSON.
//!
//! CSV is RFC 4180 in UTF-8. A text that a spreadsheet would take for a formula, because it
//! begins with `=`, `+`, `-`, `@`, a tab or a line break, gets an apostrophe before it. In JSON
//! decimals are strings, never floats.

use rust_decimal::Decimal;
use serde_json::{Map, Value};

use super::table::{Align, table};
use crate::values::{Day, Money, rounding};

/// What a cell holds, as people read it and as a file holds it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cell {
    shown: String,
    filed: Value,
    is_text: bool,
}

impl Cell {
    fn new(shown: String, filed: impl Into<Value>) -> Self {
        Self {
            shown,
            filed: filed.into(),
            is_text: false,
        }
    }

    fn text(text: String) -> Self {
        Self {
            is_text: true,
            ..Self::new(text.clone(), text)
        }
    }

    /// A number with all its places.
    pub fn number(number: Decimal) -> Self {
        Self::new(number.to_string(), number.to_string())
    }

    /// `7.5`: at most four places, and no zeros at the end.
    pub fn quantity(number: Decimal) -> Self {
        Self::number(rounding::to_places(number, 4).normalize())
    }

    /// `20.02`: as many places in a file as it means; `shown` is for people.
    pub fn percent(number: Decimal, places: u32, shown: String) -> Self {
        Self::new(shown, rounding::with_places(number, places).to_string())
    }

    fn in_csv(self) -> String {
        const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];
        match self.filed {
            Value::Null => String::new(),
            Value::String(text) if self.is_text && text.starts_with(FORMULA) => format!("'{text}"),
            Value::String(text) => text,
            other => other.to_string(),
        }
    }
}

impl From<Cell> for Value {
    fn from(cell: Cell) -> Self {
        cell.filed
    }
}

macro_rules! cells {
    ($($from:ty => $cell:expr),*) => {$(
        impl From<$from> for Cell {
            fn from(value: $from) -> Self {
                $cell(value)
            }
        }
    )*};
}

cells!(
    String => Cell::text,
    &str => |text: &str| Cell::text(text.to_owned()),
    Day => |day: Day| Cell::text(day.to_string()),
    Money => |money: Money| Cell::new(money.plain(), money.dollars().to_string()),
    i64 => |count: i64| Cell::new(count.to_string(), count),
    u32 => |count: u32| Cell::new(count.to_string(), count)
);

impl<T: Into<Self>> From<Option<T>> for Cell {
    fn from(value: Option<T>) -> Self {
        value.map(Into::into).unwrap_or_default()
    }
}

/// Who reads a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    Terminal,
    Csv,
    Json,
}

/// How a cell is read from a row, or from all of them.
type Reads<'a, T> = dyn Fn(&T) -> Cell + 'a;

/// A column of a table whose rows are `T`.
pub struct Column<'a, T> {
    /// For the terminal.
    head: String,
    /// For programs.
    key: String,
    align: Align,
    readers: &'static [Reader],
    is_last: bool,
    cell: Box<Reads<'a, T>>,
    /// What stands below all rows in the terminal.
    foot: Option<Box<Reads<'a, [T]>>>,
}

impl<'a, T> Column<'a, T> {
    /// A column of words; its head says what its key says.
    pub fn left<C: Into<Cell>>(key: impl Into<String>, cell: impl Fn(&T) -> C + 'a) -> Self {
        let key = key.into();
        Self {
            head: key.replace('_', " "),
            key,
            align: Align::Left,
            readers: &[Reader::Terminal, Reader::Csv, Reader::Json],
            is_last: false,
            cell: Box::new(move |row| cell(row).into()),
            foot: None,
        }
    }

    /// A column of numbers.
    pub fn right<C: Into<Cell>>(key: impl Into<String>, cell: impl Fn(&T) -> C + 'a) -> Self {
        Self {
            align: Align::Right,
            ..Self::left(key, cell)
        }
    }

    /// Amounts that are added up below the table.
    pub fn summed<M: Into<Option<Money>>>(
        key: impl Into<String>,
        amount: impl Fn(&T) -> M + Copy + 'a,
    ) -> Self {
        let amount = move |row: &T| -> Option<Money> { amount(row).into() };
        Self::right(key, amount)
            .foot(move |rows: &[T]| rows.iter().filter_map(amount).sum::<Money>())
    }

    pub fn foot<C: Into<Cell>>(self, foot: impl Fn(&[T]) -> C + 'a) -> Self {
        let foot = Box::new(move |rows: &[T]| foot(rows).into());
        Self {
            foot: Some(foot),
            ..self
        }
    }

    /// Another head than the key.
    pub fn head(self, head: impl Into<String>) -> Self {
        let head = head.into();
        Self { head, ..self }
    }

    /// Not for all readers.
    pub fn only(self, readers: &'static [Reader]) -> Self {
        Self { readers, ..self }
    }

    /// Long words stand behind all other columns in the terminal.
    pub fn last(self) -> Self {
        Self {
            is_last: true,
            ..self
        }
    }
}

/// The columns of a table, in the order of its files.
pub struct Columns<'a, T>(pub Vec<Column<'a, T>>);

impl<T> Columns<'_, T> {
    fn of(&self, reader: Reader) -> impl Iterator<Item = &Column<'_, T>> {
        let columns = self.0.iter();
        columns.filter(move |column| column.readers.contains(&reader))
    }

    /// Head and rows for the terminal, and below them the foot where a column has one.
    pub fn lines(&self, rows: &[T]) -> Vec<String> {
        let mut columns: Vec<&Column<'_, T>> = self.of(Reader::Terminal).collect();
        columns.sort_by_key(|column| column.is_last);
        let mut cells = vec![columns.iter().map(|column| column.head.clone()).collect()];
        for row in rows {
            let row = columns.iter().map(|column| (column.cell)(row).shown);
            cells.push(row.collect());
        }
        if columns.iter().any(|column| column.foot.is_some()) {
            let foot = |column: &&Column<'_, T>| {
                let foot = column.foot.as_ref().map(|foot| foot(rows).shown);
                foot.unwrap_or_default()
            };
            cells.push(columns.iter().map(foot).collect());
        }
        let aligns: Vec<Align> = columns.iter().map(|column| column.align).collect();
        table(&aligns, &cells)
    }

    /// Head and rows as CSV, each ending in a line break.
    pub fn csv(&self, rows: &[T]) -> String {
        let mut writer = csv::WriterBuilder::new()
            .terminator(csv::Terminator::CRLF)
            .from_writer(Vec::new());
        let head = self.of(Reader::Csv).map(|column| column.key.clone());
        let mut records: Vec<Vec<String>> = vec![head.collect()];
        records.extend(rows.iter().map(|row| {
            let cells = self
                .of(Reader::Csv)
                .map(|column| (column.cell)(row).in_csv());
            cells.collect()
        }));
        for record in records {
            writer
                .write_record(&record)
                .expect("rows are as long as their head, and memory does not refuse them");
        }
        let bytes = writer.into_inner().expect("memory does not refuse them");
        String::from_utf8(bytes).expect("what went in was text")
    }

    /// A row as an object.
    pub fn object(&self, row: &T) -> Value {
        let columns = self.of(Reader::Json);
        let cells = columns.map(|column| (column.key.clone(), (column.cell)(row).into()));
        Value::Object(cells.collect::<Map<_, _>>())
    }

    /// The rows as objects.
    pub fn objects(&self, rows: &[T]) -> Value {
        rows.iter().map(|row| self.object(row)).collect()
    }
}

/// JSON as it goes out: indented, ending in a line break.
pub fn json(value: &Value) -> String {
    format!("{value:#}\n")
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn texts_cannot_become_formulas_and_numbers_stay_numbers() {
        let columns: Columns<'_, (&str, Cell)> = Columns(vec![
            Column::left("a_text", |row: &(&str, Cell)| row.0),
            Column::right("number", |row: &(&str, Cell)| row.1.clone()),
            Column::left("only_read", |_: &(&str, Cell)| "x").only(&[Reader::Terminal]),
        ]);
        let rows = [
            ("=1+1", Money::cents(-329).into()),
            ("a \"b\", c", Cell::default()),
            ("@x", Cell::quantity(dec!(7.50))),
            ("1/3", Cell::quantity(Decimal::ONE / dec!(3))),
        ];
        assert_eq!(
            columns.csv(&rows),
            "a_text,number\r\n'=1+1,-3.29\r\n\"a \"\"b\"\", c\",\r\n'@x,7.5\r\n1/3,0.3333\r\n"
        );
        let first = r#"{"a_text":"=1+1","number":"-3.29"}"#;
        assert_eq!(columns.object(&rows[0]).to_string(), first);
        let shown = columns.lines(&rows[..2]);
        assert_eq!(
            shown,
            [
                "a text    number  only read",
                "=1+1       -3.29  x",
                "a \"b\", c          x"
            ]
        );
    }
}
