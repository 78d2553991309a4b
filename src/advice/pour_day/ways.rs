//! What would make a pour one that can be finished: each way is laid out and priced like the job itself.

use rust_decimal::Decimal;

use super::faults::{Fault, faults};
use crate::advice::{Case, access, narrow_gate, suits};
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
}

/// A job that is otherwise in one thing.
struct Other<'a> {
    takeoff: Takeoff,
    words: Vec<String>,
    /// Prices of its pours, where there are more of them.
    days: Vec<Prices>,
    case: Case<'a>,
    day: &'a PourDay,
    is_about: bool,
    /// What the job costs that it is held against.
    before: Money,
}

/// Into at most so many pours is one parted.
pub(super) const MOST_POURS: usize = 6;

/// Every way found, the cheapest first.
pub(super) fn ways(case: Case<'_>, day: &PourDay) -> Vec<Way> {
    let quoted = case.offer.quoted();
    let plain = |takeoff: Takeoff, words: Vec<String>| Other {
        takeoff,
        words,
        days: case.days.to_vec(),
        case,
        day,
        is_about: false,
        before: quoted.totals().price,
    };
    let as_it_is = plain(case.takeoff.clone(), Vec::new());
    let mut found: Vec<Way> = as_it_is.with_trucks().into_iter().collect();
    found.extend(as_it_is.with_people());
    for method in Method::ALL {
        if let Some(takeoff) = placed_by(case, day, method) {
            found.extend(plain(takeoff, vec![format!("`by: {}`", method.name())]).fewest());
        }
    }
    for (takeoff, words) in in_mixes(case, day) {
        found.extend(plain(takeoff, vec![words]).fewest());
    }
    for into in 2..=MOST_POURS {
        let Some((is_own_crew, way)) = in_pours(case, day, into) else {
            continue;
        };
        found.push(way);
        if is_own_crew {
            break;
        }
    }
    found.sort_by_key(|way| way.more);
    found
}

/// The pour placed by another method, where it can come that way.
fn placed_by(case: Case<'_>, day: &PourDay, method: Method) -> Option<Takeoff> {
    let own = case.takeoff.access_of(day.pour);
    // Nobody changes to a chute that is not known to reach.
    if own.is_by(method) || (method == Method::Chute && own.distance.is_none()) {
        return None;
    }
    if method == Method::Buggy && case.book.rules.buggy.is_none() {
        return None;
    }
    let mut takeoff = case.takeoff.clone();
    let mut way = own.clone();
    way.by.value = method;
    takeoff.placements[day.pour].access = Some(way);
    let asks = |takeoff: &Takeoff| {
        let case = Case { takeoff, ..case };
        access::ask(case).len() + narrow_gate::ask(case).len()
    };
    (asks(&takeoff) <= asks(case.takeoff)).then_some(takeoff)
}

/// Mixes that do for those of the pour and set more slowly.
fn in_mixes<'a>(
    case: Case<'a>,
    day: &'a PourDay,
) -> impl Iterator<Item = (Takeoff, String)> + use<'a> {
    let orders = case.offer.quoted().needs.orders.iter();
    let order = orders.filter(move |order| order.placement == day.pour);
    order.flat_map(move |order| {
        let mixes = &case.book.rules.mixes;
        let setting = |name: &str| mixes.get(name).map(|mix| mix.setting.value.number());
        let own = setting(&order.mix.value);
        let slower = mixes.keys().filter(move |name| own < setting(name));
        slower.filter_map(move |name| {
            let mix = At::new(name.clone(), order.mix.place);
            let takeoff = suits(case, order, &mix)?;
            Some((takeoff, format!("`mix: {name}`")))
        })
    })
}

