//! What would make a pour one that can be finished: each way is laid out and priced like the job itself.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::faults::{Fault, faults};
use crate::advice::{Case, access, barely_a_load, narrow_gate, suits};
use crate::costing::{Priced, Prices, Pricing, otherwise};
use crate::input::job::{Method, Takeoff};
use crate::reading::At;
use crate::trade::crew::PourDay;
use crate::trade::parted::parted;
use crate::values::{Amount, Day, Money, Unit, rounding};

/// One way that does it.
pub(super) struct Way {
    /// What is otherwise.
    pub words: String,
    /// Than the job as it is, before tax.
    pub more: Money,
    /// Whether it was reckoned on a simpler shape.
    pub is_about: bool,
    /// Whether slabs are cut at bulkheads.
    pub has_cuts: bool,
    /// In how many things it is otherwise.
    changes: usize,
}

/// Into at most so many pours is one parted.
pub(super) const MOST_POURS: usize = 6;

/// In at most so many things is a way otherwise: more is another job.
const MOST_CHANGES: usize = 3;

/// Degrees F below which a mix that sets more slowly is no help, and below which one that sets sooner
/// is; common practice, no source.
const MILD: Decimal = dec!(60);
const COLD: Decimal = dec!(50);

/// What may be otherwise; none where it stays as it is.
#[derive(Clone)]
struct Plan {
    mix: Option<(String, Takeoff)>,
    by: Option<Method>,
    people: Option<Decimal>,
    pours: usize,
}

impl Plan {
    fn changes(&self) -> usize {
        usize::from(self.mix.is_some())
            + usize::from(self.by.is_some())
            + usize::from(self.people.is_some())
            + usize::from(1 < self.pours)
    }

    /// Whether `other` changes all that this does, and no less of it: where this does it, that is more than it takes.
    fn is_within(&self, other: &Self) -> bool {
        let mix = self.mix.as_ref().map(|(name, _)| name);
        let others = other.mix.as_ref().map(|(name, _)| name);
        (mix.is_none() || mix == others)
            && (self.by.is_none() || self.by == other.by)
            && self.people <= other.people
            && self.pours <= other.pours
    }
}

/// A job that is otherwise in one thing or more.
struct Other<'a> {
    takeoff: Takeoff,
    words: Vec<String>,
    /// Prices of its pours, where there are more of them.
    days: Vec<Prices>,
    case: Case<'a>,
    day: &'a PourDay,
    /// What it is held against, where slabs were reckoned as simpler shapes: the job as it is, reckoned so too.
    about: Option<Takeoff>,
    has_cuts: bool,
}

/// Every way found, the cheapest first; none that costs as much as one with fewer changes.
pub(super) fn ways(case: Case<'_>, day: &PourDay) -> Vec<Way> {
    let mut done: Vec<Plan> = Vec::new();
    let mut found: Vec<Way> = Vec::new();
    for plan in plans(case, day) {
        if done.iter().any(|known| known.is_within(&plan)) {
            continue;
        }
        if let Some(way) = tried(case, day, &plan) {
            // One that takes smaller trucks too leaves room for one that does not.
            if way.changes == plan.changes() {
                done.push(plan);
            }
            found.push(way);
        }
    }
    found.sort_by_key(|way| (way.more, way.changes));
    let least: Vec<(usize, Money)> = found.iter().map(|way| (way.changes, way.more)).collect();
    found.retain(|way| {
        let is_less =
            |(changes, more): &(usize, Money)| *changes < way.changes && *more <= way.more;
        !least.iter().any(is_less)
    });
    found
}

/// All that may be tried, the fewest changes first, then the fewest pours and people.
fn plans(case: Case<'_>, day: &PourDay) -> Vec<Plan> {
    let crew = &case.offer.quoted().needs.crew;
    let own = rounding::whole_below(crew.people.value());
    let most = rounding::whole_below(case.business.pour_day.most_people.value.value);
    let people = std::iter::successors(Some(own + Decimal::ONE), |many| Some(many + Decimal::ONE));
    let people = people.take_while(|many| *many <= most);
    let people: Vec<Option<Decimal>> = std::iter::once(None).chain(people.map(Some)).collect();
    let by = Method::ALL.into_iter();
    let by = by.filter(|method| is_placed_by(case, day, *method));
    let by: Vec<Option<Method>> = std::iter::once(None).chain(by.map(Some)).collect();
    let mixes: Vec<Option<(String, Takeoff)>> = std::iter::once(None)
        .chain(in_mixes(case, day).map(Some))
        .collect();
    // Where the crew waits for the concrete, it waits in every part of it.
    let pours = if day.waits() { 1 } else { MOST_POURS };
    let mut plans: Vec<Plan> = Vec::new();
    for mix in &mixes {
        for by in &by {
            for people in &people {
                plans.extend((1..=pours).map(|pours| Plan {
                    mix: mix.clone(),
                    by: *by,
                    people: *people,
                    pours,
                }));
            }
        }
    }
    plans.retain(|plan| plan.changes() <= MOST_CHANGES);
    plans.sort_by_key(|plan| (plan.changes(), plan.pours, plan.people));
    plans
}

