//! Is a public walk flat enough across for wheels and canes, and steep enough for water?

use super::{Case, DECIDES};
use crate::geometry::Compass;
use crate::input::job::Slab;
use crate::input::phrases::Slope;
use crate::reading::{Place, Problem};
use crate::tables::slopes;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    slabs
        .filter(|slab| slab.around.is_public())
        .filter_map(|slab| of_slab(slab))
        .collect()
}

fn of_slab(slab: &Slab) -> Option<Problem> {
    let Some((across, place)) = across(slab) else {
        let message = format!(
            "`{}` is public, and nobody says how it falls across",
            slab.key
        );
        return Some(
            Problem::new("no-cross-fall", message)
                .at(slab.place)
                .help(format!("write `cross fall: 1/4 in per ft`; {}", limit())),
        );
    };
    if across.is_steeper_than(Slope::one_in(slopes::PUBLIC_CROSS_RUN)) {
        let message = format!("`{}` is public, and falls more than 1:48 across", slab.key);
        return Some(
            Problem::new("steep-across", message)
                .at(place)
                .help(limit()),
        );
    }
    Slope::per_foot(slopes::LEAST_IN_A_FOOT)
        .is_steeper_than(across)
        .then(|| {
            let message = format!("`{}` is public, and too flat across to drain", slab.key);
            Problem::new("flat-across", message).at(place).help(format!(
                "{} per ft or more sheds water; source: {}; {DECIDES}",
                slopes::LEAST_IN_A_FOOT,
                slopes::LEAST
            ))
        })
}

fn limit() -> String {
    format!(
        "1:48 at most, which is 1/4 in per ft or 2.083%, and not 2%; source: {}; {DECIDES}",
        slopes::PUBLIC_CROSS
    )
}

/// Its `cross fall`, else its `fall` unless that runs along it.
fn across(slab: &Slab) -> Option<(Slope, Place)> {
    if let Some(cross) = &slab.around.cross_fall {
        return Some((cross.value, cross.place));
    }
    let fall = slab.falls.first()?;
    let (low, high) = slab.outline.bounds();
    let (east_west, north_south) = (high.x - low.x, high.y - low.y);
    let along = match fall.to.side() {
        None => false,
        Some(Compass::North | Compass::South) => east_west < north_south,
        Some(Compass::East | Compass::West) => north_south < east_west,
    };
    (!along).then(|| (Slope::per_foot(fall.rise.value), fall.rise.place))
}
