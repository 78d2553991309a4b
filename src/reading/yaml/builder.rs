//! Parser events become a tree, with a stack of the lists and maps still open.

use super::copies::{Copies, Halt};
use super::mend::Mended;
use super::open::{Inside, Open};
use super::scene::Scene;
use super::swallowed;
use crate::reading::place::{FileId, Place, Sources};
use crate::reading::problem::{Problem, Problems};
use crate::reading::tree::{Node, Value};
use serde_yaml::granit_parser::{Event, ScalarStyle, ScanError, Span};

pub(super) struct Builder<'a> {
    file: FileId,
    source: &'a Mended<'a>,
    problems: &'a mut Problems,
    open: Vec<Open>,
    copies: Copies,
    documents: usize,
    root: Option<Node>,
    /// The last scalar: errors are often about it.
    last: Place,
    /// The last comment, since one after a dash arrives before the empty item.
    last_comment: Option<(String, Place)>,
}

impl<'a> Builder<'a> {
    pub(super) fn new(file: FileId, source: &'a Mended<'a>, problems: &'a mut Problems) -> Self {
        Builder {
            file,
            source,
            problems,
            open: Vec::new(),
            copies: Copies::default(),
            documents: 0,
            root: None,
            last: super::start(file),
            last_comment: None,
        }
    }

    /// The tree, once every event was taken.
    pub(super) fn finish(self) -> Option<Node> {
        self.root
    }

    pub(super) fn take(&mut self, event: Event, span: &Span) -> Result<(), Halt> {
        let place = self.place(span);
        match event {
            Event::DocumentStart(..) => return self.document(place),
            Event::Scalar(text, style, anchor, tag) => {
                self.last = place;
                let mut node = self.scalar(&text, style, place);
                node.reported |= tag.is_some();
                self.refuse_tag(tag.is_some(), span);
                if let Some((comment, comment_place)) = self.last_comment.take()
                    && comment_place.end == place.start
                    && let Some(problem) =
                        swallowed::by_comment(&node.value, &comment, comment_place)
                {
                    node.reported = true;
                    self.problems.push(problem);
                }
                self.keep(&node, anchor)?;
                self.put(node);
            }
            Event::SequenceStart(_, anchor, tag) => {
                self.open(Inside::list(), place, anchor, tag.is_some());
                self.refuse_tag(tag.is_some(), span);
            }
            Event::MappingStart(_, anchor, tag) => {
                self.open(Inside::map(), place, anchor, tag.is_some());
                self.refuse_tag(tag.is_some(), span);
            }
            Event::SequenceEnd | Event::MappingEnd => {
                if let Some(open) = self.open.pop() {
                    let anchor = open.anchor;
                    let node = open.close(place);
                    self.keep(&node, anchor)?;
                    self.put(node);
                }
            }
            Event::Alias(anchor) => {
                let depth = self.open.len();
                let copy = self.copies.copy(anchor, depth, place, self.problems)?;
                self.put(copy.unwrap_or_else(|| unusable(place)));
            }
            Event::UnresolvedAlias(name) => self.unresolved(&name, place),
            Event::Comment(comment, _) => self.comment(&comment, place),
            _ => {}
        }
        Ok(())
    }

    /// What the parser had read when it stopped.
    pub(super) fn scene<'s>(&self, error: &ScanError, sources: &'s Sources) -> Scene<'s> {
        let mut brackets = self.open.iter().rev().filter(|open| open.is_bracket());
        Scene {
            sources,
            place: self.place(&Span::empty(*error.marker())),
            last: self.last,
            tabs_mended: self.source.tabs,
            bracket: brackets.next().map(|open| open.place),
        }
    }

    fn place(&self, span: &Span) -> Place {
        let offset = |byte: Option<usize>| {
            let byte = byte.unwrap_or(0).min(self.source.text.len());
            u32::try_from(byte).expect("the file is smaller than the largest one read")
        };
        let start = offset(span.start.byte_offset());
        Place {
            file: self.file,
            start,
            end: offset(span.end.byte_offset()).max(start),
        }
    }

    fn document(&mut self, place: Place) -> Result<(), Halt> {
        self.documents += 1;
        if self.documents == 1 {
            return Ok(());
        }
        let message = "a second document starts here, and one file holds one";
        self.problems.push(
            Problem::new("several-documents", message)
                .at(place)
                .help("take out the line `---`, or move what follows to a file of its own"),
        );
        Err(Halt)
    }

    fn scalar(&self, text: &str, style: ScalarStyle, place: Place) -> Node {
        // Nothing after a key arrives as a `~`, too.
        let plain = style == ScalarStyle::Plain;
        let nothing = plain && matches!(text, "~" | "null" | "Null" | "NULL");
        let heading = self.heading(place);
        Node {
            place,
            heading,
            value: if nothing {
                Value::Nothing
            } else {
                Value::Text(text.to_owned())
            },
            reported: nothing && self.source.is_mended(heading.start as usize),
        }
    }

    /// The key that waits for this value, else the value itself.
    fn heading(&self, place: Place) -> Place {
        let key = self.open.last().and_then(Open::waiting_key);
        key.unwrap_or(place)
    }

    fn open(&mut self, inside: Inside, place: Place, anchor: usize, tagged: bool) {
        let heading = self.heading(place);
        self.open.push(Open {
            place,
            heading,
            anchor,
            tagged,
            inside,
        });
    }

    fn keep(&mut self, node: &Node, anchor: usize) -> Result<(), Halt> {
        if anchor == 0 {
            return Ok(());
        }
        self.copies.keep(anchor, node, self.problems)
    }

    fn put(&mut self, mut node: Node) {
        let Some(open) = self.open.last_mut() else {
            self.root = Some(node);
            return;
        };
        if open.is_bracket()
            && node.is_nothing()
            && !node.reported
            && let Some(key) = open.waiting_key()
            && let Some(problem) = swallowed::by_comma(key, &self.source.text)
        {
            self.problems.push(problem);
            node.reported = true;
        }
        open.put(node, self.problems);
    }

    fn refuse_tag(&mut self, tagged: bool, span: &Span) {
        if !tagged {
            return;
        }
        let place = self.place(&span.tag_span().unwrap_or(*span));
        self.problems.push(
            Problem::new(
                "yaml-tag",
                "a word that starts with `!` has no meaning here",
            )
            .at(place)
            .help("take it out, or put quotes round the whole value"),
        );
    }

    fn unresolved(&mut self, name: &str, place: Place) {
        let message = format!("`*{name}` stands for a value marked `&{name}`, and there is none");
        self.problems.push(
            Problem::new("unknown-alias", message)
                .at(place)
                .help("if the star is part of the text, put quotes round it"),
        );
        self.put(unusable(place));
    }

    fn comment(&mut self, comment: &str, place: Place) {
        self.last_comment = Some((comment.to_owned(), place));
        if let Some(node) = self.open.last_mut().and_then(Open::last_value)
            && same_line(&self.source.text, node.place, place)
            && let Some(problem) = swallowed::by_comment(&node.value, comment, place)
        {
            node.reported = true;
            self.problems.push(problem);
        }
    }
}

fn same_line(text: &str, first: Place, second: Place) -> bool {
    let between = text.get(first.end as usize..second.start as usize);
    between.is_some_and(|between| !between.contains(['\n', '\r']))
}

/// Stands where a value could not be made out.
fn unusable(place: Place) -> Node {
    Node {
        place,
        heading: place,
        value: Value::Nothing,
        reported: true,
    }
}
