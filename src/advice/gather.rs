//! The same thing about several slabs, in one line that names them.
//!
//! Answers are alike when their code is one and they say to do the same: only the name of the
//! slab, and what was measured of it, may differ. A slab is named once in a line.

use super::listed;
use crate::input::job::Takeoff;
use crate::reading::Problem;

struct Line {
    problem: Problem,
    /// Of the first slab, the place of its name taken by nothing.
    message: String,
    help: String,
    first: Option<String>,
    more: Vec<String>,
    /// Whether every other slab was told of in the very same words.
    is_same: bool,
}

pub(super) fn gather(takeoff: &Takeoff, problems: Vec<Problem>) -> Vec<Problem> {
    let mut lines: Vec<Line> = Vec::new();
    for problem in problems {
        let line = line(takeoff, problem);
        let alike = |known: &&mut Line| {
            let new = line.first.as_ref().is_some_and(|slab| {
                known.first.as_ref() != Some(slab) && !known.more.contains(slab)
            });
            let is_twice = known.problem == line.problem;
            let is_one = known.problem.code == line.problem.code && known.help == line.help;
            is_twice || new && known.first.is_some() && is_one
        };
        match lines.iter_mut().find(alike) {
            Some(known) if known.problem == line.problem => {}
            Some(known) => {
                known.is_same &= known.message == line.message;
                known.more.extend(line.first);
            }
            None => lines.push(line),
        }
    }
    lines.into_iter().map(Line::said).collect()
}

/// An answer with the first slab it names taken out of its words.
fn line(takeoff: &Takeoff, problem: Problem) -> Line {
    let named = takeoff.slabs.iter().filter_map(|slab| {
        let at = problem.message.find(&format!("`{}`", slab.key))?;
        Some((at, slab.key.clone()))
    });
    let first = named.min().map(|(_, key)| key);
    let without = |text: &str| match &first {
        Some(key) => text.replace(key, ""),
        None => text.to_owned(),
    };
    Line {
        message: without(&problem.message),
        help: without(problem.help.as_deref().unwrap_or_default()),
        problem,
        first,
        more: Vec::new(),
        is_same: true,
    }
}

impl Line {
    fn said(mut self) -> Problem {
        if !self.more.is_empty() {
            let names = listed(self.more.iter().map(String::as_str));
            let (before, after) = if self.is_same {
                ("so with", "")
            } else {
                ("look at", " for the same")
            };
            let message = &self.problem.message;
            self.problem.message = format!("{message}; {before} {names}{after}");
        }
        self.problem
    }
}
