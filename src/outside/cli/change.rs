//! `flatwork change`: more or less work than was signed, priced, on paper and on record.

use std::path::PathBuf;
use std::process::ExitCode;

use super::answer::told;
use super::target::{Case, Entry, Target};
use crate::documents::views::office::change as office;
use crate::office::name::Event;
use crate::office::record::Happened;
use crate::outside::{bill_pdf, changing};
use crate::reading::{Problems, Sources};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    target: Target,
    /// The change order: what is added, what is left out
    file: PathBuf,
    /// Another price book than the usual one
    #[arg(long, value_name = "FILE")]
    book: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    arguments.target.record(false, |case, sources, problems| {
        changed(arguments, case, sources, problems)
    })
}

fn changed(
    arguments: &Arguments,
    case: &Case<'_>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Entry> {
    let (number, account) = (case.number, case.account);
    let Some(before) = account.contract() else {
        problems.push(super::not_accepted(number));
        return None;
    };
    let (_, quote) = account.quote()?;
    let laid = changing::lay_out(
        &arguments.file,
        arguments.book.as_deref(),
        &case.home,
        quote,
        case.day,
        sources,
        problems,
    )?;
    let count = account.changes.iter().map(|one| one.change.change).max();
    let mut change = laid.record(count.unwrap_or(0) + 1, sources);
    let made = bill_pdf::change(case.billing(&laid.business), &change, problems)?;
    change.pdf = Some(case.pdf(Event::Change, &made)?);
    let after = before.plus(&change.figures);
    let said = format!(
        "{}agreed      {} with this change\nnext        when it is signed: `flatwork accept {number} --change {}`\n",
        office::text(number, &change, quote.margin_floor.0),
        told(&after),
        change.change,
    );
    Some(Entry {
        said,
        what: Happened::Change(Box::new(change)),
        pdf: Some(made),
    })
}
