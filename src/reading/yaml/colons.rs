//! Slips with colons and brackets: one too many, one without its space, none at all.

use super::line::{YamlLine, with_space_after_colon};
use super::quotes;
use super::scene::Scene;
use crate::reading::place::Place;
use crate::reading::problem::Problem;

impl Scene<'_> {
    /// A colon where there was one already, or which has no key before it.
    pub(super) fn second_colon(&self) -> Problem {
        let (line, line_start) = self.sources.line(self.place);
        let value = self.sources.slice(self.last);
        if let Some((first, _)) = value.split_once(['\n', '\r'])
            && line_start < self.last.end as usize
        {
            let place = self.spot(self.last.start as usize, first.trim_end().len());
            return match with_space_after_colon(first) {
                Some(meant) => colon_without_space(place, &meant),
                None => self
                    .too_far_in(line, line_start)
                    .also(place, "the value above"),
            };
        }
        let parts = YamlLine::of(line);
        let Some((key, value)) = parts.key_and_value() else {
            return Problem::new("colon-in-value", "a colon stands where none can be read")
                .at(self.place)
                .help("write each key on its own line; put quotes round a text with `: ` in it");
        };
        let at = line_start + parts.indent + parts.dashes + parts.rest.len() - value.len();
        colon_in_value(self.spot(at, value.len()), &format!("{key}: "), value)
    }

    /// A line with no colon that ends a key.
    pub(super) fn no_key(&self) -> Problem {
        let (line, line_start) = self.sources.line(self.place);
        let parts = YamlLine::of(line);
        let at = line_start + parts.indent + parts.dashes;
        let place = self.spot(at, parts.rest.len());
        if let Some(meant) = with_space_after_colon(parts.rest) {
            return colon_without_space(place, &meant);
        }
        Problem::new("no-key", "this line has no key")
            .at(place)
            .help("a line is a key, a colon, a space and a value: `finish: broom`; a longer text continues on lines indented deeper than its key")
    }

    pub(super) fn bracket_problem(&self) -> Problem {
        let place = self.bracket.unwrap_or(self.place);
        let bracket = self.sources.slice(place);
        let (message, help) = match bracket {
            "[" => (
                "this `[` has no `]` where it should",
                "close it with `]`; commas go between the items",
            ),
            "{" => (
                "this `{` has no `}` where it should",
                "close it with `}`; commas go between the keys",
            ),
            _ => (
                "a bracket here has no partner",
                "write `[` with `]`, and `{` with `}`",
            ),
        };
        let help =
            format!("{help}; or, if the bracket is part of the text, put quotes round the value");
        let line = |place| self.sources.line_and_column(place).0;
        let problem = Problem::new("bracket", message).at(place).help(help);
        if place.start == self.place.start || line(place) != line(self.place) {
            return problem;
        }
        let here = self
            .sources
            .text(self.place.file)
            .get(self.place.start as usize..);
        if here.is_some_and(|here| here.starts_with(':')) && self.last.end <= self.place.start {
            return self.colon_in_brackets();
        }
        problem.also(self.place, "cannot be read from here on")
    }

    /// `{address: 12 Quarry Rd: rear}`
    fn colon_in_brackets(&self) -> Problem {
        let (line, line_start) = self.sources.line(self.place);
        let from = (self.last.start as usize).max(line_start);
        let value = line.get(from - line_start..).unwrap_or_default();
        let value = value
            .split([',', '}', ']'])
            .next()
            .unwrap_or_default()
            .trim_end();
        colon_in_value(self.spot(from, value.len()), "", value)
    }
}

fn colon_in_value(place: Place, key: &str, value: &str) -> Problem {
    Problem::new("colon-in-value", "a value with `: ` in it needs quotes")
        .at(place)
        .help(quotes::quoted(key, value))
}

fn colon_without_space(place: Place, meant: &str) -> Problem {
    Problem::new("colon-without-space", "a colon after a key needs a space")
        .at(place)
        .help(format!("write `{meant}`"))
}
