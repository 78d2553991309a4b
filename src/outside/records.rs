//! The folder of records beside `business.yaml`: reading jobs from it, filing what happens.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::files::record_folder::{self, Held};
use crate::input::business::Numbers;
use crate::input::phrases::Number;
use crate::office::name::Name;
use crate::office::record::{Event, Happened, RECORD, RULES, Record};
use crate::office::text;
use crate::reading::{Problem, Problems, Read, suggest};
use crate::values::Day;

/// The program that writes records, with its version.
pub const PROGRAM: &str = concat!("flatwork ", env!("CARGO_PKG_VERSION"));

/// Where the records of a business lie.
pub fn folder(home: &Path) -> PathBuf {
    home.join("records")
}

/// The folder of records, held against other writers.
pub fn hold(folder: &Path, problems: &mut Problems) -> Read<Held> {
    Held::new(folder).map_err(|error| {
        let message = format!("cannot write in `{}`: {error}", folder.display());
        problems.push(
            Problem::new("unwritable-records", message)
                .help("check the permissions of the folder and the room on the disk"),
        )
    })
}

/// The records of one job, in their order.
#[derive(Clone, Debug)]
pub struct JobRecords {
    pub number: Number,
    pub records: Vec<Record>,
    pub seals: Vec<String>,
    /// The seal of the first record of the number before, for the first record of a new job.
    pub before: Option<String>,
}

impl JobRecords {
    pub fn new(number: Number, before: Option<String>) -> Self {
        Self {
            number,
            records: Vec::new(),
            seals: Vec::new(),
            before,
        }
    }

    /// The name of the next record, if this happens.
    pub fn next(&self, event: Event) -> Name {
        Name {
            number: self.number.clone(),
            place: self.records.last().map_or(1, |record| record.place + 1),
            event,
        }
    }

    /// The record that says so.
    pub fn record(&self, day: Day, what: Happened) -> Record {
        Record {
            record: RECORD,
            rules: RULES,
            program: PROGRAM.to_owned(),
            number: self.number.to_string(),
            place: self.next(what.event()).place,
            day: text::Day(day),
            previous: self.seals.last().or(self.before.as_ref()).cloned(),
            what,
        }
    }
}

/// Names of records by job; what is no record is left out.
pub fn names(folder: &Path, problems: &mut Problems) -> BTreeMap<Number, Vec<Name>> {
    let mut jobs: BTreeMap<Number, Vec<Name>> = BTreeMap::new();
    let listed = record_folder::names(folder).unwrap_or_else(|error| {
        problems.push(unreadable(folder, &error));
        Vec::new()
    });
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
pub fn row(folder: &Path, number: &Number, names: &[Name], problems: &mut Problems) -> JobRecords {
    let mut row = JobRecords::new(number.clone(), None);
    for name in names {
        let path = folder.join(format!("{name}.json"));
        let text = match record_folder::read(folder, &format!("{name}.json")) {
            Ok(bytes) => String::from_utf8_lossy(&bytes).into_owned(),
            Err(error) => {
                problems.push(unreadable(&path, &error));
                continue;
            }
        };
        match Record::from_text(&text) {
            Ok((record, seal)) => {
                row.records.push(record);
                row.seals.push(seal);
            }
            Err(error) => {
                let message = format!("`{}` is no sound record: {error}", path.display());
                problems.push(
                    Problem::new("bad-record", message)
                        .help("bring it back from a copy; `flatwork verify` looks at all of them"),
                );
            }
        }
    }
    row
}

fn unreadable(path: &Path, error: &std::io::Error) -> Problem {
    let message = format!("cannot read `{}`: {error}", path.display());
    Problem::new("unreadable-records", message).help("check the permissions of the folder")
}

/// The records of `number`, or a problem that says there are none.
pub fn of_number(folder: &Path, number: &str, problems: &mut Problems) -> Read<JobRecords> {
    let jobs = names(folder, problems);
    let found = Number::written(number).and_then(|number| jobs.get_key_value(&number));
    let Some((number, names)) = found else {
        let near = suggest::closest(number, jobs.keys().map(Number::text));
        let help = near.map_or_else(
            || "`flatwork jobs` lists all; `flatwork quote FILE --issue` gives a number".to_owned(),
            |near| format!("did you mean {near}? `flatwork jobs` lists all"),
        );
        let message = format!("no quote {number} was issued from here");
        return Err(problems.push(Problem::new("no-such-quote", message).help(help)));
    };
    let before = problems.len();
    let row = row(folder, number, names, problems);
    problems.none_since(before)?;
    Ok(row)
}

/// A job of the next number in the row of this day.
pub fn new_job(
    held: &Held,
    numbers: &Numbers,
    day: Day,
    problems: &mut Problems,
) -> Read<JobRecords> {
    let before = problems.len();
    let jobs = names(held.folder(), problems);
    let pattern = &numbers.pattern.value;
    let counted = jobs
        .keys()
        .filter_map(|number| Some((pattern.count(day, number)?, number)));
    let found = match counted.max() {
        None => JobRecords::new(pattern.number(day, numbers.start), None),
        Some((count, number)) => {
            let first = row(held.folder(), number, &jobs[number][..1], problems);
            JobRecords::new(pattern.number(day, count + 1), first.seals.first().cloned())
        }
    };
    problems.none_since(before)?;
    Ok(found)
}

/// Files a record, and the PDF that belongs to it.
///
/// The record comes first: it holds all that the PDF is made of, so a PDF lost to a power cut
/// can be made again, and a number is never taken without its record.
pub fn file(
    held: &Held,
    name: &Name,
    record: &Record,
    pdf: Option<&[u8]>,
    problems: &mut Problems,
) -> Read<()> {
    let filed = held.publish(&format!("{name}.json"), record.to_text().as_bytes());
    filed.map_err(|error| {
        let message = format!("the record could not be written: {error}");
        problems.push(
            Problem::new("not-filed", message)
                .help("nothing was recorded; make room on the disk or try once more"),
        )
    })?;
    let Some(bytes) = pdf else {
        return Ok(());
    };
    held.publish(&format!("{name}.pdf"), bytes)
        .map_err(|error| {
            let message = format!("{name} is on record, but its PDF could not be written: {error}");
            problems.push(
                Problem::new("pdf-not-filed", message)
                    .help("make room on the disk; `flatwork verify --mend` writes the PDF again"),
            )
        })
}
