//! Advice: finished values held against published rules and the owner's limits.
//!
//! One question a file, read-only, each with its source. Advice never blocks a
//! quote, and never claims to be engineering or law: local codes, the supplier
//! and licensed practice decide.

mod access;
mod aggregate;
mod air;
mod barely_a_load;
mod beside_nothing;
mod border;
mod box_load;
mod box_place;
mod by_the_bag;
mod chair_height;
mod cheaper_order;
mod closed_day;
mod closing_error;
mod coat;
mod cold_seal;
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
mod frost_depth;
mod gather;
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
mod pool;
mod pour_day;
mod promise;
mod promised;
mod public_walk;
mod ramp;
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
mod weather;

use std::sync::Arc;

use crate::costing::{Offer, Prices, Pricing, in_mix, saving};
use crate::geometry::Point;
use crate::input::book::{Mix, PriceBook};
use crate::input::business::Business;
use crate::input::job::{Exposure, Slab, Takeoff};
use crate::reading::{At, Place, Problem};
use crate::trade::curing::season;
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

    /// As it is said, or as the normals of the months have it.
    fn exposure(self) -> Exposure {
        season::exposure(self.takeoff, &self.business.cure)
    }

    /// Whether frost reaches the slab.
    fn freezes(self, slab: &Slab) -> bool {
        self.exposure() != Exposure::Mild && !slab.is_inside()
    }

    /// The job as quoted, then with each choice and the words that name what is chosen, few options first.
    fn jobs(self) -> Vec<(String, &'a Takeoff)> {
        let options = &self.takeoff.options;
        let quoted = self.offer.as_quoted.taken(options);
        let is_quoted = |place| quoted.iter().any(|option| option.name.place == place);
        let others = self.takeoff.otherwise.iter().map(|(choice, job)| {
            let mut taken = choice.taken(options);
            taken.retain(|option| !is_quoted(option.name.place));
            (taken, job)
        });
        let mut others: Vec<_> = others.filter(|(taken, _)| !taken.is_empty()).collect();
        others.sort_by_key(|(taken, _)| taken.len());
        let others = others.into_iter().map(|(taken, job)| {
            let names = listed(taken.iter().map(|option| option.name.value.as_str()));
            (format!("with {names}: "), job)
        });
        let quoted = std::iter::once((String::new(), self.takeoff));
        quoted.chain(others).collect()
    }

    /// Asks the same of every choice; what is said of a place is not said again of another choice.
    fn of_each(self, ask: impl Fn(&'a Takeoff) -> Vec<Problem>) -> Vec<Problem> {
        let mut answers: Vec<Problem> = Vec::new();
        for (with, job) in self.jobs() {
            let before = answers.clone();
            let is_new = |one: &Problem| {
                let mut known = before.iter();
                !known.any(|known| known.place == one.place && known.code == one.code)
            };
            let found = ask(job).into_iter().filter(is_new).map(|mut one| {
                one.message = format!("{with}{}", one.message);
                one
            });
            answers.extend(found);
        }
        answers
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
    let asked = QUESTIONS.iter().flat_map(|question| question(case));
    gather::gather(takeoff, asked.collect())
}

/// `` `walk`, `drive` and `pad` ``.
fn listed<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let names: Vec<String> = names.map(|name| format!("`{name}`")).collect();
    match &names[..] {
        [most @ .., last] if !most.is_empty() => format!("{} and {last}", most.join(", ")),
        few => few.concat(),
    }
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
    promise::ask,
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
    ramp::ask,
    box_load::ask,
    box_place::ask,
    dowel_grip::ask,
    dowel_size::ask,
    dowels_unused::ask,
    beside_nothing::ask,
    pinned_both_ways::ask,
    risers::ask,
    treads::ask,
    even_risers::ask,
    handrail::ask,
    solid_steps::ask,
    frost_depth::ask,
    pool::ask,
    deep_forms::ask,
    nothing_dug::ask,
    access::ask,
    site::ask,
    narrow_gate::ask,
    pour_day::ask,
    closed_day::ask,
    past_pour::ask,
    days_kept::ask,
    weather::ask,
    cold_seal::ask,
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

/// The job with this mix instead, where it is as strong, has as much air and raises no question anew.
fn suits(case: Case<'_>, from: &ConcreteOrder, mix: &At<String>) -> Option<Takeoff> {
    let known = |mix: &At<String>| case.book.rules.mixes.get(&mix.value);
    if !does_for(known(mix)?, known(&from.mix)?) {
        return None;
    }
    let takeoff = in_mix(case.takeoff, from, mix);
    let raised = |takeoff: &Takeoff| -> usize {
        let case = Case { takeoff, ..case };
        OF_MIXES.iter().map(|ask| ask(case).len()).sum()
    };
    (raised(&takeoff) <= raised(case.takeoff)).then_some(takeoff)
}

/// What it saves to order this mix instead, where it suits.
fn serves(case: Case<'_>, from: &ConcreteOrder, mix: &At<String>) -> Option<Money> {
    let takeoff = suits(case, from, mix)?;
    let (_, saves) = saving(&takeoff, case.offer.quoted(), case.pricing())?;
    Some(saves)
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
