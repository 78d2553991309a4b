//! `flatwork invoice`, `void`, `credit`: bills, and what takes them back.

use std::fmt::Write as _;
use std::path::PathBuf;
use std::process::ExitCode;

use super::target::{Case, Entry, Target};
use crate::office::billing::{self, share_of};
use crate::office::name::Event;
use crate::office::record::{Bills, Credit, Figures, Happened, Invoice, InvoiceLine};
use crate::office::text;
use crate::outside::{bill_pdf, business_folder, closing, progress};
use crate::reading::{Problem, Problems, Sources};
use crate::values::{Day, Money};

#[derive(Debug, clap::Args)]
pub(super) struct Bill {
    #[command(flatten)]
    target: Target,
    /// A payment of the schedule, from 1; else the first that is not billed
    #[arg(long, value_name = "N", conflicts_with = "last")]
    stage: Option<usize>,
    /// Work to date by this schedule of values, less what was billed
    #[arg(long, value_name = "FILE", conflicts_with_all = ["stage", "last"])]
    progress: Option<PathBuf>,
    /// All that is left of contract and changes
    #[arg(long = "final")]
    last: bool,
    /// With --final: the day of the last pour, where it was not the one planned
    #[arg(long, value_name = "DATE", value_parser = super::day, requires = "last")]
    poured: Option<Day>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Void {
    #[command(flatten)]
    target: Target,
    /// The invoice: 2 for 2026-0041-2
    invoice: u32,
    /// Why, in a few words
    #[arg(long, value_name = "WORDS")]
    because: String,
}

#[derive(Debug, clap::Args)]
pub(super) struct Less {
    #[command(flatten)]
    target: Target,
    /// The invoice: 2 for 2026-0041-2
    invoice: u32,
    /// What it asks too much, tax included
    #[arg(value_name = "AMOUNT", value_parser = super::money)]
    amount: Money,
    /// Why, in a few words; the customer reads it
    #[arg(long, value_name = "WORDS")]
    because: String,
}

pub(super) fn invoice(arguments: &Bill) -> ExitCode {
    arguments.target.record(false, |case, sources, problems| {
        billed(arguments, case, sources, problems)
    })
}

fn billed(
    arguments: &Bill,
    case: &Case<'_>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Entry> {
    let (number, account) = (case.number, case.account);
    let Some((_, accepted)) = account.accepted() else {
        problems.push(super::not_accepted(number));
        return None;
    };
    let (quoted, quote) = account.quote()?;
    let (business, input) = business_folder::business(&case.home, sources, problems)?;
    let parts = billing::stages(&accepted.contract, &quote.payments);
    let mut inputs = vec![input];
    let (bills, lines, figures) = if let Some(file) = &arguments.progress {
        let (schedule, done, figures) = progress::read(file, account, case.day, sources, problems)?;
        inputs.push(schedule);
        let lines = progress::lines(&done, account);
        (Bills::Progress(Box::new(done)), lines, figures)
    } else if arguments.last {
        last(case, problems)?
    } else {
        let stage = stage(arguments, case, quote.payments.len(), problems)?;
        let says = quote.payments[stage].when.clone();
        let figures = parts[stage].clone();
        let line = InvoiceLine {
            says,
            price: figures.price,
        };
        (Bills::Stage(stage), vec![line], figures)
    };
    if figures.is_nothing() {
        problems.push(
            Problem::new(
                "nothing-to-bill",
                format!("nothing is left to bill of {number}"),
            )
            .help(format!(
                "`flatwork statement {number}` shows what was billed"
            )),
        );
        return None;
    }
    let count = account.invoices.iter().map(|one| one.invoice.invoice).max();
    let count = count.unwrap_or(0) + 1;
    let due = case.day.plus(i64::from(business.invoices.due.0));
    let mut invoice = Invoice {
        invoice: count,
        bills,
        lines,
        figures,
        due: text::Day(due),
        closing: arguments
            .last
            .then(|| closing::closing(quote, quoted, accepted, arguments.poured))
            .flatten(),
        inputs,
        pdf: None,
    };
    let made = bill_pdf::invoice(case.billing(&business), &invoice, problems)?;
    invoice.pdf = Some(case.pdf(invoice.bills.event(), &made)?);
    let mut said = format!(
        "invoice     {number}-{count}, {}, due {}\n",
        invoice.figures.total.0,
        due.long()
    );
    if let Some(closing) = &invoice.closing {
        for (name, days) in &business.invoices.notices {
            let by = closing.poured.0.plus(i64::from(days.0)).long();
            let _ = writeln!(
                said,
                "not later   {name}: {by}, {} days after the pour; check your state's law",
                days.0
            );
        }
    }
    Some(Entry {
        said,
        what: Happened::Invoice(Box::new(invoice)),
        pdf: Some(made),
    })
}

/// The payment of the schedule that is asked for, or the first that is not billed.
fn stage(
    arguments: &Bill,
    case: &Case<'_>,
    count: usize,
    problems: &mut Problems,
) -> Option<usize> {
    if let Some(wanted) = arguments.stage {
        if (1..=count).contains(&wanted) {
            return Some(wanted - 1);
        }
        problems.push(
            Problem::new(
                "no-such-stage",
                format!("the schedule of {} has no payment {wanted}", case.number),
            )
            .help(format!(
                "it has {count}; `flatwork statement {}` lists them",
                case.number
            )),
        );
        return None;
    }
    let billed = |stage| {
        let mut kept = case.account.invoices.iter().filter(|one| !one.voided);
        kept.any(|one| one.invoice.bills == Bills::Stage(stage))
    };
    let next = (0..count).find(|stage| !billed(*stage));
    if next.is_none() {
        problems.push(
            Problem::new(
                "all-billed",
                format!("every payment of {} is billed", case.number),
            )
            .help("changes and what is left are billed with `--final`"),
        );
    }
    next
}

/// Contract and signed changes, less what was billed.
fn last(case: &Case<'_>, problems: &mut Problems) -> Option<(Bills, Vec<InvoiceLine>, Figures)> {
    let account = case.account;
    let contract = account.contract()?;
    let billed = account.billed();
    let figures = contract.less(&billed);
    let (_, accepted) = account.accepted()?;
    let mut lines = vec![InvoiceLine {
        says: "Work as agreed".to_owned(),
        price: accepted.contract.price,
    }];
    let signed = account.changes.iter().filter(|one| one.is_accepted());
    lines.extend(signed.map(|one| InvoiceLine {
        says: format!("Change {}: {}", one.change.change, one.change.title),
        price: one.change.figures.price,
    }));
    if !billed.is_nothing() {
        lines.push(InvoiceLine {
            says: "Billed before".to_owned(),
            price: text::Cents(-billed.price.0),
        });
    }
    if figures.total.0 < Money::ZERO {
        problems.push(
            Problem::new(
                "billed-too-much",
                format!(
                    "{} was billed {} more than was agreed",
                    case.number, -figures.total.0
                ),
            )
            .help(format!(
                "take it off the last invoice: `flatwork credit {} INVOICE {}`",
                case.number,
                (-figures.total.0).plain()
            )),
        );
        return None;
    }
    Some((Bills::Final, lines, figures))
}

pub(super) fn void(arguments: &Void) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        Some(Entry {
            said: format!(
                "void        {}-{}: {}\n",
                case.number, arguments.invoice, arguments.because
            ),
            what: Happened::Voided {
                invoice: arguments.invoice,
                because: arguments.because.clone(),
            },
            pdf: None,
        })
    })
}

