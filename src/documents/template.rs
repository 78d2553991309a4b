//! Templates: a view's strings filled into markup, strictly.
//!
//! A misspelt name is an error with the template's name, line and column; what
//! a string holds can never become markup, since filling escapes it.

use handlebars::{Handlebars, RenderErrorReason};
use serde::Serialize;
use std::sync::OnceLock;

/// The templates built into the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Template {
    Quote,
    Bill,
    Change,
    /// For the office only.
    Cost,
    /// For the office only.
    Reprice,
}

/// Parts by the name they are included by.
type Parts = &'static [(&'static str, &'static str)];

/// The parts of the quote.
const QUOTE_PARTS: Parts = &[
    (
        "quote/acceptance",
        include_str!("../../templates/quote/acceptance.hbs"),
    ),
    (
        "quote/cancellation",
        include_str!("../../templates/quote/cancellation.hbs"),
    ),
    (
        "quote/choices",
        include_str!("../../templates/quote/choices.hbs"),
    ),
    (
        "quote/combination-rows",
        include_str!("../../templates/quote/combination-rows.hbs"),
    ),
    (
        "quote/combinations",
        include_str!("../../templates/quote/combinations.hbs"),
    ),
    (
        "quote/counted-on",
        include_str!("../../templates/quote/counted-on.hbs"),
    ),
    ("quote/cure", include_str!("../../templates/quote/cure.hbs")),
    ("quote/deal", include_str!("../../templates/quote/deal.hbs")),
    (
        "quote/hidden",
        include_str!("../../templates/quote/hidden.hbs"),
    ),
    (
        "quote/how-we-work",
        include_str!("../../templates/quote/how-we-work.hbs"),
    ),
    (
        "quote/in-full",
        include_str!("../../templates/quote/in-full.hbs"),
    ),
    (
        "quote/letterhead",
        include_str!("../../templates/quote/letterhead.hbs"),
    ),
    (
        "quote/not-included",
        include_str!("../../templates/quote/not-included.hbs"),
    ),
    (
        "quote/not-included-first",
        include_str!("../../templates/quote/not-included-first.hbs"),
    ),
    (
        "quote/not-included-rest",
        include_str!("../../templates/quote/not-included-rest.hbs"),
    ),
    (
        "quote/payments",
        include_str!("../../templates/quote/payments.hbs"),
    ),
    (
        "quote/photos",
        include_str!("../../templates/quote/photos.hbs"),
    ),
    (
        "quote/scope-rows",
        include_str!("../../templates/quote/scope-rows.hbs"),
    ),
    (
        "quote/when-we-come",
        include_str!("../../templates/quote/when-we-come.hbs"),
    ),
    (
        "quote/without-grid",
        include_str!("../../templates/quote/without-grid.hbs"),
    ),
];

/// The parts of an invoice.
const BILL_PARTS: Parts = &[
    ("bill/head", include_str!("../../templates/bill/head.hbs")),
    (
        "bill/closing",
        include_str!("../../templates/bill/closing.hbs"),
    ),
    (
        "bill/progress",
        include_str!("../../templates/bill/progress.hbs"),
    ),
    ("bill/sums", include_str!("../../templates/bill/sums.hbs")),
    ("bill/table", include_str!("../../templates/bill/table.hbs")),
];

/// The parts of a change order; its head is that of an invoice.
const CHANGE_PARTS: Parts = &[
    (
        "change/acceptance",
        include_str!("../../templates/change/acceptance.hbs"),
    ),
    (
        "change/sums",
        include_str!("../../templates/change/sums.hbs"),
    ),
    (
        "change/work",
        include_str!("../../templates/change/work.hbs"),
    ),
];

/// The parts of the cost sheet.
const COST_PARTS: Parts = &[
    ("cost/parts", include_str!("../../templates/cost/parts.hbs")),
    ("cost/bars", include_str!("../../templates/cost/bars.hbs")),
    (
        "cost/beside",
        include_str!("../../templates/cost/beside.hbs"),
    ),
    (
        "cost/buying",
        include_str!("../../templates/cost/buying.hbs"),
    ),
    (
        "cost/choices",
        include_str!("../../templates/cost/choices.hbs"),
    ),
    ("cost/head", include_str!("../../templates/cost/head.hbs")),
    (
        "cost/hours-and-price",
        include_str!("../../templates/cost/hours-and-price.hbs"),
    ),
    ("cost/lines", include_str!("../../templates/cost/lines.hbs")),
    ("cost/rises", include_str!("../../templates/cost/rises.hbs")),
];

