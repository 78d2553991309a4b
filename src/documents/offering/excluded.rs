//! What a job makes a question of, and this price has no answer to: told as not included.

use super::{Offering, season};
use crate::input::job::{EdgeKind, Slab};
use crate::tables::steps::RAIL_FROM;

/// Whether a slab raises it, the word by which the owner's own words are known, and what is told else.
type Question = (fn(&Slab) -> bool, &'static str, &'static str);

/// The owner's own words about the same take its place.
const QUESTIONS: &[Question] = &[
    (has_flight, "rail", "Handrails"),
    (meets_old, "match", "Matching the look of the old concrete"),
    (is_public, "test", "Tests of the concrete"),
    (is_public, "detour", "A detour for people who walk by"),
    (meets_street, "asphalt", "Patching asphalt along the street"),
    (
        Slab::carries_building,
        "water",
        "Pumping water out of the ground",
    ),
    (
        Slab::is_at_pool,
        "bond",
        "Bonding of steel at the pool, an electrician’s work",
    ),
];

pub(super) fn questions(of: Offering<'_>) -> Vec<String> {
    let slabs = &of.takeoff.slabs;
    let own = of.business.not_included.iter();
    let own = own.chain(&of.takeoff.head.not_included);
    let own: Vec<String> = own.map(|line| line.to_lowercase()).collect();
    let is_said = |word: &str| own.iter().any(|line| line.contains(word));
    let asked = QUESTIONS
        .iter()
        .filter(|(raises, word, _)| slabs.iter().any(|slab| raises(slab)) && !is_said(word));
    let mut lines: Vec<String> = asked.map(|(.., line)| (*line).to_owned()).collect();
    if goes_above_frost(of) && !is_said("foot") {
        lines.push("Footings below frost".to_owned());
    }
    if season::frost(of) == season::Frost::NotIncluded && !is_said("frost") {
        lines.push("Blankets, and what else keeps frost off fresh concrete".to_owned());
    }
    if season::may_be_frozen(of) && !is_said("thaw") {
        lines.push("Thawing frozen ground".to_owned());
    }
    lines
}

fn has_flight(slab: &Slab) -> bool {
    let steps = slab.sections.steps.as_ref();
    steps.is_some_and(|steps| RAIL_FROM <= steps.risers.value)
}

fn meets_old(slab: &Slab) -> bool {
    let old = [
        EdgeKind::Existing,
        EdgeKind::DoweledExisting,
        EdgeKind::TiedExisting,
    ];
    slab.edges.iter().any(|part| old.contains(&part.kind))
}

fn is_public(slab: &Slab) -> bool {
    slab.around.is_public()
}

fn meets_street(slab: &Slab) -> bool {
    slab.kind == "apron" || slab.edges.iter().any(|part| part.kind == EdgeKind::Curb)
}

/// Something of a building or beside a house rests less deep than the ground freezes, or nobody knows.
fn goes_above_frost(of: Offering<'_>) -> bool {
    let frost = of.business.frost_depth.as_ref();
    let freezes = frost.is_some() || season::freezes(of);
    let is_above = |slab: &Slab| {
        let edge = slab.sections.thickened.as_ref();
        let below = edge
            .zip(frost)
            .is_some_and(|(edge, frost)| frost.value <= edge.depth.value);
        slab.is_stoop_at_house() || slab.carries_building() && !below
    };
    freezes && of.takeoff.slabs.iter().any(|slab| is_above(slab))
}
