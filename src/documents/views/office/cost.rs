//! What the job costs, line by line, and how the price is made of it.

use super::columns::{Stand, set};
use super::{Sheet, cause, margin, numbered, unit};
use crate::costing::{LineItem, Side, sections};
use crate::input::book::{Basis, Class};
use crate::input::phrases::Profit;
use crate::trade::{Quantity, Working};
use crate::values::{Amount, Money, Unit, rounding};

/// The whole sheet.
pub fn text(sheet: &Sheet<'_>) -> String {
    let mut out = heading(sheet);
    for block in [
        lines(sheet),
        hours(sheet),
        parts(sheet),
        choices(sheet),
        overruled(sheet),
    ] {
        if !block.is_empty() {
            out.push(String::new());
            out.extend(block);
        }
    }
    out.join("\n") + "\n"
}

/// Whose job, the price, and which prices it is made of.
fn heading(sheet: &Sheet<'_>) -> Vec<String> {
    let totals = sheet.offer.quoted().totals();
    let floor = sheet.business.price.margin_floor.value;
    let held = totals.margin().map_or_else(
        || "no price, so no margin".to_owned(),
        |number| {
            let against = if number < floor.number() {
                "BELOW your floor of"
            } else {
                "floor"
            };
            format!(
                "margin {}, {against} {floor}",
                margin(number, floor.number())
            )
        },
    );
    let tax = if totals.tax.is_zero() {
        String::new()
    } else {
        format!(" + tax {} = total {}", totals.tax, totals.total)
    };
    let mut out = vec![
        format!(
            "{}, for {}",
            sheet.takeoff.name, sheet.takeoff.customer.name
        ),
        "For the office, not for the customer.".to_owned(),
        String::new(),
        format!("Price {}{tax}", totals.price),
        format!("Cost {}, {held}", totals.cost),
        format!("Quoted {}; price book {}", sheet.quoted, sheet.book.name),
    ];
    out.extend(pours(sheet));
    if let Some(fixed) = &sheet.takeoff.fixed_price {
        out.push(format!(
            "Price fixed by you at {}",
            sheet.line_of(fixed.place)
        ));
    }
    out
}

/// The day whose prices each pour has, and where that day comes from.
fn pours(sheet: &Sheet<'_>) -> impl Iterator<Item = String> {
    let several = 1 < sheet.days.len();
    let placed = sheet.days.iter().zip(&sheet.takeoff.placements);
    placed.enumerate().map(move |(i, (prices, placement))| {
        let pour = if several {
            format!("pour {}", i + 1)
        } else {
            "the pour".to_owned()
        };
        let lead = sheet.business.quote.lead_time.0;
        match placement.day {
            Some(_) => format!("Prices of {}, the day of {pour}", prices.day),
            None => format!(
                "Prices of {}: the takeoff names no day for {pour}, so {lead} days after the quote",
                prices.day
            ),
        }
    })
}

const LINES: [Stand; 7] = [
    Stand::Right,
    Stand::Left,
    Stand::Point,
    Stand::Left,
    Stand::Point,
    Stand::Right,
    Stand::Left,
];

fn row(cells: [String; 7]) -> Vec<String> {
    Vec::from(cells)
}

/// A row without a number of its own: a subtotal or a heading.
fn total(title: &str, amount: Money) -> Vec<String> {
    let none = String::new;
    row([
        none(),
        title.to_owned(),
        none(),
        none(),
        none(),
        amount.plain(),
        none(),
    ])
}

/// Every line with its number, class by class, then what is added to direct cost.
fn lines(sheet: &Sheet<'_>) -> Vec<String> {
    let quoted = sheet.offer.quoted();
    let totals = quoted.totals();
    let all = numbered(&quoted.lines);
    let mut rows = Vec::new();
    for class in Class::ALL {
        let of_class: Vec<_> = all
            .iter()
            .filter(|(_, line)| line.class == Some(class))
            .collect();
        if of_class.is_empty() {
            continue;
        }
        let heading = ["", &class.name().to_uppercase(), "", "", "", "", ""];
        rows.push(row(heading.map(str::to_owned)));
        rows.extend(of_class.iter().map(|(number, line)| {
            let mut cells = priced(*number, line);
            // Two lines of one item, such as one for each pour, say which is which.
            let alike = all.iter().filter(|(_, other)| other.title == line.title);
            if 1 < alike.count() {
                cells[1] = format!("{} ({})", line.title, cause(&line.cause));
            }
            cells
        }));
        let sum = of_class.iter().map(|(_, line)| line.money()).sum();
        rows.push(total(&format!("{} together", class.name()), sum));
        rows.push(Vec::new());
    }
    rows.push(total("Direct cost", totals.direct));
    rows.extend(added(&all, Side::Indirect, sheet));
    rows.push(total("COST", totals.cost));
    rows.extend(added(&all, Side::Price, sheet));
    rows.push(total("PRICE BEFORE TAX", totals.price));
    rows.extend(added(&all, Side::Tax, sheet));
    rows.push(total("TOTAL", totals.total));
    set(&LINES, &rows)
}

