//! Templates: a view's strings filled into markup, strictly.
//!
//! A misspelt name is an error with the template's name, line and column; what
//! a string holds can never become markup, since filling escapes it.

use handlebars::{Handlebars, RenderErrorReason};
use serde::Serialize;

/// The templates built into the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Template {
    Quote,
}

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

impl Template {
    pub fn name(self) -> &'static str {
        match self {
            Self::Quote => "quote.hbs",
        }
    }

    /// The text built into the program.
    pub fn text(self) -> &'static str {
        match self {
            Self::Quote => include_str!("../../templates/quote.hbs"),
        }
    }

    /// Fills the template, or the owner's text in its place, with a view.
    pub fn fill(self, view: &impl Serialize, own: Option<&str>) -> Result<String, TemplateError> {
        let mut machine = Handlebars::new();
        machine.set_strict_mode(true);
        machine.register_escape_fn(escape);
        machine
            .register_template_string(self.name(), own.unwrap_or(self.text()))
            .map_err(|error| {
                let (line, column) = error.pos().unzip();
                TemplateError {
                    template: self.name().to_owned(),
                    line,
                    column,
                    reason: error.reason().to_string(),
                }
            })?;
        machine
            .render(self.name(), view)
            .map_err(|error| TemplateError {
                template: self.name().to_owned(),
                line: error.line_no,
                column: error.column_no,
                reason: reason(error.reason()),
            })
    }
}

fn reason(reason: &RenderErrorReason) -> String {
    match reason {
        RenderErrorReason::MissingVariable(Some(name)) => {
            format!("the view has nothing named `{name}`")
        }
        other => other.to_string(),
    }
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
