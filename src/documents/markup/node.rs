//! An XML element with the few questions that the reader asks of it.

use super::error::{MarkupError, Wrong};
use roxmltree::Node;

#[derive(Clone, Copy)]
pub(super) struct Element<'a>(Node<'a, 'a>);

impl<'a> Element<'a> {
    pub fn new(node: Node<'a, 'a>) -> Self {
        Self(node)
    }

    pub fn name(self) -> &'a str {
        self.0.tag_name().name()
    }

    pub fn error(self, wrong: Wrong) -> MarkupError {
        error_at(self.0, wrong)
    }

    /// This element has no meaning where it stands.
    pub fn unknown(self) -> MarkupError {
        let inside = self.0.parent_element();
        self.error(Wrong::UnknownElement {
            name: self.name().to_owned(),
            inside: inside.map_or_else(String::new, |parent| parent.tag_name().name().to_owned()),
        })
    }

    pub fn expect(self, name: &str) -> Result<(), MarkupError> {
        if self.name() == name {
            Ok(())
        } else {
            Err(self.unknown())
        }
    }

    /// Refuses every attribute that is not named here.
    pub fn allow(self, names: &[&str]) -> Result<(), MarkupError> {
        for attribute in self.0.attributes() {
            if !names.contains(&attribute.name()) {
                return Err(self.error(Wrong::UnknownAttribute {
                    name: attribute.name().to_owned(),
                    element: self.name().to_owned(),
                }));
            }
        }
        Ok(())
    }

    pub fn attribute(self, name: &str) -> Option<&'a str> {
        self.0.attribute(name)
    }

    pub fn required(self, name: &str) -> Result<&'a str, MarkupError> {
        self.attribute(name).ok_or_else(|| {
            self.error(Wrong::MissingAttribute {
                name: name.to_owned(),
                element: self.name().to_owned(),
            })
        })
    }

    /// One of a few words, each with its meaning.
    pub fn choice<T: Copy>(
        self,
        name: &str,
        choices: &[(&str, T)],
        otherwise: T,
    ) -> Result<T, MarkupError> {
        let Some(value) = self.attribute(name) else {
            return Ok(otherwise);
        };
        let found = choices.iter().find(|(word, _)| *word == value);
        found.map(|(_, meaning)| *meaning).ok_or_else(|| {
            let words: Vec<String> = choices
                .iter()
                .map(|(word, _)| format!("`{word}`"))
                .collect();
            self.bad(name, value, &words.join(" or "))
        })
    }

    /// A whole number no higher than `most`.
    pub fn number(self, name: &str, most: u16, otherwise: u16) -> Result<u16, MarkupError> {
        let Some(value) = self.attribute(name) else {
            return Ok(otherwise);
        };
        value
            .parse()
            .ok()
            .filter(|number| *number <= most)
            .ok_or_else(|| self.bad(name, value, &format!("a whole number up to {most}")))
    }

    /// A whole number no higher than `most`, for counts that fit a byte.
    pub fn count(self, name: &str, most: u8, otherwise: u8) -> Result<u8, MarkupError> {
        let number = self.number(name, u16::from(most), u16::from(otherwise))?;
        Ok(u8::try_from(number).unwrap_or(most))
    }

    fn bad(self, attribute: &str, value: &str, allowed: &str) -> MarkupError {
        self.error(Wrong::BadValue {
            attribute: attribute.to_owned(),
            value: value.to_owned(),
            allowed: allowed.to_owned(),
        })
    }

    /// Child elements; words between them are refused.
    pub fn children(self) -> Result<Vec<Self>, MarkupError> {
        let mut children = Vec::new();
        for node in self.0.children() {
            if node.is_element() {
                children.push(Self(node));
            } else if let Some(text) = node.text().filter(|_| node.is_text())
                && !text.trim().is_empty()
            {
                return Err(error_at(
                    node,
                    Wrong::StrayText {
                        inside: self.name().to_owned(),
                        text: text.trim().to_owned(),
                    },
                ));
            }
        }
        Ok(children)
    }

    /// Texts and elements in order; comments are left out.
    pub fn mixed(self) -> impl Iterator<Item = Mixed<'a>> {
        self.0.children().filter_map(|node| {
            if node.is_element() {
                Some(Mixed::Element(Self(node)))
            } else if node.is_text() {
                node.text().map(Mixed::Text)
            } else {
                None
            }
        })
    }

    /// The words of an element that holds nothing else.
    pub fn words(self) -> Result<String, MarkupError> {
        let mut words = String::new();
        for part in self.mixed() {
            match part {
                Mixed::Text(text) => words.push_str(text),
                Mixed::Element(element) => return Err(element.unknown()),
            }
        }
        Ok(words.trim().to_owned())
    }
}

pub(super) enum Mixed<'a> {
    Text(&'a str),
    Element(Element<'a>),
}

fn error_at(node: Node<'_, '_>, wrong: Wrong) -> MarkupError {
    let place = node.document().text_pos_at(node.range().start);
    MarkupError {
        line: place.row,
        column: place.col,
        wrong,
    }
}
