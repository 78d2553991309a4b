//! What layout hands to the writer of bytes: pages of placed marks, and the structure they belong to.

use super::drawing::{Face, PagePoint, Path, Picture, Rgb, Size};

/// A whole document, ready to become bytes.
#[derive(Clone, Debug)]
pub struct Document {
    pub pages: Vec<Page>,
    /// The structure tree; node 0 is the document itself.
    pub structure: Vec<Node>,
    pub outline: Vec<Bookmark>,
    pub about: About,
}

/// What the file says of itself; the dates are the document's own.
#[derive(Clone, Debug)]
pub struct About {
    pub title: String,
    pub author: String,
    pub subject: String,
    /// BCP 47, for example `en-US`.
    pub language: String,
    /// Seconds since 1970 in UTC of the document's own day; never the clock's.
    pub created: i64,
}

#[derive(Clone, Debug)]
pub struct Bookmark {
    pub title: String,
    /// 0 for a chapter, 1 below it, and so on.
    pub level: usize,
    pub page: usize,
    pub y: f32,
}

#[derive(Clone, Debug)]
pub struct Page {
    pub size: Size,
    /// In reading order.
    pub marks: Vec<Mark>,
}

/// A place in `Document::structure`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NodeId(pub usize);

impl Document {
    /// Whether `node` stands below `above`, which may be itself.
    pub fn is_within(&self, node: NodeId, above: NodeId) -> bool {
        let mut up = std::iter::successors(Some(node), |at| self.structure[at.0].parent);
        up.any(|at| at == above)
    }
}

/// One element of the structure tree (standard structure types only).
#[derive(Clone, Debug)]
pub struct Node {
    pub role: StructureRole,
    pub parent: Option<NodeId>,
    /// Alternative text, for figures.
    pub alternative: Option<String>,
    /// Page and box (left, top, right, bottom) of a figure.
    pub bounds: Option<(usize, [f32; 4])>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StructureRole {
    Document,
    Section,
    Heading(u8),
    Paragraph,
    List,
    ListItem,
    Label,
    ListBody,
    Table,
    TableHead,
    TableBody,
    TableRow,
    HeaderCell(Scope),
    DataCell,
    Figure,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    Row,
    Column,
}

/// Who a mark belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Owner {
    /// Read aloud, as part of this node.
    Node(NodeId),
    /// A rule, fill or other decoration.
    Layout,
    /// A running head or a repeated table head.
    Header,
    /// A running foot.
    Footer,
}

/// One thing drawn on a page, for one owner.
#[derive(Clone, Debug)]
pub struct Mark {
    pub owner: Owner,
    pub ink: Ink,
}

impl Mark {
    /// A rule, a fill or another decoration of the layout itself.
    pub fn layout(path: Path) -> Self {
        Self {
            owner: Owner::Layout,
            ink: Ink::Path(path),
        }
    }
}

#[derive(Clone, Debug)]
pub enum Ink {
    Path(Path),
    Glyphs(Run),
    Picture(Picture),
}

impl Ink {
    pub fn shift(&mut self, by: PagePoint) {
        match self {
            Self::Path(path) => path.shift(by.x, by.y),
            Self::Glyphs(run) => run.at = run.at.moved(by.x, by.y),
            Self::Picture(picture) => picture.at = picture.at.moved(by.x, by.y),
        }
    }

    /// Marked content must not be empty, or an element would claim to say something.
    pub fn shows(&self) -> bool {
        match self {
            Self::Path(path) => path.fill.is_some() || path.stroke.is_some(),
            Self::Glyphs(run) => !run.glyphs.is_empty(),
            Self::Picture(_) => true,
        }
    }
}

/// Shaped glyphs on one baseline, in one face, size and colour.
#[derive(Clone, Debug)]
pub struct Run {
    pub face: Face,
    pub size: f32,
    pub color: Rgb,
    /// Start of the baseline.
    pub at: PagePoint,
    /// Whether the run reads upward.
    pub upward: bool,
    pub glyphs: Vec<Glyph>,
}

/// One glyph of the uncut face, and the text it stands for.
#[derive(Clone, Debug)]
pub struct Glyph {
    /// Glyph number in the whole face.
    pub id: u16,
    /// Shaped advance in 1/1000 of the size, tracking included.
    pub advance: i32,
    /// The characters that this glyph shows; empty when the one before shows them too.
    pub text: String,
}
