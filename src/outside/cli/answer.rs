//! `flatwork accept`, `decline`, `withdraw`, `postpone`, `cancel`: what came of a quote.

use super::ran::Ran;
use super::target::{Entry, JobOnRecord, Target};
use crate::office::cancellation;
use crate::office::record::{Accepted, Happened};
use crate::office::text;
use crate::outside::files::Files;
use crate::reading::Read;
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Accept {
    #[command(flatten)]
    target: Target,
    /// Who said yes; else the customer
    #[arg(long, value_name = "NAME")]
    by: Option<String>,
    /// How: signed on paper, by mail
    #[arg(long, value_name = "WORDS", default_value = "signed on paper")]
    how: String,
    /// An option that was ticked, by its title or the first words of it; once for each
    #[arg(long = "with", value_name = "OPTION")]
    with: Vec<String>,
    /// Takes a quote that is past its day
    #[arg(long)]
    late: bool,
    /// A change order of this number instead of the quote
    #[arg(long, value_name = "CHANGE")]
    change: Option<u32>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Close {
    #[command(flatten)]
    target: Target,
    /// Why, in a few words
    #[arg(long, value_name = "WORDS")]
    because: String,
}

#[derive(Debug, clap::Args)]
pub(super) struct Decline {
    #[command(flatten)]
    close: Close,
    /// Only the change order of this number; the job goes on
    #[arg(long, value_name = "CHANGE")]
    change: Option<u32>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Postpone {
    #[command(flatten)]
    close: Close,
    /// Until when, if that is known
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    until: Option<Day>,
}

pub(super) fn accept(arguments: &Accept, files: &mut Files) -> Ran {
    let target = &arguments.target;
    target.record(arguments.late, files, |case, files| {
        let (_, quote) = case.job.quote(&mut files.problems)?;
        let by = arguments.by.as_ref().unwrap_or(&quote.customer).clone();
        let how = arguments.how.clone();
        match arguments.change {
            Some(change) => Ok(Entry::plain(Happened::ChangeAccepted { change, by, how })),
            None => accepted(case, &arguments.with, by, how, files),
        }
    })
}

fn accepted(
    case: &JobOnRecord<'_>,
    with: &[String],
    by: String,
    how: String,
    files: &mut Files,
) -> Read<Entry> {
    let (_, quote) = case.job.quote(&mut files.problems)?;
    let combination = quote.chosen(with, &mut files.problems)?;
    let (business, _) = case.business(files)?;
    let may_cancel = business.quote.cancellation.is_some();
    Ok(Entry::plain(Happened::Accepted(Accepted {
        revision: quote.revision,
        by,
        how,
        choice: combination.choice.clone(),
        taken: combination.taken.clone(),
        contract: combination.figures.clone(),
        cancel_until: may_cancel.then(|| text::Day(cancellation::last_day(case.job.day))),
    })))
}

impl Close {
    fn record(&self, files: &mut Files, what: impl FnOnce(String) -> Happened) -> Ran {
        let what = what(self.because.clone());
        self.target
            .record(false, files, |_, _| Ok(Entry::plain(what)))
    }
}

pub(super) fn decline(arguments: &Decline, files: &mut Files) -> Ran {
    let change = arguments.change;
    let close = &arguments.close;
    close.record(files, |because| Happened::Declined { because, change })
}

pub(super) fn withdraw(arguments: &Close, files: &mut Files) -> Ran {
    arguments.record(files, |because| Happened::Withdrawn { because })
}

pub(super) fn postpone(arguments: &Postpone, files: &mut Files) -> Ran {
    let until = arguments.until.map(text::Day);
    let close = &arguments.close;
    close.record(files, |because| Happened::Postponed { because, until })
}

pub(super) fn cancel(arguments: &Close, files: &mut Files) -> Ran {
    arguments.target.record(false, files, |case, _| {
        Ok(Entry::plain(Happened::Cancelled {
            because: arguments.because.clone(),
            refund_by: cancellation::refund(case.job).map(text::Day),
        }))
    })
}
