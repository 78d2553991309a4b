//! A job in a dozen lines: what it takes, what it costs, what it leaves.

use std::fmt::Write as _;

use crate::costing::Offer;
use crate::input::business::Business;
use crate::input::job::Takeoff;
use crate::values::{Amount, Day, rounding};

/// The summary under a quote, one short line a fact.
pub fn summary(
    quoted: Day,
    takeoff: &Takeoff,
    business: &Business,
    offer: &Offer,
    advices: usize,
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
        let loads = if order.loads.len() == 1 {
            "1 load".to_owned()
        } else {
            format!("{} loads", order.loads.len())
        };
        line(
            "concrete",
            format!(
                "{} of {}, {loads} (net {})",
                order.order.amount(),
                order.called(),
                short(order.net.amount())
            ),
        );
    }
    let weight: Vec<String> = needs
        .slabs
        .iter()
        .flat_map(|slab| &slab.bars)
        .map(|bars| short(bars.weight.amount()))
        .collect();
    if !weight.is_empty() {
        line("steel", format!("{} of bars", weight.join(" + ")));
    }
    let crew = &needs.crew;
    line(
        "hours",
        format!(
            "{} worked out, {} charged: {}, {}",
            short(crew.hours.amount()),
            short(crew.charged.amount()),
            crew.days.amount(),
            crew.trips.amount()
        ),
    );
    let width = [totals.cost, totals.price, totals.tax, totals.total]
        .iter()
        .map(|money| money.to_string().len())
        .max()
        .unwrap_or(0);
    line("cost", format!("{:>width$}", totals.cost.to_string()));
    let floor = business.price.margin_floor.value;
    let margin = totals.margin().map_or_else(
        || "no price".to_owned(),
        |margin| {
            format!(
                "margin {}, floor {floor}",
                super::margin(margin, floor.number())
            )
        },
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
    if advices != 0 {
        line(
            "look at",
            format!("{advices} above; `flatwork check` shows them again"),
        );
    }
    out
}

fn short(amount: Amount) -> String {
    Amount::new(rounding::to_places(amount.value, 2), amount.unit).to_string()
}
