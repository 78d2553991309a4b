//! `flatwork jobs`, `owed`, `statement`: what stands where.

use std::collections::BTreeMap;

use super::Format;
use super::ran::Ran;
use super::target::{In, Target};
use crate::documents::views::office::late;
use crate::documents::views::office::ledger::{self, Line};
use crate::documents::views::office::win_rate;
use crate::office::account::Account;
use crate::office::late::Late;
use crate::outside::files::{self, Files};
use crate::outside::records::{self, JobRecords};
use crate::outside::{exports, from_record};
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
    with_accounts(&arguments.overview, files, |accounts, today| {
        if arguments.win_rate {
            let accounts: Vec<Account<'_>> = accounts.values().cloned().collect();
            let rates = win_rate::rates(&accounts, today);
            return match format {
                Format::Text => win_rate::text(&rates),
                Format::Json => exports::ledger::win_rate_json(&rates),
                Format::Csv => exports::ledger::win_rate_csv(&rates),
            };
        }
        let wanted = arguments.state.as_ref();
        let lines: Vec<Line> = accounts
            .iter()
            .filter_map(|(number, account)| ledger::line(number, account, today))
            .filter(|line| wanted.is_none_or(|state| line.state == state))
            .collect();
        match format {
            Format::Text => ledger::overview(&lines),
            Format::Json => exports::ledger::jobs_json(&lines),
            Format::Csv => exports::ledger::jobs_csv(&lines),
        }
    })
}

pub(super) fn owed(arguments: &Overview, files: &mut Files) -> Ran {
    with_accounts(arguments, files, |accounts, today| {
        let open = ledger::open(accounts, today);
        match arguments.format {
            Format::Text => {
                let charges: Vec<_> = accounts
                    .iter()
                    .flat_map(|(number, account)| charges(number, account, today))
                    .collect();
                ledger::owed(&open) + &late::told(&charges, today)
            }
            Format::Json => exports::ledger::owed_json(&open),
            Format::Csv => exports::ledger::owed_csv(&open),
        }
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
        Ok(ledger::statement(job.number, job.account) + &late::told(&charges, job.day))
    })
}

/// By the terms the customer signed: those of the business file that the quote kept.
fn charges(number: &str, account: &Account<'_>, today: Day) -> Vec<(String, Late)> {
    let rule = from_record::business(account).and_then(|business| business.invoices.late_charge);
    rule.map(|rule| late::charges(number, account, today, rule))
        .unwrap_or_default()
}
