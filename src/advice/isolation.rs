//! Does a slab that usually meets a house, a curb or a walk say what it meets?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::joints::ISOLATION;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("NRMCA CIP 6", "", Read::Primary);
/// Kinds that seldom stand free on all sides; common practice, no source.
const MEETS_SOMETHING: [&str; 5] = ["patio", "driveway", "apron", "step", "slab"];

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let free = slabs.filter(|slab| {
        MEETS_SOMETHING.contains(&slab.kind.as_str())
            && slab.edges.iter().all(|part| part.kind.has_form())
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