/// The job by this plan, if that does it; whole slabs apart rather than cut.
fn tried<'a>(case: Case<'a>, day: &'a PourDay, plan: &Plan) -> Option<Way> {
    let mut takeoff = case.takeoff.clone();
    let mut words = Vec::new();
    if let Some((name, other)) = &plan.mix {
        takeoff = other.clone();
        words.push(format!("`mix: {name}`"));
    }
    if let Some(by) = plan.by {
        takeoff = placed_by(takeoff, day.pour, by);
        words.push(format!("`by: {}`", by.name()));
    }
    if let Some(people) = plan.people {
        let said = Amount::new(people, Unit::Plain);
        takeoff.head.people = Some(At::new(said, takeoff.place));
        words.push(format!("`people: {people}`"));
    }
    let other = Other {
        takeoff,
        words,
        days: case.days.to_vec(),
        case,
        day,
        about: None,
        has_cuts: false,
    };
    if plan.pours == 1 {
        return other.with_trucks();
    }
    let mut cut = [false, true].into_iter();
    cut.find_map(|cutting| other.in_pours(plan.pours, cutting)?.with_trucks())
}

/// Whether it is expected to be cold while the pour sets.
pub(super) fn is_cold(case: Case<'_>, day: &PourDay) -> bool {
    expected(case, day) < COLD
}

fn expected(case: Case<'_>, day: &PourDay) -> Decimal {
    let said = case.takeoff.temperature_of(day.pour);
    said.unwrap_or(&case.business.pour_day.temperature)
        .value
        .value
}

/// Whether the pour can come that way.
fn is_placed_by(case: Case<'_>, day: &PourDay, method: Method) -> bool {
    let own = case.takeoff.access_of(day.pour);
    // Nobody changes to a chute that is not known to reach.
    if own.is_by(method) || (method == Method::Chute && own.distance.is_none()) {
        return false;
    }
    if method == Method::Buggy && case.book.rules.buggy.is_none() {
        return false;
    }
    let asks = |takeoff: &Takeoff| {
        let case = Case { takeoff, ..case };
        access::ask(case).len() + narrow_gate::ask(case).len()
    };
    asks(&placed_by(case.takeoff.clone(), day.pour, method)) <= asks(case.takeoff)
}

/// The job with a pour placed by another method.
fn placed_by(mut takeoff: Takeoff, pour: usize, method: Method) -> Takeoff {
    let mut way = takeoff.access_of(pour).clone();
    way.by.value = method;
    takeoff.placements[pour].access = Some(way);
    takeoff
}

/// Mixes that do for those of the pour and set at a better pace: more slowly where it is warm, sooner where it is cold.
fn in_mixes<'a>(
    case: Case<'a>,
    day: &'a PourDay,
) -> impl Iterator<Item = (String, Takeoff)> + use<'a> {
    let orders = case.offer.quoted().needs.orders.iter();
    let order = orders.filter(move |order| order.placement == day.pour);
    let expected = expected(case, day);
    order.flat_map(move |order| {
        let mixes = &case.book.rules.mixes;
        let setting = |name: &str| mixes.get(name).map(|mix| mix.setting.value.number());
        let own = setting(&order.mix.value);
        let better = mixes.keys().filter(move |name| {
            (MILD <= expected && own < setting(name)) || (expected < COLD && setting(name) < own)
        });
        better.filter_map(move |name| {
            let mix = At::new(name.clone(), order.mix.place);
            Some((name.clone(), suits(case, order, &mix)?))
        })
    })
}

