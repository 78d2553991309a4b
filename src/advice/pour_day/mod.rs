//! Can this crew place and finish each pour before it sets, and what would do it?

mod faults;
mod ways;

use std::cmp::Ordering;

use faults::Fault;
pub(super) use faults::faults;
use ways::{MOST_POURS, Way, is_cold, ways};

use super::Case;
use crate::reading::{Place, Problem};
use crate::tables::Source;
use crate::trade::Quantity;
use crate::trade::crew::{Crew, Over, PourDay};
use crate::values::Money;
use crate::values::rounding;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let days = case.offer.quoted().needs.crew.pours.iter();
    let quoted = days.filter_map(|day| about(case, day));
    quoted.chain(of_options(case)).collect()
}

/// A pour that can be finished as quoted, and cannot with an option: each option by itself.
fn of_options(case: Case<'_>) -> Vec<Problem> {
    let options = &case.takeoff.options;
    let quoted = case.offer.as_quoted.taken(options);
    let is_quoted = |place| quoted.iter().any(|option| option.name.place == place);
    let is_fine = |day: &PourDay| faults(case.takeoff, case.business, day).is_empty();
    let as_quoted = &case.offer.quoted().needs.crew.pours;
    let found =
        case.offer.by_choice.iter().filter_map(|(choice, priced)| {
            let more = choice.taken(options).into_iter();
            let mut more = more.filter(|option| !is_quoted(option.name.place));
            let option = more.next().filter(|_| more.next().is_none())?;
            let day = priced.needs.crew.pours.iter().find(|day| {
                let before = as_quoted.iter().find(|before| before.pour == day.pour);
                before.is_some_and(is_fine) && !is_fine(day)
            })?;
            let said = why(case, day, &faults(case.takeoff, case.business, day));
            let message = format!("with `{}`: {said}", option.name.value);
            let problem = Problem::new("pour-too-long", message).at(option.name.place);
            Some(problem.help(
                "write it into the job as quoted to see what does it, and what each way costs",
            ))
        });
    found.collect()
}

fn about(case: Case<'_>, day: &PourDay) -> Option<Problem> {
    let found = faults(case.takeoff, case.business, day);
    let worst = found.first()?;
    let access = &case.takeoff.access_of(day.pour);
    let by = access.by.place;
    let (code, place) = match worst {
        Fault::Long => ("pour-too-long", placed(case, day)),
        Fault::Truck => ("truck-too-slow", by),
        Fault::Reach => {
            let distance = access.distance.as_ref();
            (
                "chute-too-short",
                distance.map_or(by, |distance| distance.place),
            )
        }
    };
    let help = told(case, day, &ways(case, day));
    let problem = Problem::new(code, why(case, day, &found));
    Some(problem.at(place).help(help))
}

/// `pour 2: it cannot be finished as written: …`.
fn why(case: Case<'_>, day: &PourDay, faults: &[Fault]) -> String {
    let pour = match case.takeoff.pours().count() {
        1 => "this pour".to_owned(),
        _ => format!("pour {}", day.pour + 1),
    };
    let said: Vec<String> = faults.iter().map(|fault| said(case, day, *fault)).collect();
    format!("{pour}: {}", said.join("; "))
}

/// Where its slabs stand.
fn placed(case: Case<'_>, day: &PourDay) -> Place {
    let mut slabs = case.takeoff.slabs.iter();
    let largest = slabs.find(|slab| slab.placement == day.pour);
    largest.map_or(case.takeoff.place, |slab| slab.place)
}

fn said(case: Case<'_>, day: &PourDay, fault: Fault) -> String {
    let crew = &case.offer.quoted().needs.crew;
    let policy = &case.business.pour_day;
    match fault {
        Fault::Long => {
            let temperature = day.temperature.amount().number();
            let sets = format!(
                "and it sets in about {} h at {temperature} °F",
                short(&day.setting)
            );
            let over = day.over().filter_map(|over| match over {
                Over::Truck => None,
                Over::Place => Some(format!("placing takes {} h, {sets}", short(&day.placing))),
                Over::Finish => Some(format!(
                    "finishing takes {} h, {sets}",
                    short(&day.finishing)
                )),
                Over::Day => Some(of_day(crew, day)),
            });
            let over: Vec<String> = over.collect();
            format!("it cannot be finished as written: {}", over.join("; "))
        }
        Fault::Truck => {
            let minutes = day.truck.as_ref().map(|(_, minutes)| short(minutes));
            format!(
                "a truck stands at the slab for {} min until it is empty, and the plant allows {} min",
                minutes.unwrap_or_default(),
                short(&day.truck_may)
            )
        }
        Fault::Reach => {
            let distance = case.takeoff.access_of(day.pour).distance.as_ref();
            format!(
                "`{}` from the truck, and a chute reaches about `{}`",
                distance.map(|at| at.value).unwrap_or_default(),
                policy.chute.value
            )
        }
    }
}

/// A day that is too long, and what makes it so.
fn of_day(crew: &Crew, day: &PourDay) -> String {
    let why = if day.waits() {
        format!(
            ", since the last pass waits until it is stiff, which at this temperature is {} h after the last truck",
            short(&day.last_pass)
        )
    } else {
        String::new()
    };
    format!(
        "{} person hours once the concrete comes take {} people {} h, and a day may have {} h{why}",
        short(&day.work),
        crew.people.amount().number(),
        short(&day.day),
        short(&day.day_may),
    )
}

/// At most so many ways are told.
const TOLD: usize = 3;

/// What helps against the cold; none where it is not cold, or the pour is not too long.
fn warmer(case: Case<'_>, day: &PourDay) -> Option<&'static str> {
    let is_long = faults(case.takeoff, case.business, day).contains(&Fault::Long);
    (is_long && is_cold(case, day)).then_some(
        "it is cold: a warmer day, hot water, or an accelerator, which is a mix of the book with `setting` under 100%, makes it set sooner; a mix that sets more slowly does not help (common practice, no source)",
    )
}

/// A line each, in the words of the takeoff where it has any.
fn told(case: Case<'_>, day: &PourDay, ways: &[Way]) -> String {
    let rules = format!(
        "the rules of thumb stand under `pour day` of the business ({})",
        Source::PRACTICE
    );
    let most = case.business.pour_day.most_people.value.number();
    if ways.is_empty() {
        let cold = warmer(case, day).map(|cold| format!("\n{cold}"));
        return format!(
            "no other way to place it, no smaller trucks and no {most} people do it, in one pour or in {MOST_POURS}; think it over by hand; {rules}{}",
            cold.unwrap_or_default()
        );
    }
    let cut = if ways.iter().take(TOLD).any(|way| way.has_cuts) {
        "; bulkheads go straight across the longer way, into pieces as large as each other"
    } else {
        ""
    };
    let ways = ways.iter().take(TOLD).map(|way| {
        let about = if way.is_about { "about " } else { "" };
        let price = match way.more.cmp(&Money::ZERO) {
            Ordering::Less => format!("{} less", Money::ZERO - way.more),
            Ordering::Equal => "for the same price".to_owned(),
            Ordering::Greater => format!("{} more", way.more),
        };
        format!("{}: {about}{price}", way.words)
    });
    let heading =
        format!("what does it, with the whole job priced each way, before tax{cut}; {rules}");
    let cold = warmer(case, day).map(str::to_owned);
    let lines: Vec<String> = [heading].into_iter().chain(ways).chain(cold).collect();
    lines.join("\n")
}

/// At most two places.
fn short(quantity: &Quantity) -> String {
    rounding::to_places(quantity.value(), 2)
        .normalize()
        .to_string()
}
