//! Is there steel where vehicles park?

use super::{Case, DECIDES};
use crate::input::job::Carries;
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::Length;

const WIDEST: Length = Length::feet_whole(2);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let parked = case.takeoff.slabs.iter();
    let parked = parked.filter(|slab| Carries::Cars <= slab.carries());
    let answers = parked.filter_map(|slab| {
        let (message, place) = match &slab.bars {
            None if slab.mesh.is_none() => (
                format!(
                    "vehicles park on `{}`, and it has no bars or mesh",
                    slab.key
                ),
                slab.place,
            ),
            Some(bars) => {
                let widest = bars.layers().max_by_key(|layer| layer.spacing.value)?;
                let spacing = &widest.spacing;
                if WIDEST < spacing.value {
                    let message = format!(
                        "vehicles park on `{}`, and its bars are `{}` apart",
                        slab.key, spacing.value
                    );
                    (message, spacing.place)
                } else if bars.layers().count() == 1 && slab.mesh.is_none() {
                    let message = format!(
                        "vehicles park on `{}`, and its bars run one way only",
                        slab.key
                    );
                    (message, spacing.place)
                } else {
                    return None;
                }
            }
            None => return None,
        };
        let help = format!(
            "write bars 2 ft or less apart each way ({}); {DECIDES}",
            Source::PRACTICE
        );
        Some(
            Problem::new("steel-under-vehicle", message)
                .at(place)
                .help(help),
        )
    });
    answers.collect()
}
