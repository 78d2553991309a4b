//! Does mesh from a roll lie where vehicles park?

use super::{Case, DECIDES};
use crate::input::job::Carries;
use crate::reading::Problem;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("ASCC Position Statement 2", "", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let rules = &case.book.rules;
    let parked = case.takeoff.slabs.iter();
    let parked = parked.filter(|slab| Carries::Cars <= slab.carries());
    let answers = parked.filter_map(|slab| {
        let mesh = slab.mesh.as_ref()?;
        let stock = rules.mesh.get(&mesh.value)?;
        (slab.bars.is_none() && rules.is_roll(stock)).then(|| {
            let message = format!(
                "vehicles park on `{}`, and its only steel is mesh from a roll",
                slab.key
            );
            Problem::new("rolled-mesh", message)
                .at(mesh.place)
                .help(format!(
                    "rolls come in W1.4 to W4 wire only, and mesh must not be laid on the ground and pulled up ({SOURCE}); sheets or bars on chairs stay where they are put ({}); {DECIDES}",
                    Source::PRACTICE
                ))
        })
    });
    answers.collect()
}
