//! Blocks: what a template can put on a page, before anything has a place.

use super::style::Style;
use crate::press::text::Rich;

/// A whole document before layout.
#[derive(Clone, Debug, Default)]
pub struct Flow {
    /// At the head of every page, in place of the accent mark.
    pub band: Option<Band>,
    /// Beside the accent mark on every page after the first.
    pub running_head: Option<Rich>,
    /// At the left of the foot of the first page, and of all later ones.
    pub first_foot: Option<Rich>,
    pub foot: Option<Rich>,
    /// At the right of the foot: `Page {n} of {m}`.
    pub page_number: Option<String>,
    pub blocks: Vec<Block>,
}

/// White words on a band of ink: says whose the page is.
#[derive(Clone, Debug)]
pub struct Band {
    pub words: Rich,
    /// At the right end.
    pub beside: Rich,
}

#[derive(Clone, Debug)]
pub enum Block {
    Heading {
        /// 1 to 3; a document has exactly one heading of level 1.
        level: u8,
        style: Style,
        /// White above, in half lines.
        gap: u8,
        text: Rich,
    },
    Paragraph {
        style: Style,
        ink: Inking,
        /// White above, in half lines.
        gap: u8,
        /// Never the last of a page.
        keep_next: bool,
        text: Rich,
    },
    /// Rows of plain text without bullets.
    List(Vec<Rich>),
    Terms(Terms),
    Table(Table),
    /// Side by side on the 12-column grid, read left before right.
    Columns(Vec<Column>),
    /// One text in two flows of equal width, as even as its lines allow.
    Flows(Vec<Block>),
    Section(Section),
    Figure {
        name: String,
    },
    Ticks(Vec<TickGroup>),
    /// Writing lines for signatures, dates, amounts.
    Fields(Vec<Field>),
    /// White, in half lines of 6 points.
    Space(u8),
    Rule(Rule),
    /// Not divided unless it is longer than a page.
    Keep(Vec<Block>),
    NewPage,
    /// The first of several versions that fits on the rest of the page; the last is used if none does.
    Fit {
        name: String,
        versions: Vec<Vec<Block>>,
    },
    /// Blocks that stand only if a `Fit` of this name took the version with this number, from 0.
    When {
        fit: String,
        version: usize,
        blocks: Vec<Block>,
    },
    /// A place that texts can give the page number of.
    Anchor(String),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inking {
    Ink,
    Soft,
    Accent,
}

/// Bold words with the text that belongs to each.
#[derive(Clone, Debug)]
pub struct Terms {
    /// Width of the words' column in points.
    pub width: u16,
    pub voice: TermVoice,
    /// White between rows, in half lines.
    pub gap: u8,
    pub rows: Vec<(Rich, Rich)>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TermVoice {
    Bold,
    Soft,
}

#[derive(Clone, Debug)]
pub struct Column {
    /// Columns of the page's twelve.
    pub span: u8,
    pub blocks: Vec<Block>,
}

#[derive(Clone, Debug)]
pub struct Section {
    pub rule: Rule,
    pub blocks: Vec<Block>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    None,
    Thin,
    /// Above an acceptance.
    Heavy,
    /// Above a part that may be cut off.
    Dashed,
}

#[derive(Clone, Debug, Default)]
pub struct Table {
    pub columns: Vec<TableColumn>,
    pub head: Option<Vec<Rich>>,
    pub rows: Vec<TableRow>,
    /// Put the head on the line of the section's title just above, where there is room.
    pub head_beside_title: bool,
    /// Notes in rows without white between them, as the office wants them.
    pub close: bool,
}

#[derive(Clone, Copy, Debug)]
pub struct TableColumn {
    /// Points; 0 takes what the others leave.
    pub width: u16,
    pub align: Align,
    pub voice: CellVoice,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    Left,
    Right,
    /// Numbers on one decimal point.
    Decimal,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CellVoice {
    Plain,
    Bold,
    Soft,
}

#[derive(Clone, Debug)]
pub struct TableRow {
    pub kind: RowKind,
    pub cells: Vec<Cell>,
}

/// What stands in one cell, one under the other.
#[derive(Clone, Debug)]
pub struct Cell(pub Vec<CellPart>);

#[derive(Clone, Debug)]
pub enum CellPart {
    Words(Rich),
    /// By its name.
    Figure(String),
}

impl Cell {
    pub fn words(&self) -> impl Iterator<Item = &Rich> {
        self.0.iter().filter_map(|part| match part {
            CellPart::Words(words) => Some(words),
            CellPart::Figure(_) => None,
        })
    }
}

impl From<Rich> for Cell {
    fn from(words: Rich) -> Self {
        Self(vec![CellPart::Words(words)])
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowKind {
    Plain,
    /// The first row of a group: a little white above it.
    Group,
    /// Bold, with white above it and no rule.
    Sum,
    /// Bold, a rule above it, never parted from the row above.
    Total,
}

/// A question with boxes to tick.
#[derive(Clone, Debug)]
pub struct TickGroup {
    pub question: Rich,
    /// Whether "or" stands between the boxes, since they exclude each other.
    pub joined_by: Option<Rich>,
    /// Heads of the two columns of amounts, on the first group only.
    pub heads: Option<(Rich, Rich)>,
    pub items: Vec<TickItem>,
}

#[derive(Clone, Debug)]
pub struct TickItem {
    pub title: Rich,
    pub description: Rich,
    pub adds: Rich,
    pub total: Rich,
}

/// A place to write, or words on the same line as one.
#[derive(Clone, Debug)]
pub struct Field {
    pub span: u8,
    pub line: bool,
    pub over: Option<Over>,
    /// The small words under the line.
    pub under: Rich,
}

/// Words on the line.
#[derive(Clone, Debug)]
pub struct Over {
    pub style: Style,
    pub align: Align,
    pub text: Rich,
}
