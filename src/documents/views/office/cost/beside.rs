//! What stands beside the lines: hours, the price by parts, every choice, what the owner set.

use crate::costing::{self, LineItem, OfOne, Priced, Tier, sections};
use crate::documents::column::{Column, Columns};
use crate::documents::table::Align::{Left, Right};
use crate::documents::table::table;
use crate::documents::views::office::wrap::wrapped;
use crate::documents::views::office::{Sheet, two_places};
use crate::input::business::Charge;
use crate::input::job::Choice;
use crate::trade::Quantity;
use crate::values::Money;

/// The crew's hours, as computed and as charged.
pub(super) fn hours(sheet: &Sheet<'_>) -> Vec<String> {
    let crew = &sheet.offer.quoted().needs.crew;
    let people = crew.people.amount().number();
    let short = |quantity: &Quantity| two_places(quantity.amount());
    let set_up = crew.set_up.as_ref().map_or_else(String::new, |set_up| {
        format!(" + {} of set-up", short(set_up))
    });
    let waiting = crew.waiting.as_ref().map_or_else(String::new, |waiting| {
        format!(" + {} of waiting until it sets", short(waiting))
    });
    let (charged, days) = (short(&crew.charged), short(&crew.days));
    let mut out = vec![
        "CREW".to_owned(),
        format!(
            "{} of work{waiting} + {} of travel{set_up} = {}; {}",
            short(&crew.worked),
            short(&crew.travel),
            short(&crew.hours),
            short(&crew.trips),
        ),
        match (crew.charged.overruled(), sheet.business.crew.charge.value) {
            (Some(computed), _) => format!(
                "{} person hours charged, as you set them; computed {}",
                two_places(crew.charged.amount()).number(),
                two_places(computed.amount()).number()
            ),
            (None, Charge::Hours) => {
                format!("{charged} charged, as computed; as days: {days} of {people} people")
            }
            (None, Charge::CrewDays) => format!("{charged} charged: {days} of {people} people"),
        },
    ];
    let who = |people: &Quantity| match people.amount().number().as_str() {
        "1" => "1 person".to_owned(),
        several => format!("{several} people"),
    };
    let staged = crew.stretches.iter().filter_map(|one| {
        let (trips, days) = (one.trips.as_ref()?, one.days.as_ref()?);
        let row = [&one.worked, trips, days].map(|much| short(much).to_string());
        let few = one.people.as_ref();
        let few = few.filter(|few| few.value() != crew.people.value());
        let row = [one.name.clone()].into_iter().chain(row);
        Some(row.chain(few.map(who)).collect())
    });
    let staged: Vec<Vec<String>> = staged.collect();
    out.extend(table(&[Left, Right, Right, Right, Left], &staged));
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
    out.extend(table(&[Left, Right], &rows));
    out
}

/// Cost and price by the square foot, by the foot and by the yard, slab by slab.
pub(super) fn of_one(sheet: &Sheet<'_>) -> Vec<String> {
    type Of<'a> = Column<'a, OfOne>;
    let found = costing::of_one(sheet.offer.quoted());
    if found.is_empty() {
        return Vec::new();
    }
    let columns = Columns(vec![
        Of::left("part", |one| sheet.part_of(one).to_owned()).head(""),
        Of::right("much", |one| two_places(one.much).to_string()).head(""),
        Of::right("cost", |one| one.cost),
        Of::right("price", |one| one.price),
        Of::left("unit", |one| format!("a {}", one.much.unit.symbol())).head(""),
    ]);
    let mut out = vec!["COST AND PRICE OF ONE, before tax; concrete as drawn".to_owned()];
    out.extend(columns.lines(&found));
    out
}

/// Every combination of options, against the job as quoted.
pub(super) fn choices(sheet: &Sheet<'_>) -> Vec<String> {
    type Of<'a> = Column<'a, (&'a Choice, &'a Priced)>;
    if sheet.offer.by_choice.len() < 2 || sheet.chosen().is_some() {
        return Vec::new();
    }
    let quoted = sheet.offer.quoted().totals();
    let margin = |priced: &Priced| sheet.margin(&priced.totals());
    let columns = Columns(vec![
        Of::right("total", |(_, priced)| priced.totals().total),
        Of::right("more", |(_, priced)| priced.totals().total - quoted.total),
        Of::right("margin", |(_, priced)| margin(priced).shown()),
        Of::left("warning", |(_, priced)| margin(priced).warning()).head(""),
        Of::left("with", |(choice, _)| {
            let taken = sheet.taken(choice);
            match (taken.is_empty(), **choice == sheet.offer.as_quoted) {
                (true, _) => "nothing, as quoted".into(),
                (false, true) => format!("{}, as quoted", taken.join(" + ")),
                (false, false) => taken.join(" + "),
            }
        }),
    ]);
    let lines = columns.lines(&sheet.offer.by_choice.iter().collect::<Vec<_>>());
    // Long titles go on below where they begin.
    let indent = " ".repeat(lines[0].rfind("with").unwrap_or_default());
    let mut out = vec!["EVERY CHOICE, tax included".to_owned()];
    out.extend(lines.iter().flat_map(|line| wrapped("", &indent, line)));
    out
}

/// What the owner set, beside what was computed.
pub(super) fn overruled(sheet: &Sheet<'_>) -> Vec<String> {
    let set = sheet.set_by_owner();
    let told = set.iter().flat_map(|one| {
        let text = format!(
            "{}: {}{}, not {} as computed, because {} ({})",
            one.quantity.name(),
            one.quantity.amount(),
            one.said,
            one.computed.amount(),
            one.because,
            sheet.line_of(one.place),
        );
        wrapped("", "    ", &text)
    });
    headed("SET BY YOU", told.collect())
}

/// Lines below a heading; nothing where there are none.
fn headed(heading: &str, mut lines: Vec<String>) -> Vec<String> {
    if !lines.is_empty() {
        lines.insert(0, heading.to_owned());
    }
    lines
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
        let row = |line: &LineItem| {
            let title = format!("    {}", line.title);
            vec![title, line.money().plain(), line.amount.shown()]
        };
        let lines = cost.lines.iter().filter(|line| line.side != Tier::Tax);
        out.extend(table(
            &[Left, Right, Left],
            &lines.map(row).collect::<Vec<_>>(),
        ));
    }
    headed("UNFORESEEN WORK, priced from its cost", out)
}
