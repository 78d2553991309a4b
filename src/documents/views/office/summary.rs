//! A job in a dozen lines: what it takes, what it costs, what it leaves.

use std::fmt::Write as _;

use super::{Margin, counted, two_places};
use crate::costing::Offer;
use crate::input::business::Business;
use crate::input::job::Takeoff;
use crate::reading::Problem;
use crate::trade::crew::Crew;
use crate::trade::measure::SlabQuantities;
use crate::trade::order::ConcreteOrder;
use crate::values::Day;

/// Advice that the job cannot be done by as it is written.
const NO_POUR: [(&str, &str); 3] = [
    ("pour-too-long", "cannot be finished as written"),
    (
        "truck-too-slow",
        "trucks cannot be emptied in time as written",
    ),
    ("chute-too-short", "the chute does not reach as written"),
];

/// The summary under a quote, one short line a fact.
pub fn summary(
    quoted: Day,
    takeoff: &Takeoff,
    business: &Business,
    offer: &Offer,
    advices: &[Problem],
) -> String {
    let priced = offer.quoted();
    let (needs, totals) = (&priced.needs, priced.totals());
    let mut out = String::new();
    let mut line = |label: &str, text: String| {
        let _ = writeln!(out, "{label:<11} {text}");
    };
    line(
        "job",
        format!(
            "{}, for {}, quoted {quoted}",
            takeoff.name, takeoff.customer.name
        ),
    );
    for slab in takeoff.slabs.iter().filter(|slab| !slab.usual.is_empty()) {
        line(
            "usual",
            format!(
                "{}: {} as for every {}",
                slab.key,
                slab.usual.join(", "),
                slab.kind
            ),
        );
    }
    for order in &needs.orders {
        line("concrete", concrete(order));
    }
    let weight: Vec<String> = needs
        .slabs
        .iter()
        .flat_map(SlabQuantities::steel)
        .map(|bars| two_places(bars.weight.amount()).to_string())
        .collect();
    if !weight.is_empty() {
        line("steel", format!("{} of bars", weight.join(" + ")));
    }
    let crew = &needs.crew;
    line(
        "hours",
        format!(
            "{} worked out, {} charged{}, {}",
            two_places(crew.hours.amount()),
            two_places(crew.charged.amount()),
            days(crew),
            crew.trips.amount()
        ),
    );
    let width = [totals.cost, totals.price, totals.tax, totals.total]
        .iter()
        .map(|money| money.to_string().len())
        .max()
        .unwrap_or(0);
    line("cost", format!("{:>width$}", totals.cost.to_string()));
    let held = Margin {
        number: totals.margin(),
        floor: business.price.margin_floor.value,
    };
    let margin = held.shown().map_or_else(
        || "no price".to_owned(),
        |shown| format!("margin {shown}, floor {}", held.floor),
    );
    line(
        "price",
        format!("{:>width$}   {margin}", totals.price.to_string()),
    );
    if !totals.tax.is_zero() {
        line("tax", format!("{:>width$}", totals.tax.to_string()));
    }
    line("TOTAL", format!("{:>width$}", totals.total.to_string()));
    if !takeoff.options.is_empty() {
        line(
            "options",
            format!("{} combinations, every one priced", offer.by_choice.len()),
        );
    }
    for (code, text) in NO_POUR {
        if advices.iter().any(|one| one.code == code) {
            line("pour", format!("{text}: see {code}"));
        }
    }
    if !advices.is_empty() {
        line(
            "look at",
            format!("{} above; `flatwork check` shows them again", advices.len()),
        );
    }
    out
}

fn concrete(order: &ConcreteOrder) -> String {
    let loads = match &order.bags {
        Some(bags) => format!("{} mixed by hand", bags.amount()),
        None => counted(order.loads.len(), "load", "loads"),
    };
    let why = order.otherwise.as_ref().map(|why| format!("; {why}"));
    format!(
        "{} of {}, {loads} (net {}){}",
        two_places(order.order.amount()),
        order.called(),
        two_places(order.net.amount()),
        why.unwrap_or_default()
    )
}

/// Days follow from hours unless the owner set those.
fn days(crew: &Crew) -> String {
    match crew.charged.overruled() {
        Some(_) => " as you set them".to_owned(),
        None => format!(
            ": {} of {} people",
            two_places(crew.days.amount()),
            crew.people.amount().number()
        ),
    }
}
