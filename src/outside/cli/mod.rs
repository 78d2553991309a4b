//! The command line: one file a command, nothing but wiring.

mod answer;
mod bill;
mod book;
mod change;
mod check;
mod cost;
mod escalate;
mod explain;
mod issue;
mod jobs;
mod money;
mod pdf_file;
mod quote;
mod reissue;
mod reprice;
mod sheet;
mod takeoff;
mod target;
mod verify;

use std::ffi::OsString;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};

use sheet::{Chosen, with_sheet, with_sheets};

use super::desk::{self, Desk};
use super::files::record_folder::Held;
use super::records::NotFiled;
use crate::office::name::Name;
use crate::office::rules::Refusal;
use crate::reading::{Problem, Problems, Sources, caret};
use crate::values::{Day, Money, Unreadable};

/// From tape measure to last payment, for small concrete flatwork crews.
#[derive(Debug, Parser)]
#[command(name = "flatwork", version, about, disable_help_subcommand = true)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Prices a takeoff and writes the quote for the customer as a PDF
    Quote(quote::Arguments),
    /// Shows what the job costs you, line by line, and how the price is made
    Cost(cost::Arguments),
    /// Shows every quantity of the job; with --explain, how each came about
    Takeoff(takeoff::Arguments),
    /// Follows one line of the cost from dollars back to the tape measure
    Explain(explain::Arguments),
    /// Holds takeoffs against published rules and your own limits
    Check(check::Arguments),
    /// Shows what open quotes and signed work cost at other prices, the worst first, and why
    Reprice(reprice::Arguments),
    /// Compares price books, looks one over, sets a price in it, or takes a supplier's list in
    #[command(subcommand)]
    Book(book::Book),
    /// Records that a quote, or a change order, was accepted
    Accept(answer::Accept),
    /// Records that the customer said no
    Decline(answer::Decline),
    /// Takes back a quote that nobody has answered
    Withdraw(answer::Close),
    /// Records that the customer wants to wait
    Postpone(answer::Postpone),
    /// Records that the customer cancelled after signing
    Cancel(answer::Close),
    /// Writes a change order to a signed job: work or prices added or taken off
    Change(change::Arguments),
    /// Works out what the escalation clause of a contract comes to
    Escalate(escalate::Arguments),
    /// Bills a payment of the schedule, or with --final what is left
    Invoice(bill::Bill),
    /// Takes an invoice back as if it had never gone out
    Void(bill::Void),
    /// Forgives a part of an invoice
    Credit(bill::Less),
    /// Records money that came in
    Pay(money::Pay),
    /// Records a payment that came back, such as a check without cover
    Returned(money::Back),
    /// Records money paid back to the customer
    Refund(money::Pay),
    /// Shows every job on record: state, next step, billed, paid, owed; or how many quotes were won
    Jobs(jobs::Jobs),
    /// Shows what is owed, by how long it has been due
    Owed(jobs::Overview),
    /// Shows everything that happened to one job
    Statement(jobs::Statement),
    /// Looks whether every record still says what it said
    Verify(verify::Arguments),
}

/// What every command on a takeoff takes.
#[derive(Debug, clap::Args)]
struct Job {
    /// The takeoff
    file: PathBuf,
    /// The day of the quote, as 2026-05-04; else the takeoff's `quoted`, else today
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Day>,
    /// Another price book than the usual one
    #[arg(long, value_name = "FILE")]
    book: Option<PathBuf>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Format {
    Text,
    Json,
    Csv,
}

/// Exit status: 0 fine, 1 problems found in the input, 2 could not run.
const PROBLEMS: u8 = 1;
const COULD_NOT_RUN: u8 = 2;

/// Runs the program with its arguments; answers the exit status.
pub fn run(arguments: impl Iterator<Item = OsString>) -> ExitCode {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version are answers, not mistakes.
            let _ = error.print();
            return if error.use_stderr() {
                ExitCode::from(COULD_NOT_RUN)
            } else {
                ExitCode::SUCCESS
            };
        }
    };
    match arguments.command {
        Command::Quote(arguments) => quote::run(&arguments),
        Command::Cost(arguments) => cost::run(&arguments),
        Command::Takeoff(arguments) => takeoff::run(&arguments),
        Command::Explain(arguments) => explain::run(&arguments),
        Command::Check(arguments) => check::run(&arguments),
        Command::Reprice(arguments) => reprice::run(&arguments),
        Command::Book(command) => book::run(&command),
        Command::Accept(arguments) => answer::accept(&arguments),
        Command::Decline(arguments) => answer::decline(&arguments),
        Command::Withdraw(arguments) => answer::withdraw(&arguments),
        Command::Postpone(arguments) => answer::postpone(&arguments),
        Command::Cancel(arguments) => answer::cancel(&arguments),
        Command::Change(arguments) => change::run(&arguments),
        Command::Escalate(arguments) => escalate::run(&arguments),
        Command::Invoice(arguments) => bill::invoice(&arguments),
        Command::Void(arguments) => bill::void(&arguments),
        Command::Credit(arguments) => bill::credit(&arguments),
        Command::Pay(arguments) => money::pay(&arguments),
        Command::Returned(arguments) => money::returned(&arguments),
        Command::Refund(arguments) => money::refund(&arguments),
        Command::Jobs(arguments) => jobs::jobs(&arguments),
        Command::Owed(arguments) => jobs::owed(&arguments),
        Command::Statement(arguments) => jobs::statement(&arguments),
        Command::Verify(arguments) => verify::run(&arguments),
    }
}

