//! `flatwork change`: more or less work than was signed, priced, on paper and on record.

use std::path::PathBuf;

use super::ran::Ran;
use super::target::{Entry, JobOnRecord, Target};
use crate::office::record::Happened;
use crate::outside::changing;
use crate::outside::files::Files;
use crate::reading::Read;

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

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let target = &arguments.target;
    target.record(false, files, |case, files| changed(arguments, case, files))
}

fn changed(arguments: &Arguments, case: &JobOnRecord<'_>, files: &mut Files) -> Read<Entry> {
    case.job.accepted(&mut files.problems)?;
    let book = arguments.book.as_deref();
    let laid = changing::lay_out(&arguments.file, book, case.home, case.job, files)?;
    let what = Happened::Change(Box::new(laid.change));
    Ok(Entry::on_paper(what, laid.business))
}
