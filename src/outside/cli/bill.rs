//! `flatwork invoice`, `void`, `credit`: bills, and what takes them back.

use std::path::PathBuf;

use super::ran::Ran;
use super::target::{Entry, JobOnRecord, Target};
use crate::input::progress;
use crate::office::record::{Happened, InputKind, Invoice};
use crate::office::text;
use crate::outside::closing::closing;
use crate::outside::files::Files;
use crate::reading::Read;
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
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>, requires = "last")]
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

pub(super) fn invoice(arguments: &Bill, files: &mut Files) -> Ran {
    let target = &arguments.target;
    target.record(false, files, |case, files| billed(arguments, case, files))
}

fn billed(arguments: &Bill, case: &JobOnRecord<'_>, files: &mut Files) -> Read<Entry> {
    let job = case.job;
    let (_, accepted) = job.accepted(&mut files.problems)?;
    let (quoted, quote) = job.quote(&mut files.problems)?;
    let (business, input) = case.business(files)?;
    let mut inputs = vec![input];
    let mut poured = None;
    let asked = if let Some(file) = &arguments.progress {
        let id = files.text(file)?;
        let written = files.read(id, progress::read)?;
        inputs.push(files.input(InputKind::ScheduleOfValues, id));
        job.asks_progress(&written, &mut files.problems)?
    } else if arguments.last {
        poured = closing(quote, quoted, accepted, arguments.poured);
        job.asks_rest(&mut files.problems)?
    } else {
        job.asks_stage(arguments.stage, &mut files.problems)?
    };
    let what = Happened::Invoice(Box::new(Invoice {
        invoice: job.next_invoice(),
        bills: asked.bills,
        lines: asked.lines,
        figures: asked.figures,
        due: text::Day(job.day.plus(i64::from(business.invoices.due.0))),
        closing: poured,
        inputs,
        pdf: None,
    }));
    Ok(Entry::on_paper(what, business))
}

pub(super) fn void(arguments: &Void, files: &mut Files) -> Ran {
    arguments.target.record(false, files, |_, _| {
        Ok(Entry::plain(Happened::Voided {
            invoice: arguments.invoice,
            because: arguments.because.clone(),
        }))
    })
}

pub(super) fn credit(arguments: &Less, files: &mut Files) -> Ran {
    arguments.target.record(false, files, |case, files| {
        let (job, invoice) = (case.job, arguments.invoice);
        let mut credit = Box::new(job.credit(invoice, arguments.amount, &arguments.because));
        if job.account.invoice(invoice).is_none() {
            // It is refused by the rules, with the command that helps.
            return Ok(Entry::plain(Happened::Credit(credit)));
        }
        let (business, input) = case.business(files)?;
        credit.inputs.push(input);
        Ok(Entry::on_paper(Happened::Credit(credit), business))
    })
}
