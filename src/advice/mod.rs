//! Advice: finished values held against published rules and the owner's limits.
//!
//! One question a file, read-only, each with its source. Advice never blocks a
//! quote, and never claims to be engineering or law: local codes, the supplier
//! and licensed practice decide.

mod access;
mod aggregate;
mod air;
mod barely_a_load;
mod border;
mod box_load;
mod box_place;
mod by_the_bag;
mod chair_height;
mod cheaper_order;
mod closed_day;
mod closing_error;
mod coat;
mod cold_pour;
mod colors;
mod days_kept;
mod deep_forms;
mod deposit;
mod dowel_grip;
mod dowel_size;
mod dowels_unused;
mod even_risers;
mod free_option;
mod from_house;
mod groove;
mod handrail;
mod hard_trowel;
mod holds;
mod index_tells;
mod isolation;
mod layout;
mod margin;
mod meets;
mod mesh_roll;
mod minimum;
mod narrow_gate;
mod narrow_slab;
mod no_joints;
mod no_zone;
mod nothing_dug;
mod one_day;
mod past_pour;
mod pinned_both_ways;
mod promised;
mod public_walk;
mod risers;
mod set_with_option;
mod sets;
mod siding;
mod site;
mod solid_steps;
mod spacing;
mod stale;
mod standing;
mod steel_room;
mod strength;
mod tax_tells;
mod thin_slab;
mod together;
mod treads;
mod two_mixes;
mod unrated;
mod vehicle;
mod visits;
mod warped;

use std::sync::Arc;

use crate::costing::{Offer, Prices, Pricing, in_mix};
use crate::geometry::Point;
use crate::input::book::{Mix, PriceBook};
use crate::input::business::Business;
use crate::input::job::{Slab, Takeoff};
use crate::reading::{At, Place, Problem};
use crate::trade::measure::SlabQuantities;
use crate::trade::order::ConcreteOrder;
use crate::values::{Day, Length, Money};

/// Everything a question may look at.
#[derive(Clone, Copy)]
struct Case<'a> {
    takeoff: &'a Takeoff,
    business: &'a Business,
    book: &'a PriceBook,
    offer: &'a Offer,
    /// For each pour, the prices of its day.
    days: &'a [Prices],
    quoted: Day,
}

impl<'a> Case<'a> {
    /// Every slab with what was measured of it.
    fn slabs(self) -> impl Iterator<Item = (&'a Slab, &'a SlabQuantities)> {
        let measured = self.offer.quoted().needs.slabs.iter();
        self.takeoff.slabs.iter().map(Arc::as_ref).zip(measured)
    }

    const fn pricing(self) -> Pricing<'a> {
        Pricing {
            book: self.book,
            business: self.business,
            days: self.days,
        }
    }

    fn mix(self, slab: &Slab) -> Option<&'a Mix> {
        self.book.rules.mixes.get(&slab.mix.value)
    }
}

/// Asks every question, in reading order; an answer is a problem shown as advice, with its place and source.
pub fn advice(takeoff: &Takeoff, at: Pricing<'_>, offer: &Offer, quoted: Day) -> Vec<Problem> {
    let Pricing {
        book,
        business,
        days,
    } = at;
    let case = Case {
        takeoff,
        business,
        book,
        offer,
        days,
        quoted,
    };
    QUESTIONS
        .iter()
        .flat_map(|question| question(case))
        .collect()
}

/// A question looks at the finished job and says what it would ask the owner to look at.
type Ask = fn(Case<'_>) -> Vec<Problem>;

const QUESTIONS: &[Ask] = &[
    closing_error::ask,
    narrow_slab::ask,
    spacing::ask,
    no_joints::ask,
    layout::ask,
    groove::ask,
    strength::ask,
    air::ask,
    hard_trowel::ask,
    border::ask,
    coat::ask,
    colors::ask,
    aggregate::ask,
    steel_room::ask,
    chair_height::ask,
    thin_slab::ask,
    vehicle::ask,
    mesh_roll::ask,
    isolation::ask,
    from_house::ask,
    warped::ask,
    siding::ask,
    meets::ask,
    public_walk::ask,
    box_load::ask,
    box_place::ask,
    dowel_grip::ask,
    dowel_size::ask,
    dowels_unused::ask,
    pinned_both_ways::ask,
    risers::ask,
    treads::ask,
    even_risers::ask,
    solid_steps::ask,
    handrail::ask,
    deep_forms::ask,
    nothing_dug::ask,
    access::ask,
    site::ask,
    narrow_gate::ask,
    closed_day::ask,
    past_pour::ask,
    days_kept::ask,
    cold_pour::ask,
    two_mixes::ask,
    one_day::ask,
    sets::ask,
    visits::ask,
    unrated::ask,
    set_with_option::ask,
    free_option::ask,
    stale::ask,
    promised::ask,
    holds::ask,
    no_zone::ask,
    standing::ask,
    cheaper_order::ask,
    by_the_bag::ask,
    barely_a_load::ask,
    minimum::ask,
    margin::ask,
    deposit::ask,
    together::ask,
    tax_tells::ask,
    index_tells::ask,
];

/// What is asked of a mix; one that serves for another raises none of it anew.
const OF_MIXES: [Ask; 4] = [strength::ask, air::ask, hard_trowel::ask, aggregate::ask];

/// What it saves to order this mix instead, where it is as strong, has as much air and raises no question anew.
fn serves(case: Case<'_>, from: &ConcreteOrder, mix: &At<String>) -> Option<Money> {
    let known = |mix: &At<String>| case.book.rules.mixes.get(&mix.value);
    if !does_for(known(mix)?, known(&from.mix)?) {
        return None;
    }
    let quoted = case.offer.quoted();
    let (takeoff, saves) = in_mix(case.takeoff, quoted, from, mix, case.pricing())?;
    let raised = |takeoff: &Takeoff| -> usize {
        let case = Case { takeoff, ..case };
        OF_MIXES.iter().map(|ask| ask(case).len()).sum()
    };
    (raised(&takeoff) <= raised(case.takeoff)).then_some(saves)
}

fn does_for(mix: &Mix, other: &Mix) -> bool {
    other.strength.value.value <= mix.strength.value.value && other.air.value <= mix.air.value
}

/// What a limit is called where it stands, or where nobody wrote it.
fn limit(what: &str, place: Place) -> String {
    if place.is_nowhere() {
        format!("{what}, the usual one: no line says another")
    } else {
        what.to_owned()
    }
}

/// `8 ft from west and 4 ft from south`: a place in a slab, from its outermost points.
fn at_spot(slab: &Slab, at: Point) -> String {
    let (low, _) = slab.outline.bounds();
    let far = |from: i64, to: i64| Length::nanometres(to - from).to_the_eighth();
    let (east, north) = (far(low.x, at.x), far(low.y, at.y));
    format!("{east} from west and {north} from south")
}

/// Ends every help that touches safety or structure.
const DECIDES: &str = "local codes, the supplier and licensed practice decide";