pub(super) fn credit(arguments: &Less) -> ExitCode {
    arguments.target.record(false, |case, sources, problems| {
        let found = case
            .account
            .invoices
            .iter()
            .find(|one| one.invoice.invoice == arguments.invoice);
        // An invoice that is not there is refused by the rules, with the command that helps.
        let of = found
            .map(|one| one.invoice.figures.clone())
            .unwrap_or_default();
        let count = case
            .account
            .invoices
            .iter()
            .flat_map(|one| &one.credits)
            .count();
        let mut credit = Credit {
            credit: u32::try_from(count).ok()? + 1,
            invoice: arguments.invoice,
            because: arguments.because.clone(),
            figures: share_of(&of, arguments.amount),
            inputs: Vec::new(),
            pdf: None,
        };
        if found.is_some() {
            let (business, input) = business_folder::business(&case.home, sources, problems)?;
            credit.inputs = vec![input];
            let made = bill_pdf::credit(case.billing(&business), &credit, problems)?;
            credit.pdf = Some(case.pdf(Event::Credit, &made)?);
            return Some(Entry {
                said: format!(
                    "credit      {} off invoice {}-{}: {}\n",
                    arguments.amount, case.number, arguments.invoice, arguments.because
                ),
                what: Happened::Credit(Box::new(credit)),
                pdf: Some(made),
            });
        }
        Some(Entry {
            said: String::new(),
            what: Happened::Credit(Box::new(credit)),
            pdf: None,
        })
    })
}
