//! Templates: a view's strings filled into markup, strictly.
//!
//! A misspelt name is an error with the template's name, line and column; what
//! a string holds can never become markup, since filling escapes it.
//!
//! A document is one file. `{{#*inline "name"}}` to `{{/inline}}` is a part of it that
//! `{{> name}}` puts anywhere; `shared.hbs` holds the parts of several documents.

use std::collections::BTreeMap;

use handlebars::{Context, Handlebars, RenderErrorReason};
use serde::Serialize;

/// Looked through for parts that a document includes but does not hold.
const SHARED: Text<'static> = Text {
    file: "shared.hbs",
    line: 1,
    words: include_str!("../../templates/shared.hbs"),
};

/// Why a template could not be filled; line and column count from 1 where known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TemplateError {
    pub template: String,
    pub line: Option<usize>,
    pub column: Option<usize>,
    pub reason: String,
}

impl std::fmt::Display for TemplateError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "template `{}`", self.template)?;
        if let Some(line) = self.line {
            write!(f, ", line {line}")?;
        }
        if let Some(column) = self.column {
            write!(f, ", column {column}")?;
        }
        write!(f, ": {}", self.reason)
    }
}

impl std::error::Error for TemplateError {}

/// A template that was read.
pub struct Template {
    pub file: &'static str,
    machine: Handlebars<'static>,
    /// The document from top to bottom, by names the machine knows.
    pieces: Vec<String>,
    /// File and line at which each named text begins.
    places: BTreeMap<String, (&'static str, usize)>,
}

/// A stretch of a file.
#[derive(Clone, Copy)]
struct Text<'a> {
    file: &'static str,
    /// At which it begins, from 1.
    line: usize,
    words: &'a str,
}

impl Template {
    /// Reads a document's file and the parts that it includes.
    pub fn read(file: &'static str, text: &str) -> Result<Self, TemplateError> {
        let mut machine = Handlebars::new();
        machine.set_strict_mode(true);
        machine.register_escape_fn(escape);
        let mut template = Self {
            file,
            machine,
            pieces: Vec::new(),
            places: BTreeMap::new(),
        };
        let (own, mut parts) = parts(Text {
            file,
            line: 1,
            words: text,
        });
        for (name, part) in self::parts(SHARED).1 {
            parts.entry(name).or_insert(part);
        }
        let mut open: Vec<Text> = own.into_iter().flat_map(pieces).collect();
        for piece in &open {
            let name = format!("{file} from line {}", piece.line);
            template.add(name.clone(), *piece)?;
            template.pieces.push(name);
        }
        while let Some(within) = open.pop() {
            for after in within.words.split("{{> ").skip(1) {
                let name = after.split([' ', '}']).next().unwrap_or_default();
                if let Some(part) = parts.remove(name) {
                    template.add(name.to_owned(), part)?;
                    open.push(part);
                }
            }
        }
        Ok(template)
    }

    fn add(&mut self, name: String, of: Text<'_>) -> Result<(), TemplateError> {
        let added = self.machine.register_template_string(&name, of.words);
        added.map_err(|error| {
            let (line, column) = error.pos().unzip();
            TemplateError {
                template: of.file.to_owned(),
                line: line.map(|line| of.line + line - 1),
                column,
                reason: error.reason().to_string(),
            }
        })?;
        self.places.insert(name, (of.file, of.line));
        Ok(())
    }

    /// Fills the template with a view.
    pub fn fill(&self, view: &impl Serialize) -> Result<String, TemplateError> {
        let mut filled = String::new();
        let fault = |error: handlebars::RenderError| {
            let place = error.template_name.as_ref();
            let (file, first) = place
                .and_then(|name| self.places.get(name))
                .copied()
                .unwrap_or((self.file, 1));
            TemplateError {
                template: file.to_owned(),
                line: error.line_no.map(|line| first + line - 1),
                column: error.column_no,
                reason: match error.reason() {
                    RenderErrorReason::MissingVariable(Some(name)) => {
                        format!("the view has nothing named `{name}`")
                    }
                    other => other.to_string(),
                },
            }
        };
        let context = Context::wraps(view).map_err(fault)?;
        for name in &self.pieces {
            let piece = self.machine.render_with_context(name, &context);
            filled.push_str(&piece.map_err(fault)?);
        }
        Ok(filled)
    }
}

