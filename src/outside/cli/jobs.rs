//! `flatwork jobs`, `owed`, `statement`: what stands where.

use std::collections::BTreeMap;

use super::Format;
use super::ran::Ran;
use super::target::{In, Target};
use crate::documents::views::office::ledger;
use crate::office::account::Account;
use crate::office::ageing::{self, OpenInvoice};
use crate::office::late::Late;
use crate::office::standing::{Standing, standing};
use crate::office::win_rate;
use crate::outside::files::{self, Files};
use crate::outside::from_record;
use crate::outside::records::{self, JobRecords};
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Overview {
    #[command(flatten)]
    place: In,
    /// As of this day; else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    on: Option<Day>,
    /// Text to read, or JSON or CSV for the bookkeeper
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// The overview, or how many quotes became jobs.
#[derive(Debug, clap::Args)]
pub(super) struct Jobs {
    #[command(flatten)]
    overview: Overview,
    /// Only jobs in this state: quoted, expired, postponed, signed, paid, declined, withdrawn, cancelled
    #[arg(long, value_name = "STATE", conflicts_with = "win_rate")]
    state: Option<String>,
    /// How many quotes became jobs, by kind of work
    #[arg(long)]
    win_rate: bool,
}

pub(super) fn jobs(arguments: &Jobs, files: &mut Files) -> Ran {
    let format = arguments.overview.format;
    with_accounts(&arguments.overview, files, |jobs, today| {
        if arguments.win_rate {
            let accounts: Vec<Account<'_>> = jobs.values().cloned().collect();
            let rates = win_rate::rates(&accounts, today);
            return format.told(&ledger::win_rates(), &rates, || {
                ledger::win_rates().lines(&rates).join("\n") + "\n"
            });
        }
        let jobs = jobs.iter();
        let mut found: Vec<Standing<'_>> = jobs
            .filter_map(|(number, account)| standing(number, account, today))
            .collect();
        if let Some(state) = &arguments.state {
            found.retain(|job| job.state.name() == state);
        }
        format.told(&ledger::jobs(), &found, || ledger::overview(&found))
    })
}

pub(super) fn owed(arguments: &Overview, files: &mut Files) -> Ran {
    with_accounts(arguments, files, |jobs, today| {
        let jobs = || jobs.iter();
        let open = jobs().flat_map(|(number, account)| ageing::open(number, account, today));
        let open: Vec<OpenInvoice> = open.collect();
        arguments.format.told(&ledger::invoices(), &open, || {
            let late = jobs().flat_map(|(number, account)| charges(number, account, today));
            ledger::owed(&open) + &ledger::late(&late.collect::<Vec<_>>(), today)
        })
    })
}

/// Replays every job on record.
fn with_accounts(
    arguments: &Overview,
    files: &mut Files,
    show: impl FnOnce(&BTreeMap<String, Account<'_>>, Day) -> String,
) -> Ran {
    let problems = &mut files.problems;
    let folder = records::folder(&arguments.place.home(problems)?);
    let names = records::names(&folder, problems).into_iter();
    let rows: Vec<JobRecords> = names
        .map(|(number, names)| records::row(&folder, &number, &names, problems))
        .collect();
    problems.none()?;
    let accounts = rows.iter().map(|row| {
        let account = Account::replay(&row.records);
        (row.number.to_string(), account)
    });
    let today = arguments.on.unwrap_or_else(files::today);
    Ok(show(&accounts.collect(), today))
}

#[derive(Debug, clap::Args)]
pub(super) struct Statement {
    #[command(flatten)]
    target: Target,
}

pub(super) fn statement(arguments: &Statement, files: &mut Files) -> Ran {
    arguments.target.look(files, |job, _| {
        let charges = charges(job.number, job.account, job.day);
        Ok(ledger::statement(job.number, job.account) + &ledger::late(&charges, job.day))
    })
}

/// By the terms the customer signed: those of the business file that the quote kept.
fn charges(number: &str, account: &Account<'_>, today: Day) -> Vec<(String, Late)> {
    let rule = from_record::business(account).and_then(|business| business.invoices.late_charge);
    rule.map(|rule| ageing::charges(number, account, today, rule))
        .unwrap_or_default()
}
