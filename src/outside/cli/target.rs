//! What the commands on a numbered job share: which job, which day, which folder.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use super::ran::Ran;
use crate::documents::views::office::recorded;
use crate::input::business::Business;
use crate::office::account::Account;
use crate::office::job::Job;
use crate::office::record::{Happened, Input, Pdf};
use crate::outside::bill_pdf::bill_pdf;
use crate::outside::business_folder;
use crate::outside::files::{self, Files};
use crate::outside::records;
use crate::reading::{Problems, Read};
use crate::values::Day;

/// Where the records lie.
#[derive(Debug, clap::Args)]
pub(super) struct In {
    /// The business folder; else the nearest one upward with a business.yaml
    #[arg(long = "in", value_name = "FOLDER")]
    folder: Option<PathBuf>,
}

impl In {
    pub(super) fn home(&self, problems: &mut Problems) -> Read<PathBuf> {
        let from = self.folder.as_deref().unwrap_or(Path::new("."));
        business_folder::find(from, problems)
    }
}

/// A job, and the day something happened to it.
#[derive(Debug, clap::Args)]
pub(super) struct Target {
    /// The number of the quote, as 2026-0041
    pub number: String,
    /// The day it happened, as 2026-05-04; else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    on: Option<Day>,
    #[command(flatten)]
    place: In,
    /// Says what would be written, and writes nothing
    #[arg(long)]
    pub dry_run: bool,
}

/// A job on record, while a command looks at it.
pub(super) struct JobOnRecord<'a> {
    pub job: Job<'a>,
    /// The business folder.
    pub home: &'a Path,
}

impl JobOnRecord<'_> {
    /// The business as it is now, and its text as a record keeps it.
    pub(super) fn business(&self, files: &mut Files) -> Read<(Business, Input)> {
        business_folder::business(self.home, files)
    }
}

/// What is to be recorded, and the business that makes the customer's page of it, if there is one.
pub(super) struct Entry {
    pub what: Happened,
    pub business: Option<Business>,
}

impl Entry {
    /// Something that the customer gets no page of.
    pub(super) fn plain(what: Happened) -> Self {
        Self {
            what,
            business: None,
        }
    }

    pub(super) fn on_paper(what: Happened, business: Business) -> Self {
        Self {
            what,
            business: Some(business),
        }
    }
}

impl Target {
    /// Reads the job, asks `make` what happened, makes the customer's page of it, holds it against
    /// the rules and files it.
    pub(super) fn record(
        &self,
        late: bool,
        files: &mut Files,
        make: impl FnOnce(&JobOnRecord<'_>, &mut Files) -> Read<Entry>,
    ) -> Ran {
        let home = self.place.home(&mut files.problems)?;
        let folder = records::folder(&home);
        let held = records::hold(&folder, &mut files.problems)?;
        let row = records::of_number(&folder, &self.number, &mut files.problems)?;
        let account = Account::replay(&row.records);
        let job = self.job(&account);
        let Entry { mut what, business } = make(&JobOnRecord { job, home: &home }, files)?;
        let name = row.next(what.event());
        let page = match &business {
            Some(business) => bill_pdf(job, business, &what, &mut files.problems)?,
            None => None,
        };
        if let Some(bytes) = &page {
            what.put_on_paper(Pdf::new(format!("{name}.pdf"), bytes));
        }
        files.problems.none()?;
        let allowed = job.may(&what, late);
        allowed.map_err(|problem| files.refuse(problem))?;
        let mut said = recorded::text(job, &what, business.as_ref());
        if self.dry_run {
            return Ok(said + "nothing was written (--dry-run)\n");
        }
        let record = row.record(job.day, what);
        records::file(&held, &name, &record, page.as_deref(), &mut files.problems)?;
        if let Some(pdf) = record.what.pdf() {
            let path = files::relative(&folder.join(&pdf.name));
            let _ = writeln!(said, "paper       {}", path.display());
        }
        let _ = writeln!(said, "on record as {name}");
        Ok(said)
    }

    /// Reads the job and hands it to `look`; nothing is written.
    pub(super) fn look(
        &self,
        files: &mut Files,
        look: impl FnOnce(Job<'_>, &mut Files) -> Ran,
    ) -> Ran {
        let home = self.place.home(&mut files.problems)?;
        let folder = records::folder(&home);
        let row = records::of_number(&folder, &self.number, &mut files.problems)?;
        look(self.job(&Account::replay(&row.records)), files)
    }

    fn job<'a>(&'a self, account: &'a Account<'a>) -> Job<'a> {
        Job {
            number: &self.number,
            day: self.on.unwrap_or_else(files::today),
            account,
        }
    }
}
