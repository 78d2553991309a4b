//! Whether the records still say what they said: seals, chain, figures, pages.

mod chain;
mod remake;

use std::path::Path;

use super::records::{self, JobRecords};
use crate::input::business::Business;
use crate::office::name::Name;
use crate::reading::Problems;

/// What was looked at, and what is wrong.
#[derive(Debug, Default)]
pub struct Report {
    pub records: usize,
    pub pdfs: usize,
    /// Quotes and bills whose figures were worked out once more.
    pub figures: usize,
    /// PDFs that were made once more and compared byte by byte.
    pub pages: usize,
    pub faults: Vec<String>,
    /// PDFs that are lost and could be made again, as they were.
    pub lost: Vec<(Name, Vec<u8>)>,
}

impl Report {
    fn fault(&mut self, fault: String) {
        self.faults.push(fault);
    }
}

/// Looks at every record of a business folder.
pub fn verify(home: &Path, business: &Business, problems: &mut Problems) -> Report {
    let folder = records::folder(home);
    let mut report = Report::default();
    let jobs = records::names(&folder, problems);
    chain::strangers(&folder, &mut report);
    chain::numbers(&jobs, &business.numbers.pattern.value, &mut report);
    let mut firsts = Vec::new();
    for (number, names) in &jobs {
        let mut found = Problems::default();
        let row = records::row(&folder, number, names, &mut found);
        report
            .faults
            .extend(found.iter().map(|problem| problem.message.clone()));
        report.records += names.len();
        if row.records.len() != names.len() {
            continue;
        }
        chain::row(number.text(), names, &row, &mut report);
        firsts.push((number.clone(), first(&row)));
        for (at, name) in names.iter().enumerate() {
            remake::record(home, &row, at, name, &mut report);
        }
    }
    chain::firsts(&firsts, &business.numbers.pattern.value, &mut report);
    report
}

/// The seal of a row's first record, and the one it follows.
fn first(row: &JobRecords) -> (String, Option<String>) {
    (
        row.seals.first().cloned().unwrap_or_default(),
        row.records
            .first()
            .and_then(|record| record.previous.clone()),
    )
}
