//! Parser events become a tree, with a stack of the lists and maps still open.

use super::copies::Copies;
use crate::reading::place::{FileId, Place};
use crate::reading::problem::{Problem, Problems};
use crate::reading::tree::{Entry, Node, Value};
use serde_yaml::granit_parser::{Event, ScalarStyle, Span};
use std::collections::BTreeMap;

/// What stops reading, since going on could not end well; already reported.
pub(super) struct Stop;

pub(super) struct Builder<'a> {
    file: FileId,
    text: &'a str,
    problems: &'a mut Problems,
    open: Vec<Open>,
    copies: Copies,
    documents: usize,
    root: Option<Node>,
    /// Where the last scalar or opening bracket stands: errors are often about it.
    pub(super) last: Place,
}

/// A list or map whose end has not been seen.
struct Open {
    place: Place,
    heading: Place,
    anchor: usize,
    tagged: bool,
    inside: Inside,
}

enum Inside {
    List(Vec<Node>),
    Map {
        entries: Vec<Entry>,
        /// The key that still waits for its value; `None` inside: it cannot be used.
        key: Option<(Option<String>, Place)>,
        seen: BTreeMap<String, Place>,
    },
}

impl<'a> Builder<'a> {
    pub(super) fn new(file: FileId, text: &'a str, problems: &'a mut Problems) -> Self {
        let start = Place {
            file,
            start: 0,
            end: 0,
        };
        Builder {
            file,
            text,
            problems,
            open: Vec::new(),
            copies: Copies::default(),
            documents: 0,
            root: None,
            last: start,
        }
    }

    /// The tree, once every event was taken.
    pub(super) fn finish(self) -> Option<Node> {
        self.root
    }

    pub(super) fn take(&mut self, event: Event, span: &Span) -> Result<(), Stop> {
        let place = self.place(span);
        match event {
            Event::DocumentStart(..) => return self.document(place),
            Event::Scalar(text, style, anchor, tag) => {
                self.last = place;
                let node = self.scalar(&text, style, place);
                self.closed(node, anchor, tag.is_some(), span)?;
            }
            Event::SequenceStart(_, anchor, tag) => {
                let inside = Inside::List(Vec::new());
                self.opened(inside, place, anchor, tag.is_some());
                self.refuse_tag(tag.is_some(), span);
            }
            Event::MappingStart(_, anchor, tag) => {
                let inside = Inside::Map {
                    entries: Vec::new(),
                    key: None,
                    seen: BTreeMap::new(),
                };
                self.opened(inside, place, anchor, tag.is_some());
                self.refuse_tag(tag.is_some(), span);
            }
            Event::SequenceEnd | Event::MappingEnd => {
                if let Some(open) = self.open.pop() {
                    let anchor = open.anchor;
                    let node = open.close(place);
                    self.closed(node, anchor, false, span)?;
                }
            }
            Event::Alias(anchor) => {
                let copy = self
                    .copies
                    .copy(anchor, self.open.len(), place, self.problems)?;
                let node = copy.unwrap_or_else(|| unusable(place));
                self.put(node);
            }
            Event::UnresolvedAlias(name) => {
                let message =
                    format!("`*{name}` stands for a value marked `&{name}`, and there is none");
                self.problems.push(
                    Problem::new("unknown-alias", message)
                        .at(place)
                        .help("if the star is part of the text, put quotes round it"),
                );
                self.put(unusable(place));
            }
            Event::Comment(comment, _) => self.comment(&comment, place),
            _ => {}
        }
        Ok(())
    }

    fn place(&self, span: &Span) -> Place {
        let offset = |byte: Option<usize>| {
            let byte = byte.unwrap_or(0).min(self.text.len());
            u32::try_from(byte).expect("the file is smaller than the largest one read")
        };
        let start = offset(span.start.byte_offset());
        Place {
            file: self.file,
            start,
            end: offset(span.end.byte_offset()).max(start),
        }
    }

    fn document(&mut self, place: Place) -> Result<(), Stop> {
        self.documents += 1;
        if self.documents == 1 {
            return Ok(());
        }
        self.problems.push(
            Problem::new(
                "several-documents",
                "a second document starts here, and one file holds one",
            )
            .at(place)
            .help("take out the line `---`, or move what follows to a file of its own"),
        );
        Err(Stop)
    }

    fn scalar(&self, text: &str, style: ScalarStyle, place: Place) -> Node {
        let plain = style == ScalarStyle::Plain;
        let nothing =
            plain && (place.start == place.end || matches!(text, "~" | "null" | "Null" | "NULL"));
        Node {
            place,
            heading: self.heading(place),
            value: if nothing {
                Value::Nothing
            } else {
                Value::Text(text.to_owned())
            },
            reported: false,
        }
    }

    /// The key that waits for this value, else the value itself.
    fn heading(&self, place: Place) -> Place {
        match self.open.last().map(|open| &open.inside) {
            Some(Inside::Map {
                key: Some((_, key_place)),
                ..
            }) => *key_place,
            _ => place,
        }
    }

