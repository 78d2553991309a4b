//! Is a deep edge formed at the price of a low board?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let limit = &case.business.order.deep_form_over;
    if case.book.rules.rates.get("form deep").is_some() {
        return Vec::new();
    }
    let answers = case.slabs().filter_map(|(slab, _)| {
        // A step by itself has a rate that holds its form.
        let formed = slab.edges.iter().filter(|part| part.has_form() && !slab.is_step());
        let deepest = formed.map(|part| slab.edge_depth(part)).max()?;
        (limit.value < deepest).then(|| {
            let message = format!(
                "edges of `{}` are `{deepest}` deep, and formed at the rate of low boards",
                slab.key
            );
            let depth = slab.sections.thickened.as_ref().map(|edge| edge.depth.place);
            Problem::new("deep-form-rate", message)
                .at(depth.unwrap_or(slab.thickness.place))
                .also(limit.place, "your limit")
                .help("add your rate `form deep` to the price book, for example `form deep: 14 hours per 100 ft`, and an item for `deep forms` under `use`")
        })
    });
    answers.collect()
}
