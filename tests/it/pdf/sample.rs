//! A document with one of everything the writer knows, set by hand.

use flatwork::inside::press::{
    drawing::{Face, Line, Path, Picture, Rgb, Size, Stroke, curve, line, point},
    frame::Frame,
    page::{About, Bookmark, Document, Ink, Mark, Node, NodeId, Owner, Page, Scope, StructureRole},
};

use super::shaping::{upward, words};

pub const BLACK: Rgb = Rgb(0, 0, 0);
pub const RUST: Rgb = Rgb(178, 80, 30);
pub const PHOTO: &[u8] = include_bytes!("photo.jpg");

/// Everything at once: two pages, headings, a table over the page break, lists, a
/// figure, a picture and an outline.
pub fn document() -> Document {
    let mut sample = Sample::new();
    let heading = sample.node(StructureRole::Heading(1), ROOT);
    sample.words(
        heading,
        Face::Bold,
        20.0,
        (72.0, 90.0),
        "Offer for a driveway in Quillhaven",
    );
    sample.bookmark("Offer \u{2013} driveway", 0, 76.0);
    let intro = sample.node(StructureRole::Paragraph, ROOT);
    sample.words(
        intro,
        Face::Regular,
        10.0,
        (72.0, 120.0),
        "Larkspur Flatwork offers to place 12\u{2032}-6\u{2033} of slab; ",
    );
    sample.words(intro, Face::Regular, 10.0, (72.0, 134.0), "call 555-0142.");
    sample.list();
    sample.figure();
    let section = sample.node(StructureRole::Heading(2), ROOT);
    sample.words(
        section,
        Face::Bold,
        14.0,
        (72.0, 480.0),
        "Lines of the offer",
    );
    sample.bookmark("Lines", 1, 466.0);
    sample.table();
    sample.picture();
    sample.finish()
}

const ROOT: NodeId = NodeId(0);

/// The document so far; marks go to its last page.
pub struct Sample(Document);

impl Sample {
    pub fn new() -> Self {
        let about = About {
            title: "Offer 2026-0041: concrete & <finish>".to_owned(),
            author: "Larkspur Flatwork".to_owned(),
            subject: "Driveway, \u{201c}broom\u{201d} finish".to_owned(),
            language: "en-US".to_owned(),
            created: 1_777_852_800,
        };
        let root = Node {
            role: StructureRole::Document,
            parent: None,
            alternative: None,
            bounds: None,
        };
        let mut sample = Self(Document {
            pages: Vec::new(),
            structure: vec![root],
            outline: Vec::new(),
            about,
        });
        sample.page();
        sample
    }

    pub fn page(&mut self) {
        let size = Size::new(612.0, 792.0);
        let number = self.0.pages.len() + 1;
        self.0.pages.push(Page {
            size,
            marks: Vec::new(),
        });
        self.mark(
            Owner::Header,
            words(Face::Regular, 8.0, (72.0, 50.0), "Larkspur Flatwork"),
        );
        self.mark(
            Owner::Footer,
            words(Face::Regular, 8.0, (72.0, 750.0), &format!("Page {number}")),
        );
    }

    pub fn node(&mut self, role: StructureRole, parent: NodeId) -> NodeId {
        self.0.structure.push(Node {
            role,
            parent: Some(parent),
            alternative: None,
            bounds: None,
        });
        NodeId(self.0.structure.len() - 1)
    }

    pub fn words(&mut self, node: NodeId, face: Face, size: f32, at: (f32, f32), text: &str) {
        self.mark(Owner::Node(node), words(face, size, at, text));
    }

    pub fn box_at(&mut self, node: NodeId) {
        let stroke = Stroke::solid(BLACK, 0.5);
        let lines = vec![ring((72.0, 82.0), (80.0, 90.0))];
        self.mark(
            Owner::Node(node),
            Ink::Path(Path::new(lines, Some(stroke), None)),
        );
    }

    pub fn finish(self) -> Document {
        self.0
    }

    fn mark(&mut self, owner: Owner, ink: Ink) {
        self.0
            .pages
            .last_mut()
            .expect("a sample starts with a page")
            .marks
            .push(Mark { owner, ink });
    }

    fn bookmark(&mut self, title: &str, level: usize, y: f32) {
        let page = self.0.pages.len() - 1;
        self.0.outline.push(Bookmark {
            title: title.to_owned(),
            level,
            page,
            y,
        });
    }

    fn list(&mut self) {
        let list = self.node(StructureRole::List, ROOT);
        for (text, index) in ["Compacted base, 4\u{a0}in", "Control joints at 10 ft"]
            .into_iter()
            .zip(0u8..)
        {
            let y = 160.0 + 16.0 * f32::from(index);
            let item = self.node(StructureRole::ListItem, list);
            let label = self.node(StructureRole::Label, item);
            self.words(label, Face::Regular, 10.0, (80.0, y), "\u{2022}");
            let body = self.node(StructureRole::ListBody, item);
            self.words(body, Face::Regular, 10.0, (94.0, y), text);
        }
    }

