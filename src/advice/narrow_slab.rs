//! Is a narrow slab meant to be narrow, or a long one long, or is a unit wrong?

use super::Case;
use crate::reading::Problem;
use crate::values::Length;

/// Names of things that are narrow.
const MEANT: [&str; 8] = [
    "curb", "strip", "footing", "band", "border", "edging", "gutter", "beam",
];

/// Flatwork of a house is seldom longer. Common practice, no source.
const LONGEST: Length = Length::inches_whole(150 * 12);

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
    let long = case.slabs().filter_map(|(slab, _)| {
        let (low, high) = slab.outline.bounds();
        let long = Length::nanometres((high.x - low.x).max(high.y - low.y));
        let message = format!("`{}` is `{long}` long", slab.key);
        let help =
            "is the unit right? A yard is 3 ft, a meter 3.28 ft; if it is that long, leave it";
        let problem = Problem::new("long-slab", message);
        (LONGEST < long).then(|| problem.at(slab.outline_place).help(help))
    });
    narrow.chain(long).collect()
}
