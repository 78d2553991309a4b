//! Figures worked out once more from the kept texts, and pages made once more from them.

use std::path::Path;

use super::Report;
use crate::input::business;
use crate::office::account::Account;
use crate::office::chain::hash;
use crate::office::job::Job;
use crate::office::name::Name;
use crate::office::record::{Change, Combination, Happened, Pdf, Quote, RULES};
use crate::outside::bill_pdf::bill_pdf;
use crate::outside::files::{Files, record_folder};
use crate::outside::quote_pdf::{quote_pdf, shown_number};
use crate::outside::records::{self, JobRecords, PROGRAM};
use crate::outside::{changing, from_record, quote_record};
use crate::reading::Read;
use crate::values::Money;

/// Holds one record against what its own texts make.
pub(super) fn record(home: &Path, row: &JobRecords, at: usize, name: &Name, report: &mut Report) {
    let record = &row.records[at];
    let Some(pdf) = record.what.pdf() else {
        return;
    };
    for input in record.what.inputs() {
        if hash(input.text.as_bytes()) != input.sha256 {
            report.fault(format!(
                "{name} keeps another `{}` than it says",
                input.name
            ));
        }
    }
    let account = Account::replay(&row.records[..at]);
    let job = Job {
        number: &record.number,
        day: record.day.0,
        account: &account,
    };
    let again = (record.rules == RULES).then(|| page(home, job, &record.what, name, report));
    // Another version of the program may set a line elsewhere; then only the hash counts.
    let again = again.flatten().filter(|_| record.program == PROGRAM);
    pages(home, name, pdf, again, report);
}

/// The page as it comes out now, once the figures are held against what they come to now.
fn page(
    home: &Path,
    job: Job<'_>,
    what: &Happened,
    name: &Name,
    report: &mut Report,
) -> Option<Vec<u8>> {
    let mut files = Files::default();
    if let Happened::Quote(quote) = what {
        let (now, pdf) = quoted(home, job, quote, &mut files).ok().unzip();
        figures(name, quote, now, report);
        return pdf?;
    }
    if let Happened::Change(change) = what {
        let (now, pdf) = changed(job, change, &mut files).ok().unzip();
        change_figures(name, change, now.as_ref(), report);
        return pdf?;
    }
    let id = files.kept(what.inputs().first()?);
    let business = files.read(id, business::read).ok()?;
    bill_pdf(job, &business, what, &mut files.problems).ok()?
}

fn quoted(
    home: &Path,
    job: Job<'_>,
    quote: &Quote,
    files: &mut Files,
) -> Read<(Vec<Combination>, Option<Vec<u8>>)> {
    let mut desk = from_record::desk(quote, job.day, files)?;
    home.clone_into(&mut desk.folder);
    let offer = desk.offer(&mut files.problems)?;
    let shown = shown_number(job.number, quote.revision);
    let made = quote_pdf(
        &desk,
        &offer,
        Some(&shown),
        quote.replaces,
        &mut files.problems,
    );
    let combinations = quote_record::combinations(&desk, &offer);
    Ok((combinations, made.ok().map(|made| made.pdf)))
}

fn changed(job: Job<'_>, change: &Change, files: &mut Files) -> Read<(Happened, Option<Vec<u8>>)> {
    let laid = changing::lay_out_again(&change.inputs, job, change.change, files)?;
    let now = Happened::Change(Box::new(laid.change));
    let page = bill_pdf(job, &laid.business, &now, &mut files.problems);
    Ok((now, page.ok().flatten()))
}

fn not_again(name: &Name) -> String {
    format!("{name} can no longer be worked out from the texts it keeps")
}

fn comes_to(name: &Name, now: Money, apart: Money) -> String {
    format!("{name} comes to {now} now, {apart} from what it says")
}

/// Every combination's total, to the cent, and every line of it.
fn figures(name: &Name, quote: &Quote, now: Option<Vec<Combination>>, report: &mut Report) {
    report.figures += 1;
    let Some(again) = now else {
        return report.fault(not_again(name));
    };
    for (kept, now) in quote.combinations.iter().zip(&again) {
        let total = now.figures.total.0;
        let apart = total - kept.figures.total.0;
        if !apart.is_zero() {
            report.fault(comes_to(name, total, apart));
        } else if kept != now {
            let line = kept.lines.iter().zip(&now.lines).find(|(a, b)| a != b);
            let line = line.map_or("its lines", |(line, _)| line.cause.as_str());
            report.fault(format!("{name} says another {line} than its texts make"));
        }
    }
    if quote.combinations.len() != again.len() {
        report.fault(format!("{name} has another number of combinations now"));
    }
}

/// The change's total, to the cent, and every line of it.
fn change_figures(name: &Name, kept: &Change, now: Option<&Happened>, report: &mut Report) {
    report.figures += 1;
    let Some(Happened::Change(now)) = now else {
        return report.fault(not_again(name));
    };
    let total = now.figures.total.0;
    let apart = total - kept.figures.total.0;
    if !apart.is_zero() {
        report.fault(comes_to(name, total, apart));
    } else if (&kept.lines, &kept.work, kept.days) != (&now.lines, &now.work, now.days) {
        report.fault(format!("{name} says other lines than its texts make"));
    }
}

/// The PDF is there, is the one of the record, and comes out the same once more.
fn pages(home: &Path, name: &Name, pdf: &Pdf, again: Option<Vec<u8>>, report: &mut Report) {
    let file = &pdf.name;
    let same_again = again.as_ref().map(|bytes| hash(bytes) == pdf.sha256);
    match (record_folder::read(&records::folder(home), file), again) {
        (Ok(bytes), _) => {
            report.pdfs += 1;
            if hash(&bytes) != pdf.sha256 {
                report.fault(format!("`{file}` is not the PDF that went out"));
            }
        }
        (Err(_), Some(bytes)) if same_again == Some(true) => {
            report.fault(format!(
                "`{file}` is lost; `--mend` writes it again, byte for byte"
            ));
            report.lost.push((name.clone(), bytes));
        }
        (Err(_), _) => report.fault(format!("`{file}` is lost; bring it back from a copy")),
    }
    match same_again {
        Some(true) => report.pages += 1,
        Some(false) => report.fault(format!(
            "`{file}` comes out otherwise when it is made once more"
        )),
        None => {}
    }
}