/// The pour in several, by its own crew or by the fewest people; whole slabs apart where that does it.
fn in_pours(case: Case<'_>, day: &PourDay, into: usize) -> Option<(bool, Way)> {
    let quoted = case.offer.quoted();
    let (slabs, crew) = (&quoted.needs.slabs, &quoted.needs.crew);
    let policy = &case.business.crew;
    let mut more: Vec<Day> = Vec::new();
    while more.len() + 1 < into {
        let last = more.last().copied().unwrap_or(case.days[day.pour].day);
        more.push(policy.on_or_after(last.plus(1)));
    }
    for is_own_crew in [true, false] {
        for cutting in [false, true] {
            let found = parted(
                case.takeoff,
                slabs,
                crew,
                (day.pour, &more),
                (cutting, policy.day_count.value),
            );
            let Some(found) = found.filter(|found| !cutting || found.has_cuts) else {
                continue;
            };
            let words = match (found.has_cuts, found.is_about) {
                (false, _) => format!("in {into} pours of whole slabs"),
                (true, false) => format!("in {into} pours with bulkheads between"),
                (true, true) => {
                    format!(
                        "in {into} pours with bulkheads between (reckoned on rectangles as large)"
                    )
                }
            };
            let mut days = case.days.to_vec();
            days.extend(more.iter().map(|more| case.days[day.pour].on(*more)));
            let before = if found.is_about {
                otherwise(&found.before, case.pricing())?.totals().price
            } else {
                quoted.totals().price
            };
            let other = Other {
                takeoff: found.takeoff,
                words: vec![words],
                days,
                case,
                day,
                is_about: found.is_about,
                before,
            };
            let way = if is_own_crew {
                other.with_trucks()
            } else {
                other.with_people()
            };
            if let Some(way) = way {
                return Some((is_own_crew, way));
            }
        }
    }
    None
}

impl Other<'_> {
    /// By its own crew, else by the fewest people.
    fn fewest(&self) -> Option<Way> {
        self.with_trucks().or_else(|| self.with_people())
    }

    /// By the fewest people more; trucks may have to carry less too.
    fn with_people(&self) -> Option<Way> {
        let own = self.case.offer.quoted().needs.crew.people.value();
        let most = rounding::whole_below(self.case.business.pour_day.most_people.value.value);
        let mut people = rounding::whole_below(own) + Decimal::ONE;
        let with = |people: Decimal| {
            let mut takeoff = self.takeoff.clone();
            let said = Amount::new(people, Unit::Plain);
            takeoff.head.people = Some(At::new(said, takeoff.place));
            self.changed(takeoff, format!("`people: {people}`"))
                .with_trucks()
        };
        // Nothing is gained by asking for fewer where the most cannot.
        if most < people || with(most).is_none() {
            return None;
        }
        while people < most {
            if let Some(way) = with(people) {
                return Some(way);
            }
            people += Decimal::ONE;
        }
        with(most)
    }

    /// As it is, or with as much less on a truck as it takes, if that does it.
    fn with_trucks(&self) -> Option<Way> {
        let priced = self.priced()?;
        let mut left = self.faults(&priced).into_iter().peekable();
        if left.peek().is_none() {
            return (!self.words.is_empty()).then(|| self.way(&priced));
        }
        let mut least: Option<Decimal> = None;
        for (fault, day) in left {
            if fault != Fault::Truck {
                return None;
            }
            let (order, _) = day.truck.as_ref()?;
            let a_yard = priced.needs.orders[*order].unloading.as_ref()?.value();
            let may = day.truck_may.value().checked_div(a_yard)?;
            least = Some(least.map_or(may, |least| least.min(may)));
        }
        let supply = self.case.book.rules.supply.as_ref()?;
        let step = supply.sold_in.value.value;
        let yards = if step.is_zero() {
            least?
        } else {
            rounding::whole_below(least? / step) * step
        };
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
        is_left.then(|| other.way(&priced))
    }

    /// The same, changed in one thing more.
    fn changed(&self, takeoff: Takeoff, words: String) -> Self {
        let mut all = self.words.clone();
        all.push(words);
        Self {
            takeoff,
            words: all,
            days: self.days.clone(),
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

    fn way(&self, priced: &Priced) -> Way {
        Way {
            words: self.words.join(" and "),
            more: priced.totals().price - self.before,
            is_about: self.is_about,
        }
    }
}
