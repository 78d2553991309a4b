//! What the commands on a numbered job share: which job, which day, which folder.

use std::path::PathBuf;
use std::process::ExitCode;

use super::{PROBLEMS, held, say};
use crate::documents::billing::Billing;
use crate::input::business::Business;
use crate::input::phrases::Number;
use crate::office::account::Account;
use crate::office::chain::hash;
use crate::office::name::{Event, Name};
use crate::office::record::{Happened, Pdf};
use crate::office::rules;
use crate::outside::records;
use crate::outside::{business_folder, files};
use crate::reading::{Problems, Sources, caret};
use crate::values::Day;

/// Where the records lie.
#[derive(Debug, clap::Args)]
pub(super) struct In {
    /// The business folder; else the nearest one upward with a business.yaml
    #[arg(long = "in", value_name = "FOLDER")]
    folder: Option<PathBuf>,
}

impl In {
    pub(super) fn home(&self, problems: &mut Problems) -> Option<PathBuf> {
        let from = self.folder.clone().unwrap_or_else(|| PathBuf::from("."));
        business_folder::find(&from, problems)
    }
}

/// A job, and the day something happened to it.
#[derive(Debug, clap::Args)]
pub(super) struct Target {
    /// The number of the quote, as 2026-0041
    pub number: String,
    /// The day it happened, as 2026-05-04; else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    on: Option<Day>,
    #[command(flatten)]
    place: In,
    /// Says what would be written, and writes nothing
    #[arg(long)]
    pub dry_run: bool,
}

/// A job on record, while a command looks at it.
pub(super) struct Case<'a> {
    pub number: &'a str,
    pub day: Day,
    /// The business folder.
    pub home: PathBuf,
    pub account: &'a Account<'a>,
}

impl<'a> Case<'a> {
    /// What its papers are made of.
    pub(super) fn billing(&self, business: &'a Business) -> Billing<'a> {
        Billing {
            number: self.number,
            day: self.day,
            account: self.account,
            business,
        }
    }

    /// The PDF of the next record, when that is of this event.
    pub(super) fn pdf(&self, event: Event, bytes: &[u8]) -> Option<Pdf> {
        let stem = Name {
            number: Number::written(self.number)?,
            place: self.account.places + 1,
            event,
        };
        Some(Pdf {
            name: format!("{stem}.pdf"),
            sha256: hash(bytes),
        })
    }
}

/// What is to be recorded, its PDF if it has one, and what the terminal says of it.
pub(super) struct Entry {
    pub what: Happened,
    pub pdf: Option<Vec<u8>>,
    pub said: String,
}

impl Target {
    pub(super) fn day(&self) -> Day {
        self.on.unwrap_or_else(files::today)
    }

    /// Reads the job, asks `make` what happened, holds it against the rules and files it.
    pub(super) fn record(
        &self,
        late: bool,
        make: impl FnOnce(&Case<'_>, &mut Sources, &mut Problems) -> Option<Entry>,
    ) -> ExitCode {
        let (mut sources, mut problems) = (Sources::default(), Problems::default());
        let done = self.recorded(late, make, &mut sources, &mut problems);
        shown(done, &problems, &sources)
    }

    fn recorded(
        &self,
        late: bool,
        make: impl FnOnce(&Case<'_>, &mut Sources, &mut Problems) -> Option<Entry>,
        sources: &mut Sources,
        problems: &mut Problems,
    ) -> Option<()> {
        let home = self.place.home(problems)?;
        let held = held(&records::folder(&home), problems)?;
        let row = records::of_number(held.folder(), &self.number, problems)?;
        let account = Account::replay(&row.records);
        let day = self.day();
        let case = Case {
            number: &self.number,
            day,
            home,
            account: &account,
        };
        let entry = make(&case, sources, problems)?;
        if !problems.is_empty() {
            return None;
        }
        if let Err(refusal) = rules::may(&account, &self.number, day, &entry.what, late) {
            problems.push(super::refused(refusal));
            return None;
        }
        if self.dry_run {
            say(&entry.said);
            say("nothing was written (--dry-run)\n");
            return Some(());
        }
        let previous = row.seals.last().cloned();
        let folder = records::folder(&case.home);
        let pdf = entry.what.pdf().map(|pdf| folder.join(&pdf.name));
        let record = records::record(&self.number, row.next(), day, previous, entry.what);
        let filed = records::file(&held, &record, entry.pdf.as_deref());
        let name = super::filed(filed, problems)?;
        say(&entry.said);
        if let Some(pdf) = pdf {
            say(&format!(
                "paper       {}\n",
                files::relative(&pdf).display()
            ));
        }
        say(&format!("on record as {name}\n"));
        Some(())
    }

    /// Reads the job and hands it to `look`, which may find problems; nothing is written.
    pub(super) fn look_for(
        &self,
        look: impl FnOnce(&Case<'_>, &mut Problems) -> Option<()>,
    ) -> ExitCode {
        let mut problems = Problems::default();
        let done = self.place.home(&mut problems).and_then(|home| {
            let row = records::of_number(&records::folder(&home), &self.number, &mut problems)?;
            let account = Account::replay(&row.records);
            let case = Case {
                number: &self.number,
                day: self.day(),
                home,
                account: &account,
            };
            look(&case, &mut problems)
        });
        shown(done, &problems, &Sources::default())
    }

    /// Reads the job and hands it to `look`; nothing is written.
    pub(super) fn look(&self, look: impl FnOnce(&Case<'_>)) -> ExitCode {
        self.look_for(|case, _| {
            look(case);
            Some(())
        })
    }
}

/// Shows every problem, if there is one.
pub(super) fn shown(done: Option<()>, problems: &Problems, sources: &Sources) -> ExitCode {
    if done.is_some() && problems.is_empty() {
        return ExitCode::SUCCESS;
    }
    eprint!("{}", caret::show_all(problems, "error", sources));
    let count = problems.len();
    eprintln!(
        "\n{count} {} found; nothing was written",
        if count == 1 { "problem" } else { "problems" }
    );
    ExitCode::from(PROBLEMS)
}
