//! `flatwork jobs`, `owed`, `statement`: what stands where.

use std::collections::BTreeMap;
use std::process::ExitCode;

use super::target::{In, Target, shown};
use super::{Format, say};
use crate::documents::views::office::ledger;
use crate::office::account::Account;
use crate::office::ageing::{self, OpenInvoice};
use crate::office::late::Late;
use crate::office::standing::{Standing, standing};
use crate::office::win_rate;
use crate::outside::cabinet::{self, Row};
use crate::outside::{files, kept};
use crate::reading::{Problems, Sources};
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Overview {
    #[command(flatten)]
    place: In,
    /// As of this day; else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
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

pub(super) fn jobs(arguments: &Jobs) -> ExitCode {
    let format = arguments.overview.format;
    with_accounts(&arguments.overview, |jobs, today| {
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

pub(super) fn owed(arguments: &Overview) -> ExitCode {
    with_accounts(arguments, |jobs, today| {
        let jobs = || jobs.iter();
        let open = jobs().flat_map(|(number, account)| ageing::open(number, account, today));
        let open: Vec<OpenInvoice> = open.collect();
        arguments.format.told(&ledger::invoices(), &open, || {
            let late = jobs().flat_map(|(number, account)| charges(number, account, today));
            ledger::owed(&open) + &ledger::late(&late.collect::<Vec<_>>(), today)
        })
    })
}

/// Every job on record, by number.
fn with_accounts(
    arguments: &Overview,
    show: impl FnOnce(&BTreeMap<String, Account<'_>>, Day) -> String,
) -> ExitCode {
    let mut problems = Problems::default();
    let done = arguments.place.home(&mut problems).and_then(|home| {
        let folder = cabinet::folder(&home);
        let names = cabinet::names(&folder, &mut problems);
        let rows: BTreeMap<String, Row> = names
            .iter()
            .map(|(number, names)| {
                let row = cabinet::row(&folder, names, &mut problems);
                (number.to_string(), row)
            })
            .collect();
        if !problems.is_empty() {
            return None;
        }
        let accounts = rows
            .iter()
            .map(|(number, row)| (number.clone(), Account::replay(&row.records)))
            .collect();
        say(&show(&accounts, arguments.on.unwrap_or_else(files::today)));
        Some(())
    });
    shown(done, &problems, &Sources::default())
}

#[derive(Debug, clap::Args)]
pub(super) struct Statement {
    #[command(flatten)]
    target: Target,
}

pub(super) fn statement(arguments: &Statement) -> ExitCode {
    arguments.target.look(|case| {
        say(&ledger::statement(case.number, case.account));
        let charges = charges(case.number, case.account, case.day);
        say(&ledger::late(&charges, case.day));
    })
}

/// By the terms the customer signed: those of the business file that the quote kept.
fn charges(number: &str, account: &Account<'_>, today: Day) -> Vec<(String, Late)> {
    let rule = kept::business(account).and_then(|business| business.invoices.late_charge);
    rule.map(|rule| ageing::charges(number, account, today, rule))
        .unwrap_or_default()
}