/// What stands between the parts of a file, and the parts by name.
fn parts(whole: Text<'_>) -> (Vec<Text<'_>>, BTreeMap<&str, Text<'_>>) {
    const BEGIN: &str = "{{#*inline \"";
    const END: &str = "{{/inline}}\n";
    let (mut rest, mut own, mut parts) = (whole, Vec::new(), BTreeMap::new());
    while let Some((before, after)) = rest.words.split_once(BEGIN) {
        let Some((name, after)) = after.split_once("\"}}\n") else {
            break;
        };
        let Some((part, after)) = after.split_once(END) else {
            break;
        };
        own.push(Text {
            words: before,
            ..rest
        });
        let begins = rest.line + lines(before) + 1;
        let text = Text {
            line: begins,
            words: part,
            ..rest
        };
        parts.insert(name, text);
        rest = Text {
            line: begins + lines(part) + 1,
            words: after,
            ..rest
        };
    }
    own.push(rest);
    (own, parts)
}

/// Cuts a text at ends of lines where no block is open, since reading a text takes time that
/// grows with the square of its length.
fn pieces(whole: Text<'_>) -> Vec<Text<'_>> {
    const LONG: usize = 500;
    let (mut pieces, mut from, mut end, mut depth) = (Vec::new(), 0, 0, 0);
    let mut begins = whole.line;
    for line in whole.words.split_inclusive('\n') {
        end += line.len();
        depth += line.matches("{{#").count();
        depth = depth.saturating_sub(line.matches("{{/").count());
        let text = &whole.words[from..end];
        if end == whole.words.len() || (depth == 0 && LONG <= text.len()) {
            pieces.push(Text {
                line: begins,
                words: text,
                ..whole
            });
            (from, begins) = (end, begins + lines(text));
        }
    }
    pieces
}

fn lines(text: &str) -> usize {
    text.matches('\n').count()
}

/// XML escaping, for texts and for attributes; what XML cannot hold becomes a space.
fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            control if control.is_control() => escaped.push(' '),
            other => escaped.push(other),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn a_fault_is_told_with_its_file_and_line_wherever_it_stands() {
        #[track_caller]
        fn case(text: &str, message: &str) {
            let filled = Template::read("own.hbs", text).and_then(|own| own.fill(&json!({"a": 1})));
            assert_eq!(filled.expect_err(text).to_string(), message);
        }

        let missing = |place: &str| format!("template {place}: the view has nothing named `b`");
        case("<p>\n{{b}}</p>", &missing("`own.hbs`, line 2, column 1"));
        let long = "<p>words and more of them</p>\n".repeat(100);
        case(
            &format!("{long}{{{{#if a}}}}{long}{{{{b}}}}{{{{/if}}}}"),
            &missing("`own.hbs`, line 201, column 1"),
        );
        let part = "{{#*inline \"part\"}}\n<i>\n{{b}}\n{{/inline}}\n";
        case(
            &format!("{{{{> part}}}}\n\n{part}"),
            &missing("`own.hbs`, line 5, column 1"),
        );
        let told = Template::read("own.hbs", &format!("{long}{{{{#if a}}}}"));
        let told = told.err().expect("the block has no end").to_string();
        assert!(told.starts_with("template `own.hbs`, line 101, "), "{told}");
    }

    #[test]
    fn a_part_stands_wherever_it_is_included() {
        let text = "{{#*inline \"part\"}}\n<{{a}}>\n{{/inline}}\n{{> part}}{{> part}}{{#each c}}{{> part}}{{/each}}";
        let template = Template::read("own.hbs", text).expect("it is sound");
        let filled = template.fill(&json!({"a": "x&", "c": [{"a": "y"}]}));
        let filled: String = filled.expect("all is there").split_whitespace().collect();
        assert_eq!(filled, "<x&amp;><x&amp;><y>");
    }
}