fn priced(number: usize, line: &LineItem) -> Vec<String> {
    let quantity = line.quantity.as_ref().map(Quantity::amount);
    let each = line
        .price
        .as_ref()
        .map(|dated| Amount::new(dated.price.dollars(), Unit::Dollar).to_string());
    let basis = line
        .price
        .as_ref()
        .map_or_else(String::new, |dated| match &dated.basis {
            Basis::Listed => format!("price of {}", dated.from),
            Basis::Held { until, .. } => format!("held until {until}"),
        });
    let beside = if line.price.is_some() {
        basis
    } else {
        line.amount.shown()
    };
    row([
        format!("#{number}"),
        line.title.clone(),
        quantity.map(Amount::number).unwrap_or_default(),
        quantity.map(unit).unwrap_or_default(),
        each.unwrap_or_default(),
        line.money().plain(),
        beside,
    ])
}

/// Lines that are figured from others, with their working.
fn added(all: &[(usize, &LineItem)], side: Side, sheet: &Sheet<'_>) -> Vec<Vec<String>> {
    let of_side = all.iter().filter(|(_, line)| line.side == side);
    of_side
        .map(|(number, line)| {
            let mut cells = priced(*number, line);
            if line.cause == crate::costing::Cause::Profit {
                cells[1] = match sheet.business.price.profit.value {
                    Profit::Markup(percent) => format!("{}, markup {percent} on cost", line.title),
                    Profit::Margin(percent) => format!("{}, margin {percent} of price", line.title),
                };
            }
            cells
        })
        .collect()
}

fn hours(sheet: &Sheet<'_>) -> Vec<String> {
    let crew = &sheet.offer.quoted().needs.crew;
    let people = sheet.business.crew.people.value;
    // Two places are enough to read; `explain` has them all.
    let short = |quantity: &Quantity| {
        let amount = quantity.amount();
        Amount::new(rounding::to_places(amount.value, 2), amount.unit)
    };
    vec![
        "CREW".to_owned(),
        format!(
            "{} of work + {} of travel = {}; {} planned for",
            short(&crew.worked),
            short(&crew.travel),
            short(&crew.hours),
            short(&crew.trips),
        ),
        format!(
            "{} charged: {} of {} people",
            short(&crew.charged),
            short(&crew.days),
            people.number(),
        ),
    ]
}

/// The price before tax by parts of the job.
fn parts(sheet: &Sheet<'_>) -> Vec<String> {
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
fn choices(sheet: &Sheet<'_>) -> Vec<String> {
    if sheet.offer.by_choice.len() < 2 {
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
            if taken.is_empty() {
                "nothing, as quoted".into()
            } else {
                taken.join(" + ")
            },
        ]
    }));
    let mut out = vec!["EVERY CHOICE, tax included".to_owned()];
    out.extend(set(
        &[
            Stand::Right,
            Stand::Right,
            Stand::Right,
            Stand::Left,
            Stand::Left,
        ],
        &rows,
    ));
    out
}

/// What the owner set, beside what was computed.
fn overruled(sheet: &Sheet<'_>) -> Vec<String> {
    let mut out = Vec::new();
    for quantity in super::every(sheet.offer.quoted()) {
        if let Working::Set {
            computed,
            because,
            place,
        } = quantity.working()
        {
            out.push(format!(
                "{}: {}, not {} as computed, because {because} ({})",
                quantity.name(),
                quantity.amount(),
                computed.amount(),
                sheet.line_of(*place),
            ));
        }
    }
    if !out.is_empty() {
        out.insert(0, "SET BY YOU".to_owned());
    }
    out
}
