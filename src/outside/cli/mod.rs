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
mod ran;
mod reissue;
mod reprice;
mod sheet;
mod takeoff;
mod target;
mod verify;

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;
use std::str::FromStr;

use clap::{Parser, Subcommand, ValueEnum};

use self::ran::{COULD_NOT_RUN, ran};
use crate::documents::column::{Columns, json};
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
    #[arg(long, value_name = "DATE", value_parser = value::<Day>)]
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

impl Format {
    /// Rows in this format; text has a way of its own.
    fn told<T>(
        self,
        columns: &Columns<'_, T>,
        rows: &[T],
        text: impl FnOnce() -> String,
    ) -> String {
        match self {
            Self::Text => text(),
            Self::Json => json(&columns.objects(rows)),
            Self::Csv => columns.csv(rows),
        }
    }
}

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
    let command = match arguments.command {
        // Each takeoff for itself, whatever is wrong with the others.
        Command::Check(of) => return check::run(&of),
        command => command,
    };
    ran(|files| match &command {
        Command::Quote(of) => quote::run(of, files),
        Command::Cost(of) => cost::run(of, files),
        Command::Takeoff(of) => takeoff::run(of, files),
        Command::Explain(of) => explain::run(of, files),
        Command::Check(_) => Ok(String::new()),
        Command::Reprice(of) => reprice::run(of, files),
        Command::Book(of) => book::run(of, files),
        Command::Accept(of) => answer::accept(of, files),
        Command::Decline(of) => answer::decline(of, files),
        Command::Withdraw(of) => answer::withdraw(of, files),
        Command::Postpone(of) => answer::postpone(of, files),
        Command::Cancel(of) => answer::cancel(of, files),
        Command::Change(of) => change::run(of, files),
        Command::Escalate(of) => escalate::run(of, files),
        Command::Invoice(of) => bill::invoice(of, files),
        Command::Void(of) => bill::void(of, files),
        Command::Credit(of) => bill::credit(of, files),
        Command::Pay(of) => money::pay(of, files),
        Command::Returned(of) => money::returned(of, files),
        Command::Refund(of) => money::refund(of, files),
        Command::Jobs(of) => jobs::jobs(of, files),
        Command::Owed(of) => jobs::owed(of, files),
        Command::Statement(of) => jobs::statement(of, files),
        Command::Verify(of) => verify::run(of, files),
    })
}

/// A value as its type reads it, with what to write instead.
fn value<T: FromStr<Err = Unreadable>>(text: &str) -> Result<T, String> {
    text.parse()
        .map_err(|unreadable: Unreadable| format!("{}; {}", unreadable.message, unreadable.help))
}

/// An amount of money above zero.
fn money(text: &str) -> Result<Money, String> {
    let money: Money = value(text)?;
    if money.is_zero() {
        return Err("nothing is no amount; write, for example, `1290.02`".to_owned());
    }
    Ok(money)
}
