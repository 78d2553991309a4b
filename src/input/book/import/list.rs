//! A supplier's list: its head and its rows, every cell with its place.

use std::ops::Range;

use super::mapping::{Mapping, Separator};
use crate::reading::{At, FileId, Place, Problem, Problems, Read, suggest};

/// The rows below the head, and which cell is what.
#[derive(Debug)]
pub struct List<'a> {
    file: FileId,
    text: &'a str,
    separator: Separator,
    head: Row,
    pub rows: Vec<Row>,
    pub article: usize,
    pub price: usize,
    pub unit: usize,
    pub from: Option<usize>,
}

/// One record; a cell in quotes may go on in the next line.
#[derive(Debug)]
pub struct Row {
    cells: csv::StringRecord,
    start: usize,
}

impl Row {
    /// A cell without the spaces around it; one that is not there is empty.
    pub fn cell(&self, column: usize) -> &str {
        self.cells.get(column).unwrap_or_default().trim()
    }

    /// Every cell without the spaces around it.
    pub fn trimmed(&self) -> impl Iterator<Item = &str> {
        self.cells.iter().map(str::trim)
    }

    fn is_empty(&self) -> bool {
        self.trimmed().all(str::is_empty)
    }
}

/// The head of a list is looked for among so many lines; an address may stand above it.
const BEFORE_HEAD: usize = 50;

/// Reads a list by its mapping; what it lacks is reported.
pub fn read<'a>(
    file: FileId,
    text: &'a str,
    mapping: &Mapping,
    problems: &mut Problems,
) -> Read<List<'a>> {
    let mut rows = records(text, mapping.separator);
    let columns = &mapping.columns;
    let wanted = [&columns.article, &columns.price, &columns.unit];
    let wanted = || wanted.into_iter().chain(&columns.from);
    let known = |row: &Row| {
        let has = |name: &&At<String>| row.trimmed().any(|cell| cell == name.value);
        wanted().filter(has).count()
    };
    // The line with most of the names; the first of equals.
    let mut head = None;
    for (i, row) in rows.iter().enumerate().take(BEFORE_HEAD) {
        let known = known(row);
        if head.is_none_or(|(_, most)| most < known) {
            head = Some((i, known));
        }
    }
    let Some((head, _)) = head else {
        let place = Place {
            file,
            start: 0,
            end: 0,
        };
        return Err(problems.push(
            Problem::new("empty-list", "the list has no line with anything in it")
                .at(place)
                .help("name the file with the supplier's prices, saved as CSV"),
        ));
    };
    let below = rows.split_off(head + 1);
    let head = rows.swap_remove(head);
    let mut list = List {
        file,
        text,
        separator: mapping.separator,
        head,
        rows: below,
        article: 0,
        price: 0,
        unit: 0,
        from: None,
    };
    list.quotes_closed(problems);
    let article = list.column(&columns.article, problems);
    let price = list.column(&columns.price, problems);
    let unit = list.column(&columns.unit, problems);
    let from = columns.from.as_ref();
    let from = from.map(|name| list.column(name, problems));
    (list.article, list.price, list.unit) = (article?, price?, unit?);
    list.from = from.transpose()?;
    Ok(list)
}

fn records(text: &str, separator: Separator) -> Vec<Row> {
    let reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator.byte())
        .from_reader(text.as_bytes());
    reader
        .into_records()
        .map(|record| {
            let cells = record.expect("text in memory is read, and rows may be of any length");
            let from = cells.position().map_or(0, csv::Position::byte);
            let from = usize::try_from(from).expect("a place in a text in memory");
            // A record is said to begin where the one before ended: at its line break.
            let breaks = text[from..]
                .bytes()
                .take_while(|byte| b"\r\n".contains(byte));
            Row {
                start: from + breaks.count(),
                cells,
            }
        })
        .filter(|row| !row.is_empty())
        .collect()
}

