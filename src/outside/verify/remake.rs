//! Figures worked out once more from the kept texts, and pages made once more from them.

use std::path::Path;

use super::Report;
use crate::documents::billing::Billing;
use crate::office::account::Account;
use crate::office::chain::hash;
use crate::office::name::Name;
use crate::office::record::{Change, Combination, Happened, Input, Pdf, Quote, RULES};
use crate::outside::files::record_folder;
use crate::outside::records::{self, JobRecords, PROGRAM};
use crate::outside::{bill_pdf, business_folder, changing, from_record, quote_pdf, quote_record};
use crate::reading::{Problems, Sources};
use crate::values::{Day, Money};

/// Figures and pages as they come out now.
#[derive(Debug)]
pub struct Remade {
    pub combinations: Option<Vec<Combination>>,
    pub change: Option<Box<Change>>,
    pub pdf: Option<Vec<u8>>,
}

/// Holds one record against what its own texts make.
pub(super) fn record(home: &Path, row: &JobRecords, at: usize, name: &Name, report: &mut Report) {
    let record = &row.records[at];
    let Some(pdf) = record.what.pdf() else {
        return;
    };
    for input in inputs(&record.what) {
        if hash(input.text.as_bytes()) != input.sha256 {
            report.faults.push(format!(
                "{name} keeps another `{}` than it says",
                input.name
            ));
        }
    }
    let remade = (record.rules == RULES).then(|| remade(home, row, at));
    if let (Some(remade), Happened::Quote(quote)) = (&remade, &record.what) {
        report.figures += 1;
        figures(name, quote, remade, report);
    }
    if let (Some(remade), Happened::Change(change)) = (&remade, &record.what) {
        report.figures += 1;
        change_figures(name, change, remade.change.as_deref(), report);
    }
    // Another version of the program may set a line elsewhere; then only the hash counts.
    let again = remade
        .and_then(|remade| remade.pdf)
        .filter(|_| record.program == PROGRAM);
    pages(home, name, pdf, again, report);
}

fn inputs(what: &Happened) -> &[Input] {
    match what {
        Happened::Quote(quote) => &quote.inputs,
        Happened::Change(change) => &change.inputs,
        Happened::Invoice(invoice) => &invoice.inputs,
        Happened::Credit(credit) => &credit.inputs,
        Happened::Paid(payment) | Happened::Refunded(payment) => &payment.inputs,
        Happened::Accepted(_)
        | Happened::Cancelled { .. }
        | Happened::Declined { .. }
        | Happened::Withdrawn { .. }
        | Happened::Postponed { .. }
        | Happened::ChangeAccepted { .. }
        | Happened::Voided { .. }
        | Happened::Returned { .. } => &[],
    }
}

/// Every combination's total, to the cent, and every line of it.
fn figures(name: &Name, quote: &Quote, remade: &Remade, report: &mut Report) {
    let Some(again) = &remade.combinations else {
        report.faults.push(format!(
            "{name} can no longer be worked out from the texts it keeps"
        ));
        return;
    };
    for (kept, now) in quote.combinations.iter().zip(again) {
        let apart: Money = now.figures.total.0 - kept.figures.total.0;
        if !apart.is_zero() {
            report.faults.push(format!(
                "{name} comes to {} now, {apart} from what it says",
                now.figures.total.0
            ));
        } else if kept != now {
            let line = kept.lines.iter().zip(&now.lines).find(|(a, b)| a != b);
            let line = line.map_or("its lines", |(line, _)| line.cause.as_str());
            report
                .faults
                .push(format!("{name} says another {line} than its texts make"));
        }
    }
    if quote.combinations.len() != again.len() {
        report
            .faults
            .push(format!("{name} has another number of combinations now"));
    }
}

/// The change's total, to the cent, and every line of it.
fn change_figures(name: &Name, kept: &Change, now: Option<&Change>, report: &mut Report) {
    let Some(now) = now else {
        report.faults.push(format!(
            "{name} can no longer be worked out from the texts it keeps"
        ));
        return;
    };
    let apart: Money = now.figures.total.0 - kept.figures.total.0;
    if !apart.is_zero() {
        report.faults.push(format!(
            "{name} comes to {} now, {apart} from what it says",
            now.figures.total.0
        ));
    } else if (&kept.lines, &kept.work, kept.days) != (&now.lines, &now.work, now.days) {
        report
            .faults
            .push(format!("{name} says other lines than its texts make"));
    }
}