impl Other<'_> {
    /// The pour in several, on the working days that follow.
    fn in_pours(&self, into: usize, cutting: bool) -> Option<Self> {
        let (case, pour) = (self.case, self.day.pour);
        let quoted = case.offer.quoted();
        let (slabs, crew) = (&quoted.needs.slabs, &quoted.needs.crew);
        let policy = &case.business.crew;
        let mut more: Vec<Day> = Vec::new();
        while more.len() + 1 < into {
            let last = more.last().copied().unwrap_or(case.days[pour].day);
            more.push(policy.on_or_after(last.plus(1)));
        }
        let apart = |takeoff: &Takeoff| {
            let by = (cutting, policy.day_count.value);
            parted(takeoff, slabs, crew, (pour, &more), by)
        };
        let found = apart(&self.takeoff).filter(|found| !cutting || found.has_cuts)?;
        let said = match (found.has_cuts, found.is_about) {
            (false, _) => format!("in {into} pours of whole slabs"),
            (true, false) => format!("in {into} pours with bulkheads between"),
            (true, true) => {
                format!("in {into} pours with bulkheads between (reckoned on rectangles as large)")
            }
        };
        let about = if found.is_about {
            Some(apart(case.takeoff)?.before)
        } else {
            None
        };
        let mut days = case.days.to_vec();
        days.extend(more.iter().map(|more| case.days[pour].on(*more)));
        let words = [said].into_iter().chain(self.words.iter().cloned());
        Some(Self {
            takeoff: found.takeoff,
            words: words.collect(),
            days,
            about,
            has_cuts: found.has_cuts,
            ..*self
        })
    }

    /// As it is, or with as much less on a truck as it takes, if that does it.
    fn with_trucks(&self) -> Option<Way> {
        let priced = self.priced()?;
        let mut left = self.faults(&priced).into_iter().peekable();
        if left.peek().is_none() {
            return self.way(&priced).filter(|_| !self.words.is_empty());
        }
        if self.words.len() == MOST_CHANGES {
            return None;
        }
        let supply = self.case.book.rules.supply.as_ref()?;
        let step = supply.sold_in.value.value;
        let (mut most, mut late): (Option<Decimal>, Vec<Decimal>) = (None, Vec::new());
        for (fault, day) in left {
            if fault != Fault::Truck {
                return None;
            }
            let (order, _) = day.truck.as_ref()?;
            let order = &priced.needs.orders[*order];
            let may = day.truck_may.value();
            let may = may.checked_div(order.unloading.as_ref()?.value())?;
            most = Some(most.map_or(may, |most| most.min(may)));
            late.push(order.order.value());
        }
        let most = if step.is_zero() {
            most?
        } else {
            rounding::whole_below(most? / step) * step
        };
        // As many trucks as it takes, all alike, rather than full ones and a last that comes for little.
        let alike = late.iter().filter_map(|order| {
            let trucks = rounding::round_up_to(order.checked_div(most)?, Decimal::ONE);
            Some(rounding::round_up_to(order.checked_div(trucks)?, step))
        });
        let yards = alike.max()?.min(most);
        // No plant sends out a truck with less than a yard.
        if yards < Decimal::ONE || yards < supply.smallest.value.value {
            return None;
        }
        let mut takeoff = self.takeoff.clone();
        let said = Amount::new(yards, Unit::CubicYard);
        takeoff.head.truck = Some(At::new(said, takeoff.place));
        let other = self.changed(takeoff, format!("`truck: {said}`"));
        let priced = other.priced()?;
        let is_left = other.faults(&priced).is_empty();
        is_left.then(|| other.way(&priced))?
    }

    /// The same, changed in one thing more.
    fn changed(&self, takeoff: Takeoff, words: String) -> Self {
        let mut all = self.words.clone();
        all.push(words);
        Self {
            takeoff,
            words: all,
            days: self.days.clone(),
            about: self.about.clone(),
            ..*self
        }
    }

    fn priced(&self) -> Option<Priced> {
        let at = Pricing {
            days: &self.days,
            ..self.case.pricing()
        };
        otherwise(&self.takeoff, at)
    }

    /// What is still wrong with the pour, or with those it was parted into.
    fn faults(&self, priced: &Priced) -> Vec<(Fault, PourDay)> {
        let old = self.case.takeoff.placements.len();
        let pours = priced.needs.crew.pours.iter();
        let of_it = pours.filter(|day| day.pour == self.day.pour || old <= day.pour);
        let found = of_it.flat_map(|day| {
            let found = faults(&self.takeoff, self.case.business, day).into_iter();
            found.map(move |fault| (fault, day.clone()))
        });
        found.collect()
    }

    /// What it costs; none where a truck comes for very little that none came for before.
    fn way(&self, priced: &Priced) -> Option<Way> {
        let quoted = self.case.offer.quoted();
        let supply = self.case.book.rules.supply.as_ref();
        let little = |priced: &Priced| {
            let orders = priced.needs.orders.iter();
            let little = orders.filter_map(|order| barely_a_load::beyond(supply?, order));
            little.count()
        };
        if little(quoted) < little(priced) {
            return None;
        }
        let before = match &self.about {
            Some(before) => otherwise(before, self.case.pricing())?.totals().price,
            None => quoted.totals().price,
        };
        Some(Way {
            words: self.words.join(" and "),
            more: priced.totals().price - before,
            is_about: self.about.is_some(),
            has_cuts: self.has_cuts,
            changes: self.words.len(),
        })
    }
}
