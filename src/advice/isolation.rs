//! Does a slab that usually meets a house, a curb or a walk say what it meets?

use super::{Case, DECIDES};
use crate::input::job::{EdgePart, Slab, has_word};
use crate::reading::Problem;
use crate::tables::joints::ISOLATION;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("NRMCA CIP 6", "", Read::Primary);
/// Kinds that seldom stand free on all sides; common practice, no source.
const MEETS_SOMETHING: [&str; 4] = ["patio", "driveway", "apron", "step"];
/// Names of what is meant to stand free; common practice, no source.
const STANDS_FREE: [&str; 3] = ["pad", "pit", "free"];

/// Of its outline and of what it lies around.
fn edges(slab: &Slab) -> impl Iterator<Item = &EdgePart> {
    let openings = slab.openings.iter().flat_map(|opening| &opening.edges);
    slab.edges.iter().chain(openings)
}

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let free = slabs.filter(|slab| {
        let names = [&slab.key, &slab.called];
        MEETS_SOMETHING.contains(&slab.kind.as_str())
            && !names.iter().any(|name| has_word(name, &STANDS_FREE))
            && edges(slab).all(|part| part.kind.has_form())
    });
    let answers = free.map(|slab| {
        let message = format!("no edge of `{}` meets a house, a curb or other concrete", slab.key);
        Problem::new("no-isolation", message)
            .at(slab.place)
            .help(format!(
                "where it does, mark the edge, for example `edges: {{north: house}}`: a strip of {ISOLATION} goes between; source: {SOURCE}; {DECIDES}"
            ))
    });
    answers.collect()
}