/// Prints; a reader that has seen enough, such as `head`, closes the pipe, and that is no mistake.
fn say(text: &str) {
    let _ = std::io::stdout().write_all(text.as_bytes());
}

fn day(text: &str) -> Result<Day, String> {
    text.parse()
        .map_err(|unreadable: Unreadable| format!("{}; {}", unreadable.message, unreadable.help))
}

/// An amount of money above zero.
fn money(text: &str) -> Result<Money, String> {
    match text.parse::<Money>() {
        Ok(money) if !money.is_zero() => Ok(money),
        Ok(_) => Err("nothing is no amount; write, for example, `1290.02`".to_owned()),
        Err(unreadable) => Err(format!("{}; {}", unreadable.message, unreadable.help)),
    }
}

/// Lays out the job and hands it to `work`; every problem is shown, and then nothing is written.
fn with_desk(
    job: &Job,
    work: impl FnOnce(&Desk, &Sources, &mut Problems) -> Option<ExitCode>,
) -> ExitCode {
    with_file(&job.file, job, work)
}

fn with_file(
    file: &Path,
    job: &Job,
    work: impl FnOnce(&Desk, &Sources, &mut Problems) -> Option<ExitCode>,
) -> ExitCode {
    let books: Vec<PathBuf> = job.book.iter().cloned().collect();
    with_desks(file, job.on, &books, |desks, sources, problems| {
        work(&desks[0], sources, problems)
    })
}

/// The same by each of several books; there is always a desk.
fn with_desks(
    file: &Path,
    on: Option<Day>,
    books: &[PathBuf],
    work: impl FnOnce(&[Desk], &Sources, &mut Problems) -> Option<ExitCode>,
) -> ExitCode {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let desks = desk::lay_out_each(file, on, books, &mut sources, &mut problems);
    let done = match desks {
        Some(desks) if problems.is_empty() => work(&desks, &sources, &mut problems),
        _ => None,
    };
    if problems.is_empty() {
        return done.unwrap_or(ExitCode::from(COULD_NOT_RUN));
    }
    eprint!("{}", caret::show_all(&problems, "error", &sources));
    let count = problems.len();
    eprintln!(
        "\n{count} {} found; nothing was written",
        if count == 1 { "problem" } else { "problems" }
    );
    ExitCode::from(PROBLEMS)
}

/// The folder of records, held against other writers.
fn held(folder: &Path, problems: &mut Problems) -> Option<Held> {
    Held::new(folder)
        .map_err(|error| {
            let message = format!("cannot write in `{}`: {error}", folder.display());
            problems.push(
                Problem::new("unwritable-records", message)
                    .help("check the permissions of the folder and the room on the disk"),
            );
        })
        .ok()
}

/// What a job needs a signature for.
fn not_accepted(number: &str) -> Problem {
    Problem::new("not-accepted", format!("{number} has not been accepted")).help(format!(
        "when it is signed: `flatwork accept {number} --by NAME`"
    ))
}

/// What the office's rules say against it.
fn refused(refusal: Refusal) -> Problem {
    Problem::new(refusal.code, refusal.message).help(refusal.help)
}

/// Says what went wrong on the way to the disk.
fn filed(result: Result<Name, NotFiled>, problems: &mut Problems) -> Option<Name> {
    result
        .map_err(|not| {
            problems.push(match not {
                NotFiled::Record(error) => Problem::new(
                    "not-filed",
                    format!("the record could not be written: {error}"),
                )
                .help("nothing was recorded; make room on the disk or try once more"),
                NotFiled::Pdf(name, error) => Problem::new(
                    "pdf-not-filed",
                    format!("{name} is on record, but its PDF could not be written: {error}"),
                )
                .help("make room on the disk; `flatwork verify --mend` writes the PDF again"),
            });
        })
        .ok()
}
