//! What stands beside the lines: hours, the price by parts, every choice, what the owner set.

use crate::costing::{Side, sections};
use crate::documents::views::office::columns::{Stand, set};
use crate::documents::views::office::wrap::wrapped;
use crate::documents::views::office::{Sheet, every, margin};
use crate::input::business::Charge;
use crate::trade::{Quantity, Working};
use crate::values::{Amount, Money, rounding};

/// The crew's hours, as computed and as charged.
pub(super) fn hours(sheet: &Sheet<'_>) -> Vec<String> {
    let crew = &sheet.offer.quoted().needs.crew;
    let people = sheet.business.crew.people.value;
    // Two places are enough to read; `explain` has them all.
    let short = |quantity: &Quantity| {
        let amount = quantity.amount();
        Amount::new(rounding::to_places(amount.value, 2), amount.unit)
    };
    let set_up = crew.set_up.as_ref().map_or_else(String::new, |set_up| {
        format!(" + {} of set-up", short(set_up))
    });
    let mut out = vec![
        "CREW".to_owned(),
        format!(
            "{} of work + {} of travel{set_up} = {}; {} planned for",
            short(&crew.worked),
            short(&crew.travel),
            short(&crew.hours),
            short(&crew.trips),
        ),
    ];
    out.push(if sheet.business.crew.charge.value == Charge::Hours {
        format!(
            "{} charged, as computed; as days: {} of {} people",
            short(&crew.charged),
            short(&crew.days),
            people.number(),
        )
    } else {
        format!(
            "{} charged: {} of {} people",
            short(&crew.charged),
            short(&crew.days),
            people.number(),
        )
    });
    let mut rows = Vec::new();
    for one in &crew.stages {
        let days = one.days.as_ref().map(|days| short(days).to_string());
        rows.push(vec![
            one.stage.name().to_owned(),
            short(&one.worked).to_string(),
            days.unwrap_or_default(),
        ]);
    }
    if crew.stages.iter().any(|one| one.days.is_some()) {
        out.extend(set(&[Stand::Left, Stand::Right, Stand::Right], &rows));
    }
    out
}

/// The price before tax by parts of the job.
pub(super) fn parts(sheet: &Sheet<'_>) -> Vec<String> {
    let split = sections(&sheet.offer.quoted().lines);
    let mut rows: Vec<Vec<String>> = split
        .iter()
        .map(|part| vec![sheet.section(part.section).to_owned(), part.price.plain()])
        .collect();
    let sum: Money = split.iter().map(|part| part.price).sum();
    rows.push(vec!["price before tax".into(), sum.plain()]);
    let mut out = vec!["PRICE BY PART OF THE JOB".to_owned()];
    out.extend(set(&[Stand::Left, Stand::Right], &rows));
    out
}

/// Every combination of options, against the job as quoted.
pub(super) fn choices(sheet: &Sheet<'_>) -> Vec<String> {
    if sheet.offer.by_choice.len() < 2 || sheet.chosen().is_some() {
        return Vec::new();
    }
    let floor = sheet.business.price.margin_floor.value.number();
    let quoted = sheet.offer.quoted().totals();
    let mut rows = vec![
        ["total", "more", "margin", "", "with"]
            .map(str::to_owned)
            .to_vec(),
    ];
    rows.extend(sheet.offer.by_choice.iter().map(|(choice, priced)| {
        let totals = priced.totals();
        let taken = sheet.taken(choice);
        vec![
            totals.total.plain(),
            (totals.total - quoted.total).plain(),
            totals
                .margin()
                .map(|number| margin(number, floor))
                .unwrap_or_default(),
            match totals.margin() {
                Some(number) if number < floor => "below floor".into(),
                _ => String::new(),
            },
            match (taken.is_empty(), *choice == sheet.offer.as_quoted) {
                (true, _) => "nothing, as quoted".into(),
                (false, true) => format!("{}, as quoted", taken.join(" + ")),
                (false, false) => taken.join(" + "),
            },
        ]
    }));
    let stands = [
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Left,
        Stand::Left,
    ];
    let lines = set(&stands, &rows);
    // Long titles go on below where they begin.
    let indent = " ".repeat(lines[0].rfind("with").unwrap_or_default());
    let mut out = vec!["EVERY CHOICE, tax included".to_owned()];
    out.extend(lines.iter().flat_map(|line| wrapped("", &indent, line)));
    out
}

/// What the owner set, beside what was computed.
pub(super) fn overruled(sheet: &Sheet<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for quantity in every(sheet.offer.quoted()) {
        if let Working::Set {
            computed,
            because,
            place,
        } = quantity.working()
        {
            let text = format!(
                "{}: {}, not {} as computed, because {because} ({})",
                quantity.name(),
                quantity.amount(),
                computed.amount(),
                sheet.line_of(*place),
            );
            out.extend(wrapped("", "    ", &text));
        }
    }
    if !out.is_empty() {
        out.insert(0, "SET BY YOU".to_owned());
    }
    out
}

/// Unit prices that are made of items, with what each is made of.
pub(super) fn unforeseen(sheet: &Sheet<'_>) -> Vec<String> {
    let all = sheet.business.unforeseen.iter();
    let mut out = Vec::new();
    for (one, cost) in all.zip(&sheet.offer.unit_prices) {
        if cost.lines.is_empty() {
            continue;
        }
        let text = format!("{}, per {}: {} before tax", one.what, one.per, cost.price);
        out.extend(wrapped("", "    ", &text));
        let rows: Vec<Vec<String>> = cost
            .lines
            .iter()
            .filter(|line| line.side != Side::Tax)
            .map(|line| {
                vec![
                    format!("    {}", line.title),
                    line.money().plain(),
                    line.amount.shown(),
                ]
            })
            .collect();
        out.extend(set(&[Stand::Left, Stand::Right, Stand::Left], &rows));
    }
    if !out.is_empty() {
        out.insert(0, "UNFORESEEN WORK, priced from its cost".to_owned());
    }
    out
}