/// The parts of the page of re-priced quotes.
const REPRICE_PARTS: Parts = &[
    (
        "reprice/beside",
        include_str!("../../templates/reprice/beside.hbs"),
    ),
    (
        "reprice/causes",
        include_str!("../../templates/reprice/causes.hbs"),
    ),
    (
        "reprice/head",
        include_str!("../../templates/reprice/head.hbs"),
    ),
    (
        "reprice/quotes",
        include_str!("../../templates/reprice/quotes.hbs"),
    ),
];

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
            Self::Bill => "bill.hbs",
            Self::Change => "change.hbs",
            Self::Cost => "cost.hbs",
            Self::Reprice => "reprice.hbs",
        }
    }

    /// The text built into the program.
    pub fn text(self) -> &'static str {
        match self {
            Self::Quote => include_str!("../../templates/quote.hbs"),
            Self::Bill => include_str!("../../templates/bill.hbs"),
            Self::Change => include_str!("../../templates/change.hbs"),
            Self::Cost => include_str!("../../templates/cost.hbs"),
            Self::Reprice => include_str!("../../templates/reprice.hbs"),
        }
    }

    /// Fills the template, or the owner's text in its place, with a view.
    ///
    /// The owner's text may use the built-in parts as well: `{{> quote/deal}}`.
    pub fn fill(self, view: &impl Serialize, own: Option<&str>) -> Result<String, TemplateError> {
        let render = |machine: &Handlebars<'static>| {
            machine
                .render(self.name(), view)
                .map_err(|error| TemplateError {
                    template: error
                        .template_name
                        .clone()
                        .unwrap_or_else(|| self.name().to_owned()),
                    line: error.line_no,
                    column: error.column_no,
                    reason: reason(error.reason()),
                })
        };
        let Some(own) = own else {
            return render(self.machine());
        };
        let whole = [Self::Quote, Self::Bill, Self::Change, Self::Cost];
        let whole = whole.map(|one| (one.name(), one.text()));
        let mut machine = read(&[&whole, QUOTE_PARTS, BILL_PARTS, CHANGE_PARTS, COST_PARTS]);
        add(&mut machine, self.name(), own)?;
        render(&machine)
    }

    /// The built-in template and the parts it includes, read once.
    fn machine(self) -> &'static Handlebars<'static> {
        static MACHINES: [OnceLock<Handlebars<'static>>; 5] = [const { OnceLock::new() }; 5];
        MACHINES[self as usize].get_or_init(|| {
            let whole: &[_] = &[(self.name(), self.text())];
            match self {
                Self::Quote => read(&[whole, QUOTE_PARTS]),
                Self::Bill => read(&[whole, BILL_PARTS]),
                Self::Change => read(&[whole, BILL_PARTS, CHANGE_PARTS]),
                Self::Cost => read(&[whole, COST_PARTS]),
                Self::Reprice => read(&[whole, REPRICE_PARTS]),
            }
        })
    }
}

/// They are many small texts because reading one takes time that grows with
/// the square of its length.
fn read(texts: &[&[(&str, &str)]]) -> Handlebars<'static> {
    let mut machine = Handlebars::new();
    machine.set_strict_mode(true);
    machine.register_escape_fn(escape);
    for (name, text) in texts.iter().copied().flatten() {
        add(&mut machine, name, text).expect("the built-in templates are sound");
    }
    machine
}

fn add(machine: &mut Handlebars<'static>, name: &str, text: &str) -> Result<(), TemplateError> {
    machine
        .register_template_string(name, text)
        .map_err(|error| {
            let (line, column) = error.pos().unzip();
            TemplateError {
                template: name.to_owned(),
                line,
                column,
                reason: error.reason().to_string(),
            }
        })
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_document_reads_every_part_that_its_templates_include() {
        for template in [
            Template::Quote,
            Template::Bill,
            Template::Change,
            Template::Cost,
            Template::Reprice,
        ] {
            let machine = template.machine();
            let mut open = vec![(template.name(), template.text())];
            let parts = [
                QUOTE_PARTS,
                BILL_PARTS,
                CHANGE_PARTS,
                COST_PARTS,
                REPRICE_PARTS,
            ]
            .concat();
            let mut seen = 0;
            while let Some((within, text)) = open.pop() {
                for after in text.split("{{> ").skip(1) {
                    let name = after.split([' ', '}']).next().unwrap_or_default();
                    assert!(machine.has_template(name), "{within} includes {name}");
                    open.extend(parts.iter().find(|(part, _)| *part == name));
                    seen += 1;
                }
            }
            assert!(2 < seen, "{} includes parts", template.name());
        }
    }
}