/// The PDF is there, is the one of the record, and comes out the same once more.
fn pages(home: &Path, name: &Name, pdf: &Pdf, again: Option<Vec<u8>>, report: &mut Report) {
    let same_again = again.as_ref().map(|bytes| hash(bytes) == pdf.sha256);
    match record_folder::read(&records::folder(home), &pdf.name) {
        Ok(bytes) => {
            report.pdfs += 1;
            if hash(&bytes) != pdf.sha256 {
                report
                    .faults
                    .push(format!("`{}` is not the PDF that went out", pdf.name));
            }
        }
        Err(_) => match (again, same_again) {
            (Some(bytes), Some(true)) => {
                report.faults.push(format!(
                    "`{}` is lost; `--mend` writes it again, byte for byte",
                    pdf.name
                ));
                report.lost.push((name.clone(), bytes));
            }
            _ => report
                .faults
                .push(format!("`{}` is lost; bring it back from a copy", pdf.name)),
        },
    }
    match same_again {
        Some(true) => report.pages += 1,
        Some(false) => report.faults.push(format!(
            "`{}` comes out otherwise when it is made once more",
            pdf.name
        )),
        None => {}
    }
}

/// Makes a record's figures and pages once more.
fn remade(home: &Path, row: &JobRecords, at: usize) -> Remade {
    let record = &row.records[at];
    let day = record.day.0;
    let number = record.number.as_str();
    let mut problems = Problems::default();
    let account = Account::replay(&row.records[..at]);
    let business = inputs(&record.what)
        .first()
        .and_then(|input| business_folder::kept(input, &mut problems));
    let bill = business.as_ref().map(|business| Billing {
        number,
        day,
        account: &account,
        business,
    });
    let plain = |pdf: Option<Vec<u8>>| Remade {
        combinations: None,
        change: None,
        pdf,
    };
    match &record.what {
        Happened::Quote(quote) => {
            quoted(home, quote, number, day, &mut problems).unwrap_or_else(|| plain(None))
        }
        Happened::Invoice(invoice) => {
            plain(bill.and_then(|of| bill_pdf::invoice(of, invoice, &mut problems)))
        }
        Happened::Credit(credit) => {
            plain(bill.and_then(|of| bill_pdf::credit(of, credit, &mut problems)))
        }
        Happened::Paid(payment) => {
            plain(bill.and_then(|of| bill_pdf::receipt(of, payment, &mut problems)))
        }
        Happened::Refunded(refund) => {
            plain(bill.and_then(|of| bill_pdf::refund(of, refund, &mut problems)))
        }
        Happened::Change(change) => changed(change, number, day, &account, &mut problems),
        Happened::Accepted(_)
        | Happened::Cancelled { .. }
        | Happened::Declined { .. }
        | Happened::Withdrawn { .. }
        | Happened::Postponed { .. }
        | Happened::ChangeAccepted { .. }
        | Happened::Voided { .. }
        | Happened::Returned { .. } => plain(None),
    }
}

fn changed(
    change: &Change,
    number: &str,
    day: Day,
    account: &Account<'_>,
    problems: &mut Problems,
) -> Remade {
    let mut sources = Sources::default();
    let laid = <&[Input; 3]>::try_from(&change.inputs[..])
        .ok()
        .zip(account.quote())
        .and_then(|(texts, (_, quote))| {
            changing::lay_out_again(texts, quote, day, &mut sources, problems)
        });
    let Some(laid) = laid else {
        return Remade {
            combinations: None,
            change: None,
            pdf: None,
        };
    };
    let again = laid.record(change.change, &sources);
    Remade {
        combinations: None,
        pdf: bill_pdf::change(
            Billing {
                number,
                day,
                account,
                business: &laid.business,
            },
            &again,
            problems,
        ),
        change: Some(Box::new(again)),
    }
}

fn quoted(
    home: &Path,
    quote: &Quote,
    number: &str,
    day: Day,
    problems: &mut Problems,
) -> Option<Remade> {
    let mut sources = Sources::default();
    let mut desk = from_record::desk(quote, day, &mut sources, problems)?;
    home.clone_into(&mut desk.folder);
    let offer = desk.offer(problems)?;
    let shown = if quote.revision == 1 {
        number.to_owned()
    } else {
        format!("{number}, revision {}", quote.revision)
    };
    let combinations = quote_record::combinations(&desk, &offer);
    let made = quote_pdf::quote(&desk, &offer, Some(&shown), quote.replaces, problems);
    Some(Remade {
        combinations: Some(combinations),
        change: None,
        pdf: made.map(|made| made.pdf),
    })
}
