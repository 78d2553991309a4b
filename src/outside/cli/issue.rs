//! Issuing a quote: its number, its record, its PDF for good.

use crate::costing::Offer;
use crate::office::account::Account;
use crate::office::invoicing::after;
use crate::office::job::Job;
use crate::office::record::{Event, Happened, Pdf, Quote, Replaces};
use crate::office::text;
use crate::outside::desk::Desk;
use crate::outside::files::Files;
use crate::outside::files::record_folder::Held;
use crate::outside::quote_pdf::{quote_pdf, shown_number};
use crate::outside::quote_record::quote_record;
use crate::outside::records;
use crate::reading::{Problem, Problems, Read};

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
    files: &mut Files,
) -> Read<Issued> {
    let folder = records::folder(&desk.folder);
    let held = records::hold(&folder, &mut files.problems)?;
    let row = if let Some(number) = plan.revise {
        records::of_number(&folder, number, &mut files.problems)?
    } else {
        if !plan.another {
            refuse_twice(&held, desk, &mut files.problems)?;
        }
        let numbers = &desk.business.numbers;
        records::new_job(&held, numbers, desk.quoted, &mut files.problems)?
    };
    let account = Account::replay(&row.records);
    let job = Job {
        number: row.number.text(),
        day: desk.quoted,
        account: &account,
    };
    let revision = after(account.quotes.len());
    let shown = shown_number(job.number, revision);
    let last = account.quote().filter(|_| plan.tell);
    let replaces = last.and_then(|(day, quote)| {
        Some(Replaces {
            day: text::Day(day),
            total: quote.quoted()?.figures.total,
        })
    });
    let made = quote_pdf(desk, offer, Some(&shown), replaces, &mut files.problems)?;
    let name = row.next(Event::Quote);
    let what = Happened::Quote(Box::new(Quote {
        replaces,
        pdf: Some(Pdf::new(format!("{name}.pdf"), &made.pdf)),
        ..quote_record(desk, offer, &made.view, revision, files)
    }));
    if plan.revise.is_some() {
        let allowed = job.may(&what, false);
        allowed.map_err(|problem| files.refuse(problem))?;
    }
    let said = if plan.dry_run {
        format!("would issue {shown}\n")
    } else {
        let record = row.record(desk.quoted, what);
        records::file(&held, &name, &record, Some(&made.pdf), &mut files.problems)?;
        let place = folder.join(format!("{name}.json"));
        let said = format!("issued      {shown}, on record as {}\n", place.display());
        let has_forms = desk.business.quote.cancellation.is_some();
        said + if has_forms { AT_SIGNING } else { "" }
    };
    Ok(Issued {
        pdf: made.pdf,
        said,
    })
}

const AT_SIGNING: &str =
    "at signing  write both dates on both cancellation forms; check your state's law\n";

/// The same takeoff for the same customer goes out once, unless the owner says otherwise.
fn refuse_twice(held: &Held, desk: &Desk, problems: &mut Problems) -> Read<()> {
    let before = problems.len();
    let (job, customer) = (&desk.takeoff.name, &desk.takeoff.customer.name);
    for (number, names) in records::names(held.folder(), problems) {
        let closed = |event| matches!(event, Event::Declined | Event::Withdrawn | Event::Cancelled);
        if names.iter().any(|name| closed(name.event)) {
            continue;
        }
        let row = records::row(held.folder(), &number, &names, problems);
        let account = Account::replay(&row.records);
        if let Some((day, quote)) = account.quote()
            && (&quote.job, &quote.customer) == (job, customer)
        {
            let message = format!("`{job}` for {customer} went out on {day} as {number}");
            problems.push(Problem::new("issued-already", message).help(format!(
                "`--revise {number}` sends a revision; `--another` makes a second quote all the same"
            )));
        }
    }
    problems.none_since(before)
}