impl List<'_> {
    /// Where a cell stands; the end of the line for one that is not there.
    pub fn place(&self, row: &Row, column: usize) -> Place {
        let mut cells = self.ranges(row.start);
        let mut end = row.start;
        for _ in 0..column {
            end = cells.next().map_or(end, |cell| cell.range.end);
        }
        self.at(cells.next().map_or(end..end, |cell| cell.range))
    }

    /// The name of a column, as the head has it.
    pub fn name(&self, column: usize) -> &str {
        self.head.cell(column)
    }

    /// Whether a row has more cells than the head, so that nobody knows which is which.
    pub fn is_too_long(&self, row: &Row) -> bool {
        let mut beyond = row.trimmed().skip(self.head.cells.len());
        beyond.any(|cell| !cell.is_empty())
    }

    /// The message for a row with too many cells.
    pub fn too_long(&self, row: &Row) -> Problem {
        let (cells, head) = (row.cells.len(), self.head.cells.len());
        let message = format!("this line has {cells} cells, and the head of the list has {head}");
        let last = self.place(row, cells - 1);
        Problem::new("too-many-cells", message)
            .at(self.place(row, 0).to(last))
            .help("put quotes round a text or price with a comma in it, as `\"1,234.50\"`")
    }

    fn column(&self, name: &At<String>, problems: &mut Problems) -> Read<usize> {
        let named = |(i, cell): (usize, &str)| (cell == name.value).then_some(i);
        let mut found = self.head.trimmed().enumerate().filter_map(named);
        let Some(first) = found.next() else {
            return Err(problems.push(self.missing(name)));
        };
        if let Some(second) = found.next() {
            let message = format!("two columns of the list are called `{}`", name.value);
            return Err(problems.push(
                Problem::new("column-twice", message)
                    .at(self.place(&self.head, second))
                    .also(self.place(&self.head, first), "the first")
                    .help("give one of them another name in the list"),
            ));
        }
        Ok(first)
    }

    fn missing(&self, name: &At<String>) -> Problem {
        let message = format!("the list has no column `{}`", name.value);
        let names: Vec<&str> = self.head.trimmed().collect();
        let other = Separator::ALL
            .into_iter()
            .find(|separator| names.len() == 1 && names[0].contains(char::from(separator.byte())));
        let help = match (other, suggest::closest(&name.value, names.iter().copied())) {
            (Some(other), _) => format!("write `separator: {}` in the mapping", other.name()),
            (None, Some(near)) => format!("did you mean `{near}`?"),
            (None, None) => format!("its columns are {}", names.join(", ")),
        };
        Problem::new("missing-column", message)
            .at(name.place)
            .also(self.place(&self.head, 0), "the head of the list")
            .help(help)
    }

    /// Whether a quote took in what does not belong to it: then nothing is known of what is missing.
    pub fn has_open_quote(&self) -> bool {
        let mut rows = std::iter::once(&self.head).chain(&self.rows);
        rows.any(|row| self.ranges(row.start).any(|cell| !cell.is_whole))
    }

    /// A quote that is closed nowhere, or only where the next one opens, takes lines into its cell.
    fn quotes_closed(&self, problems: &mut Problems) {
        for row in std::iter::once(&self.head).chain(&self.rows) {
            for cell in self.ranges(row.start).filter(|cell| !cell.is_whole) {
                let start = cell.range.start;
                problems.push(
                    Problem::new(
                        "open-quote",
                        "a quote is opened here and not closed in its cell",
                    )
                    .at(self.at(start..start + 1))
                    .help("close it, or write a quote within a text twice, as `\"4\"\" pipe\"`"),
                );
            }
        }
    }

    fn at(&self, range: Range<usize>) -> Place {
        let cell = &self.text[range.clone()];
        let front = cell.len() - cell.trim_start().len();
        let start = range.start + front;
        let offset = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
        Place {
            file: self.file,
            start: offset(start),
            end: offset(start + cell.trim().len()),
        }
    }

    /// The cells of the record that begins at `start`, quotes counted in.
    fn ranges(&self, start: usize) -> impl Iterator<Item = CellSpan> {
        let bytes = self.text.as_bytes();
        let separator = self.separator.byte();
        let mut next = Some(start);
        std::iter::from_fn(move || {
            let from = next?;
            let mut at = from;
            let mut closed = true;
            if bytes.get(at) == Some(&b'"') {
                closed = false;
                at += 1;
                while let Some(byte) = bytes.get(at) {
                    at += 1;
                    if *byte == b'"' && bytes.get(at) == Some(&b'"') {
                        at += 1;
                    } else if *byte == b'"' {
                        closed = true;
                        break;
                    }
                }
            }
            let quoted = from..at;
            let ends = |byte: &u8| *byte == separator || b"\r\n".contains(byte);
            at += bytes[at..].iter().take_while(|byte| !ends(byte)).count();
            next = (bytes.get(at) == Some(&separator)).then_some(at + 1);
            let one_line = !bytes[quoted.clone()].contains(&b'\n');
            let clean = bytes[quoted.end..at].iter().all(u8::is_ascii_whitespace);
            Some(CellSpan {
                range: from..at,
                is_whole: closed && (one_line || clean),
            })
        })
    }
}

/// Where a cell stands, and whether what its quote opens ends in it.
struct CellSpan {
    range: Range<usize>,
    is_whole: bool,
}
