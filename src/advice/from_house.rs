//! Does water run away from the house?

use super::{Case, DECIDES};
use crate::geometry::Compass;
use crate::input::job::{EdgeKind, Fall, Slab};
use crate::input::phrases::{FallTo, Slope};
use crate::reading::Problem;
use crate::tables::slopes;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // A step sheds its water onto what it stands on, and no rain falls inside.
    let slabs = case
        .takeoff
        .slabs
        .iter()
        .filter(|slab| slab.on.is_none() && slab.kind != "step" && !slab.is_inside())
        .filter(|slab| meets_house(slab, None));
    slabs.flat_map(|slab| of_slab(slab)).collect()
}

fn of_slab(slab: &Slab) -> Vec<Problem> {
    if slab.falls.is_empty() {
        let message = format!("`{}` is level, and meets a house", slab.key);
        let problem = Problem::new("flat-at-house", message).at(slab.place);
        return vec![problem.help(help())];
    }
    let to_house: Vec<Problem> = slab
        .falls
        .iter()
        .filter_map(|fall| runs_to_house(slab, fall))
        .collect();
    if to_house.is_empty() {
        too_flat(slab)
            .or_else(|| no_way(slab))
            .into_iter()
            .collect()
    } else {
        to_house
    }
}

fn help() -> String {
    format!(
        "2% or more away from the house, which 1/4 in per ft is; source: {}; {DECIDES}",
        slopes::AWAY
    )
}

fn runs_to_house(slab: &Slab, fall: &Fall) -> Option<Problem> {
    let toward = fall.to.side()?;
    let message = format!("`{}` falls {} to a house", slab.key, toward.name());
    meets_house(slab, Some(toward)).then(|| {
        Problem::new("falls-to-house", message)
            .at(fall.rise.place)
            .help(help())
    })
}

/// A fall that runs nowhere in particular runs toward the house as well.
fn no_way(slab: &Slab) -> Option<Problem> {
    let mut falls = slab.falls.iter();
    let fall = falls.find(|fall| fall.to == FallTo::Unsaid)?;
    let message = format!(
        "`{}` falls `{} per ft` and meets a house, and nothing says which way the water runs",
        slab.key, fall.rise.value
    );
    let problem = Problem::new("fall-unsaid", message).at(slab.place);
    Some(problem.help(format!(
        "name the side it runs to, away from the house, for example `fall: {} per ft south`; source: {}; {DECIDES}",
        fall.rise.value,
        slopes::AWAY
    )))
}

/// Nobody says which part lies at the house, so one that is steep enough will do.
fn too_flat(slab: &Slab) -> Option<Problem> {
    let steepest = slab.falls.iter().max_by_key(|fall| fall.rise.value)?;
    let rise = steepest.rise.value;
    let (only, place) = match slab.falls[..] {
        [_] => ("only", steepest.rise.place),
        _ => ("nowhere more than", slab.place),
    };
    let message = format!(
        "`{}` meets a house and falls {only} `{rise} per ft`",
        slab.key
    );
    Slope::percent(slopes::AWAY_FROM_HOUSE)
        .is_steeper_than(Slope::per_foot(rise))
        .then(|| {
            Problem::new("flat-at-house", message)
                .at(place)
                .help(help())
        })
}

/// Whether a side that looks this way, or any, stands against a house.
fn meets_house(slab: &Slab, toward: Option<Compass>) -> bool {
    let mut walls = slab
        .edges
        .iter()
        .filter(|part| part.kind == EdgeKind::House)
        .map(|part| slab.outline.sides()[part.side].facing());
    match toward {
        None => walls.next().is_some(),
        toward => walls.any(|facing| facing == toward),
    }
}
