//! Issuing a quote: its number, its record, its PDF for good.

use std::path::Path;

use crate::costing::Offer;
use crate::office::account::Account;
use crate::office::chain::hash;
use crate::office::name::{Event, Name};
use crate::office::record::{Happened, Pdf, Quote, Replaces};
use crate::office::rules;
use crate::outside::desk::Desk;
use crate::outside::files::record_folder::Held;
use crate::outside::records::{self, JobRecords};
use crate::outside::{quote_pdf, quote_record};
use crate::reading::{Problem, Problems, Sources};

/// How a quote goes out.
pub(super) struct Plan<'a> {
    pub revise: Option<&'a str>,
    /// Whether a revision tells the customer what it takes the place of.
    pub tell: bool,
    pub another: bool,
    pub dry_run: bool,
}

/// What was, or would be, issued.
pub(super) struct Issued {
    pub pdf: Vec<u8>,
    /// One line for the terminal.
    pub said: String,
}

/// Gives the quote its number and files it; what stands in the way is reported.
pub(super) fn issue(
    desk: &Desk,
    offer: &Offer,
    plan: &Plan<'_>,
    sources: &Sources,
    problems: &mut Problems,
) -> Option<Issued> {
    let folder = records::folder(&desk.folder);
    let held = super::held(&folder, problems)?;
    let (number, row, previous) = if let Some(number) = plan.revise {
        let row = records::of_number(held.folder(), number, problems)?;
        let previous = row.seals.last().cloned();
        (number.to_owned(), row, previous)
    } else {
        if !plan.another {
            refuse_twice(&held, desk, problems)?;
        }
        let (number, previous) =
            records::next_number(&held, &desk.business.numbers, desk.quoted, problems)?;
        (number.to_string(), JobRecords::default(), previous)
    };
    let revision = 1 + revisions(&row);
    let shown = if revision == 1 {
        number.clone()
    } else {
        format!("{number}, revision {revision}")
    };
    let replaces = plan.tell.then(|| replaces(&row)).flatten();
    let made = quote_pdf::quote(desk, offer, Some(&shown), replaces, problems)?;
    let stem = Name {
        number: crate::input::phrases::Number::written(&number)?,
        place: row.next(),
        event: Event::Quote,
    };
    let pdf = Pdf {
        name: format!("{stem}.pdf"),
        sha256: hash(&made.pdf),
    };
    let quote = Quote {
        replaces,
        ..quote_record::quote(desk, offer, &made.view, revision, pdf, sources)
    };
    let what = Happened::Quote(Box::new(quote));
    let account = Account::replay(&row.records);
    if plan.revise.is_some()
        && let Err(refusal) = rules::may(&account, &number, desk.quoted, &what, false)
    {
        problems.push(super::refused(refusal));
        return None;
    }
    let record = records::record(&number, row.next(), desk.quoted, previous, what);
    if plan.dry_run {
        return Some(Issued {
            pdf: made.pdf,
            said: format!("would issue {shown}\n"),
        });
    }
    super::filed(records::file(&held, &record, Some(&made.pdf)), problems)?;
    let forms = if desk.business.quote.cancellation.is_some() {
        "at signing  write both dates on both cancellation forms; check your state's law\n"
    } else {
        ""
    };
    Some(Issued {
        said: format!(
            "issued      {shown}, on record as {}\n{forms}",
            place(&folder, &stem)
        ),
        pdf: made.pdf,
    })
}

fn revisions(row: &JobRecords) -> u32 {
    let quotes = row
        .records
        .iter()
        .filter(|record| record.what.event() == Event::Quote);
    u32::try_from(quotes.count()).expect("no job has that many revisions")
}

/// The last quote of the row.
fn replaces(row: &JobRecords) -> Option<Replaces> {
    let mut last = row.records.iter().rev();
    last.find_map(|record| match &record.what {
        Happened::Quote(quote) => Some(Replaces {
            day: record.day,
            total: quote.quoted()?.figures.total,
        }),
        _ => None,
    })
}

fn place(folder: &Path, stem: &Name) -> String {
    folder.join(format!("{stem}.json")).display().to_string()
}

/// The same takeoff for the same customer goes out once, unless the owner says otherwise.
fn refuse_twice(held: &Held, desk: &Desk, problems: &mut Problems) -> Option<()> {
    let before = problems.len();
    for (number, names) in records::names(held.folder(), problems) {
        let closed = |event| matches!(event, Event::Declined | Event::Withdrawn | Event::Cancelled);
        if names.iter().any(|name| closed(name.event)) {
            continue;
        }
        let row = records::row(held.folder(), &names, problems);
        let account = Account::replay(&row.records);
        let Some((day, quote)) = account.quote() else {
            continue;
        };
        if quote.job == desk.takeoff.name && quote.customer == desk.takeoff.customer.name {
            problems.push(
                Problem::new(
                    "issued-already",
                    format!("`{}` for {} went out on {day} as {number}", quote.job, quote.customer),
                )
                .help(format!(
                    "`--revise {number}` sends a revision; `--another` makes a second quote all the same"
                )),
            );
        }
    }
    (problems.len() == before).then_some(())
}