    fn opened(&mut self, inside: Inside, place: Place, anchor: usize, tagged: bool) {
        let heading = self.heading(place);
        self.last = place;
        self.open.push(Open {
            place,
            heading,
            anchor,
            tagged,
            inside,
        });
    }

    fn closed(
        &mut self,
        mut node: Node,
        anchor: usize,
        tagged: bool,
        span: &Span,
    ) -> Result<(), Stop> {
        self.refuse_tag(tagged, span);
        node.reported |= tagged;
        if anchor != 0 {
            self.copies.keep(anchor, &node, self.problems)?;
        }
        self.put(node);
        Ok(())
    }

    fn refuse_tag(&mut self, tagged: bool, span: &Span) {
        if !tagged {
            return;
        }
        let place = span
            .tag_span()
            .map_or_else(|| self.place(span), |tag| self.place(&tag));
        self.problems.push(
            Problem::new(
                "yaml-tag",
                "a word that starts with `!` has no meaning here",
            )
            .at(place)
            .help("take it out, or put quotes round the whole value"),
        );
    }

    /// Puts a finished node into the list or map that is open.
    fn put(&mut self, mut node: Node) {
        let Some(open) = self.open.last_mut() else {
            self.root = Some(node);
            return;
        };
        match &mut open.inside {
            Inside::List(items) => items.push(node),
            Inside::Map { entries, key, seen } => {
                let Some((name, key_place)) = key.take() else {
                    *key = Some((key_text(&node, self.problems), node.place));
                    return;
                };
                let Some(name) = name else { return };
                if node.is_nothing() && node.place.start == node.place.end {
                    node.place = key_place;
                }
                node.heading = key_place;
                if let Some(first) = seen.get(&name) {
                    self.problems.push(
                        Problem::new("duplicate-key", format!("`{name}` is written twice"))
                            .at(key_place)
                            .also(*first, "first written here")
                            .help("keep one of the two"),
                    );
                    return;
                }
                seen.insert(name.clone(), key_place);
                entries.push(Entry {
                    key: name,
                    key_place,
                    node,
                });
            }
        }
    }

    /// ` #` starts a comment, so `bars: #4 at 18 in` says nothing about bars.
    fn comment(&mut self, comment: &str, place: Place) {
        let Some(node) = self.open.last_mut().and_then(|open| open.inside.last()) else {
            return;
        };
        let between = self.text.get(node.place.end as usize..place.start as usize);
        let same_line = between.is_some_and(|between| !between.contains(['\n', '\r']));
        let swallowed = match node.value {
            Value::Nothing => comment.starts_with(|letter: char| !letter.is_whitespace()),
            Value::Text(_) => comment.starts_with(|letter: char| letter.is_ascii_digit()),
            Value::List(_) | Value::Map(_) => false,
        };
        if !same_line || !swallowed {
            return;
        }
        node.reported = true;
        let comment = comment.trim_end();
        let mut help = format!("put quotes round the whole value: `\"#{comment}\"`");
        if comment.starts_with(|letter: char| letter.is_ascii_digit()) {
            help = format!("write `no. {comment}`, or put quotes round the whole value");
        }
        help.push_str("; if it is a comment, put a space after the `#`");
        let message = format!("`#{comment}` is a comment to YAML, so the value ends before it");
        self.problems.push(
            Problem::new("comment-swallowed", message)
                .at(place)
                .help(help),
        );
    }
}

impl Inside {
    fn last(&mut self) -> Option<&mut Node> {
        match self {
            Inside::List(items) => items.last_mut(),
            Inside::Map { entries, key, .. } if key.is_none() => {
                entries.last_mut().map(|entry| &mut entry.node)
            }
            Inside::Map { .. } => None,
        }
    }
}

impl Open {
    fn close(self, end: Place) -> Node {
        let (value, last) = match self.inside {
            Inside::List(items) => {
                let last = items.last().map(|node| node.place);
                (Value::List(items), last)
            }
            Inside::Map { entries, .. } => {
                let last = entries
                    .last()
                    .map(|entry| entry.key_place.to(entry.node.place));
                (Value::Map(entries), last)
            }
        };
        // A bracket ends at its twin; an indented block at the end of the last thing in it.
        let bracketed = self.place.start < self.place.end;
        let last = if bracketed {
            end
        } else {
            last.unwrap_or(self.place)
        };
        Node {
            place: self.place.to(last),
            heading: self.heading,
            value,
            reported: self.tagged,
        }
    }
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

/// A key is a word or two; YAML would also take a list, or nothing.
fn key_text(node: &Node, problems: &mut Problems) -> Option<String> {
    let problem = match &node.value {
        _ if node.reported => return None,
        Value::Text(text) if text == "<<" => {
            Problem::new("yaml-merge", "`<<` does not merge keys here").help("write the keys out")
        }
        Value::Text(text) => return Some(text.clone()),
        other => {
            let message = format!("a key is a word or two, but this is {}", other.described());
            Problem::new("not-a-key", message).help("write a name before the colon")
        }
    };
    problems.push(problem.at(node.place));
    None
}
