//! Lines that start in a column where they do not belong.

use super::line::YamlLine;
use super::scene::Scene;
use crate::reading::place::Place;
use crate::reading::problem::Problem;

impl Scene<'_> {
    /// A tab at the front of the line where the parser stopped, or of the next one, which
    /// it has often looked at already.
    pub(super) fn tab(&self) -> Option<Problem> {
        let (line, start) = self.sources.line(self.place);
        let next = Place {
            start: u32::try_from(start + line.len() + 1).ok()?,
            ..self.place
        };
        let lines = [(line, start), self.sources.line(next)];
        lines.into_iter().find_map(|(line, start)| {
            let indent = YamlLine::of(line).indent;
            let tab = line[..indent].find('\t')?;
            let tabs = &line[tab..indent];
            let place = self.spot(start + tab, tabs.len());
            let message = "this line starts with a tab, and only spaces can indent";
            Some(
                Problem::new("tab-indent", message)
                    .at(place)
                    .help("put two spaces in place of each tab, here and in other lines"),
            )
        })
    }

    pub(super) fn too_far_in(&self, line: &str, line_start: usize) -> Problem {
        let indent = YamlLine::of(line).indent;
        let text = line[indent..].trim_end();
        let message = "this line is indented as if it belonged to the value above it";
        Problem::new("indentation", message)
            .at(self.spot(line_start + indent, text.len()))
            .help("start it in the same column as the key above; or leave that key's own line empty after the colon")
    }

    /// A line that starts in a column where nothing above it starts.
    pub(super) fn out_of_line(&self) -> Problem {
        let (line, line_start) = self.sources.line(self.place);
        let parts = YamlLine::of(line);
        if line_start + parts.indent < self.place.start as usize && parts.dashes == 0 {
            let rest = line_start + line.trim_end().len();
            let length = rest.saturating_sub(self.place.start as usize);
            return Problem::new("after-value", "this follows a value that has ended")
                .at(self.spot(self.place.start as usize, length))
                .help("put quotes round the whole value, or start a new line");
        }
        let place = self.spot(
            line_start + parts.indent,
            line.trim_end().len().saturating_sub(parts.indent),
        );
        let (message, help) = if 0 < parts.dashes {
            (
                "a list item does not belong here",
                "indent the dash deeper than the key it belongs to, and that key has nothing after its colon",
            )
        } else {
            (
                "this line does not line up with the lines it belongs to",
                "start it in the same column as its neighbours; in a list, after a dash: `- item`",
            )
        };
        Problem::new("indentation", message).at(place).help(help)
    }
}
