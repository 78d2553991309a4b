//! Would a sealer of the job fall due while days are too cold for it?

use super::Case;
use crate::reading::Problem;
use crate::tables::Source;
use crate::trade::curing::{SEALS_FROM, is_too_cold};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    case.of_each(|job| {
        let outdoors = job.slabs.iter().filter(|slab| !slab.is_inside());
        let cold = outdoors.filter_map(|slab| {
            let seal = slab.seal.as_ref()?;
            let after = case.book.rules.sealers.get(&seal.value)?.after.value.0;
            let due = case.days.get(slab.placement)?.day.plus(i64::from(after));
            let normal = case.business.cure.normals.on(due)?;
            let message = format!(
                "`{}` may be sealed from `{due}`, and days are `{} °F` then",
                slab.key, normal.value.day
            );
            is_too_cold(due, &case.business.cure).then(|| {
                Problem::new("cold-seal", message).at(seal.place).help(format!(
                    "the quote says in spring; most sealers want {SEALS_FROM} °F and a dry surface, the label decides ({})",
                    Source::PRACTICE
                ))
            })
        });
        cold.collect()
    })
}