    fn figure(&mut self) {
        let figure = self.node(StructureRole::Figure, ROOT);
        self.0.structure[figure.0].alternative =
            Some("Plan of the slab: 20 ft by 12\u{2032}-6\u{2033}.".to_owned());
        self.0.structure[figure.0].bounds = Some((0, [100.0, 220.0, 400.0, 420.0]));
        let outline = || {
            vec![
                ring((120.0, 240.0), (360.0, 400.0)),
                ring((200.0, 280.0), (260.0, 340.0)),
            ]
        };
        let stroke = |width, dash: &[f32]| Some(Stroke::dashed(RUST, width, dash));
        let hatch = (0u8..30).map(|index| {
            let x = 100.0 + 10.0 * f32::from(index);
            line(&[point(x, 420.0), point(x + 60.0, 220.0)], false)
        });
        let mut hatch = Path::new(hatch.collect(), stroke(0.3, &[]), None);
        hatch.within = outline();
        let bent = [
            point(180.0, 230.0),
            point(300.0, 410.0),
            point(380.0, 330.0),
        ];
        let bent = vec![curve(point(110.0, 300.0), &[bent], false)];
        let inks = [
            Ink::Path(Path::new(outline(), None, Some(Rgb(244, 236, 226)))),
            Ink::Path(hatch),
            Ink::Path(Path::new(outline(), stroke(1.2, &[]), None)),
            Ink::Path(Path::new(bent, stroke(0.8, &[6.0, 3.0]), None)),
            Ink::Path(Path::new(
                vec![ring((370.0, 230.0), (390.0, 250.0))],
                stroke(0.5, &[]),
                Some(Rgb::WHITE),
            )),
            upward((112.0, 360.0), "12\u{2032}-6\u{2033}"),
        ];
        for ink in inks {
            self.mark(Owner::Node(figure), ink);
        }
    }

    /// A head, a first row here, and the rest on the next page below a repeated head.
    fn table(&mut self) {
        let table = self.node(StructureRole::Table, ROOT);
        let head = self.node(StructureRole::TableHead, table);
        let row = self.node(StructureRole::TableRow, head);
        for (column, text) in ["Line", "Amount"].into_iter().enumerate() {
            let cell = self.node(StructureRole::HeaderCell(Scope::Column), row);
            self.words(cell, Face::Bold, 10.0, (column_start(column), 510.0), text);
        }
        let body = self.node(StructureRole::TableBody, table);
        self.row(body, 526.0, "Slab, 4 in", "$4,210.00");
        let note = self.node(StructureRole::Paragraph, ROOT);
        self.words(
            note,
            Face::Regular,
            9.0,
            (72.0, 700.0),
            "This paragraph goes on ",
        );
        self.page();
        self.words(note, Face::Regular, 9.0, (72.0, 72.0), "over the page.");
        self.mark(Owner::Header, words(Face::Bold, 10.0, (72.0, 90.0), "Line"));
        self.row(body, 106.0, "Broom finish", "$380.00");
        let rule = [point(72.0, 112.0), point(540.0, 112.0)];
        let rule = Path::open(&rule, Stroke::solid(BLACK, 0.5));
        self.mark(Owner::Layout, Ink::Path(rule));
        self.row(body, 126.0, "Removal", "");
    }

    /// An empty amount leaves its cell without content.
    fn row(&mut self, body: NodeId, y: f32, line: &str, amount: &str) {
        let row = self.node(StructureRole::TableRow, body);
        let head = self.node(StructureRole::HeaderCell(Scope::Row), row);
        self.words(head, Face::Regular, 10.0, (column_start(0), y), line);
        let cell = self.node(StructureRole::DataCell, row);
        self.words(cell, Face::Regular, 10.0, (column_start(1), y), amount);
    }

    fn picture(&mut self) {
        let figure = self.node(StructureRole::Figure, ROOT);
        self.0.structure[figure.0].alternative = Some("Picture 1".to_owned());
        self.0.structure[figure.0].bounds = Some((1, [72.0, 200.0, 172.0, 260.0]));
        let picture = Picture {
            at: point(72.0, 200.0),
            size: Size::new(100.0, 60.0),
            bytes: PHOTO.into(),
        };
        self.mark(Owner::Node(figure), Ink::Picture(picture));
    }
}

fn column_start(column: usize) -> f32 {
    [72.0, 300.0][column]
}

fn ring((left, top): (f32, f32), (right, bottom): (f32, f32)) -> Line {
    line(&Frame::new(left, top, right, bottom).corners(), true)
}
