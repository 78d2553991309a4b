//! The folder of records beside `business.yaml`: reading jobs from it, filing what happens.

use std::collections::BTreeMap;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use super::files::record_folder::{self, Held};
use crate::input::business::Numbers;
use crate::input::phrases::Number;
use crate::office::name::Name;
use crate::office::record::{Happened, RECORD, RULES, Record};
use crate::office::text;
use crate::reading::{Problem, Problems};
use crate::values::Day;

/// The program that writes records, with its version.
pub const PROGRAM: &str = concat!("flatwork ", env!("CARGO_PKG_VERSION"));

/// Where the records of a business lie.
pub fn folder(home: &Path) -> PathBuf {
    home.join("records")
}

/// The records of one job, in their order.
#[derive(Clone, Debug, Default)]
pub struct JobRecords {
    pub records: Vec<Record>,
    pub seals: Vec<String>,
}

impl JobRecords {
    /// The place after the last.
    pub fn next(&self) -> u32 {
        self.records.last().map_or(1, |record| record.place + 1)
    }
}

/// Names of records by job; what is no record is left out.
pub fn names(folder: &Path, problems: &mut Problems) -> BTreeMap<Number, Vec<Name>> {
    let mut jobs: BTreeMap<Number, Vec<Name>> = BTreeMap::new();
    let listed = match record_folder::names(folder) {
        Ok(listed) => listed,
        Err(error) => {
            problems.push(unreadable(folder, &error));
            return jobs;
        }
    };
    for file in listed {
        if let Some(name) = file.strip_suffix(".json").and_then(Name::read) {
            jobs.entry(name.number.clone()).or_default().push(name);
        }
    }
    for names in jobs.values_mut() {
        names.sort();
    }
    jobs
}

/// Reads the records of these names; each that cannot be read is reported.
pub fn row(folder: &Path, names: &[Name], problems: &mut Problems) -> JobRecords {
    let mut row = JobRecords::default();
    for name in names {
        let file = format!("{name}.json");
        let text = match record_folder::read(folder, &file) {
            Ok(bytes) => String::from_utf8_lossy(&bytes).into_owned(),
            Err(error) => {
                problems.push(unreadable(&folder.join(&file), &error));
                continue;
            }
        };
        match Record::from_text(&text) {
            Ok((record, seal)) => {
                row.records.push(record);
                row.seals.push(seal);
            }
            Err(error) => problems.push(
                Problem::new(
                    "bad-record",
                    format!(
                        "`{}` is no sound record: {error}",
                        folder.join(&file).display()
                    ),
                )
                .help("bring it back from a copy; `flatwork verify` looks at all of them"),
            ),
        }
    }
    row
}

fn unreadable(path: &Path, error: &std::io::Error) -> Problem {
    Problem::new(
        "unreadable-records",
        format!("cannot read `{}`: {error}", path.display()),
    )
    .help("check the permissions of the folder")
}

/// The records of `number`, or a problem that says there are none.
pub fn of_number(folder: &Path, number: &str, problems: &mut Problems) -> Option<JobRecords> {
    let jobs = names(folder, problems);
    let found = Number::written(number).and_then(|number| jobs.get(&number));
    let Some(found) = found else {
        let known = jobs.keys().map(Number::text);
        let problem = Problem::new(
            "no-such-quote",
            format!("no quote {number} was issued from here"),
        );
        problems.push(match crate::reading::suggest::closest(number, known) {
            Some(near) => problem.help(format!("did you mean {near}? `flatwork jobs` lists all")),
            None => problem
                .help("`flatwork jobs` lists all; `flatwork quote FILE --issue` gives a number"),
        });
        return None;
    };
    let before = problems.len();
    let row = row(folder, found, problems);
    (problems.len() == before).then_some(row)
}

/// The next number of the row of this day, and the seal of the first record of the number before.
pub fn next_number(
    held: &Held,
    numbers: &Numbers,
    day: Day,
    problems: &mut Problems,
) -> Option<(Number, Option<String>)> {
    let before = problems.len();
    let jobs = names(held.folder(), problems);
    let pattern = &numbers.pattern.value;
    let last = jobs
        .keys()
        .filter_map(|number| Some((pattern.count(day, number)?, number)))
        .max();
    let found = match last {
        None => (pattern.number(day, numbers.start), None),
        Some((count, number)) => {
            let first = &jobs[number][..1];
            let row = row(held.folder(), first, problems);
            (pattern.number(day, count + 1), row.seals.first().cloned())
        }
    };
    (problems.len() == before).then_some(found)
}

/// A record that is about to be filed.
pub fn record(
    number: &str,
    place: u32,
    day: Day,
    previous: Option<String>,
    what: Happened,
) -> Record {
    Record {
        record: RECORD,
        rules: RULES,
        program: PROGRAM.to_owned(),
        number: number.to_owned(),
        place,
        day: text::Day(day),
        previous,
        what,
    }
}

/// Files a record, and the PDF that belongs to it.
///
/// The record comes first: it holds all that the PDF is made of, so a PDF lost to a power cut
/// can be made again, and a number is never taken without its record.
pub fn file(held: &Held, record: &Record, pdf: Option<&[u8]>) -> Result<Name, NotFiled> {
    let number = Number::written(&record.number)
        .ok_or_else(|| NotFiled::Record(ErrorKind::InvalidInput.into()))?;
    let name = Name {
        number,
        place: record.place,
        event: record.what.event(),
    };
    held.publish(&format!("{name}.json"), record.to_text().as_bytes())
        .map_err(NotFiled::Record)?;
    if let Some(bytes) = pdf {
        held.publish(&format!("{name}.pdf"), bytes)
            .map_err(|error| NotFiled::Pdf(name.clone(), error))?;
    }
    Ok(name)
}

/// What could not be filed.
#[derive(Debug)]
pub enum NotFiled {
    /// Nothing was recorded.
    Record(std::io::Error),
    /// The record is kept, its PDF is not.
    Pdf(Name, std::io::Error),
}
