//! Is a narrow slab meant to be narrow, or are inches written for feet?

use super::Case;
use crate::reading::Problem;

/// Names of things that are narrow.
const MEANT: [&str; 8] = [
    "curb", "strip", "footing", "band", "border", "edging", "gutter", "beam",
];

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let narrow = case.slabs().filter_map(|(slab, _)| {
        let names = [&slab.key, &slab.kind, &slab.called];
        let is_meant = MEANT
            .iter()
            .any(|word| names.iter().any(|name| name.to_lowercase().contains(word)));
        if !slab.outline.is_narrow() || is_meant {
            return None;
        }
        let wide = slab.outline.narrowest();
        let message = format!("`{}` is only `{wide}` wide", slab.key);
        let help = format!(
            "did you mean feet? For a curb, a footing or a mow strip that wide say so in its name, for example `{} strip`",
            slab.key
        );
        let problem = Problem::new("narrow-slab", message);
        Some(problem.at(slab.outline_place).help(help))
    });
    narrow.collect()
}
