//! The files themselves: names, seals, places, links from each record to the one before it.

use std::collections::BTreeMap;
use std::path::Path;

use super::Report;
use crate::input::phrases::{Number, Pattern};
use crate::office::name::Name;
use crate::outside::files::record_folder;
use crate::outside::records::JobRecords;
use crate::values::Day;

/// Files that are no records: copies a synced folder makes of a conflict, and the like.
pub(super) fn strangers(folder: &Path, report: &mut Report) {
    let listed = record_folder::names(folder).unwrap_or_default();
    for file in listed {
        let stem = file
            .strip_suffix(".json")
            .or_else(|| file.strip_suffix(".pdf"));
        if stem.and_then(Name::read).is_none() {
            report.fault(format!(
                "`{file}` is no record: a copy made by a synced folder? Move it out after a look"
            ));
        }
    }
}

/// Numbers of a row leave no gap.
pub(super) fn numbers(jobs: &BTreeMap<Number, Vec<Name>>, pattern: &Pattern, report: &mut Report) {
    for (row, counts) in rows(jobs.keys(), pattern) {
        for pair in counts.windows(2) {
            let ((first, _), (second, _)) = (&pair[0], &pair[1]);
            if first + 1 != *second {
                report.fault(format!(
                    "between {} and {} of {row} a number is missing; bring its records back from a copy",
                    pair[0].1, pair[1].1
                ));
            }
        }
    }
}

/// Numbers by their row, in order; what does not fit the pattern is another series.
fn rows<'a>(
    numbers: impl Iterator<Item = &'a Number>,
    pattern: &Pattern,
) -> BTreeMap<String, Vec<(u32, &'a Number)>> {
    let mut rows: BTreeMap<String, Vec<(u32, &Number)>> = BTreeMap::new();
    for number in numbers {
        let mut years =
            (1990..=2200).filter_map(|year| format!("{year}-01-01").parse::<Day>().ok());
        let fits = years.find_map(|day| Some((pattern.row(day), pattern.count(day, number)?)));
        if let Some((row, count)) = fits {
            rows.entry(row).or_default().push((count, number));
        }
    }
    for counts in rows.values_mut() {
        counts.sort();
    }
    rows
}

/// The first record of each number follows the first of the number before.
pub(super) fn firsts(
    firsts: &[(Number, (String, Option<String>))],
    pattern: &Pattern,
    report: &mut Report,
) {
    let seals: BTreeMap<&Number, &(String, Option<String>)> =
        firsts.iter().map(|(number, seal)| (number, seal)).collect();
    for counts in rows(seals.keys().copied(), pattern).values() {
        for pair in counts.windows(2) {
            let (before, after) = (pair[0].1, pair[1].1);
            if pair[0].0 + 1 == pair[1].0 && seals[after].1.as_ref() != Some(&seals[before].0) {
                report.fault(format!(
                    "{after} does not follow the {before} that is here; one of them was replaced"
                ));
            }
        }
    }
}

/// Places from 1 without gap, each record following the seal of the one before.
pub(super) fn row(number: &str, names: &[Name], row: &JobRecords, report: &mut Report) {
    for (at, (name, record)) in names.iter().zip(&row.records).enumerate() {
        let place = u32::try_from(at + 1).unwrap_or(u32::MAX);
        if name.place != place {
            let told = if name.place < place {
                format!("{number} has two records with place {}", name.place)
            } else {
                format!("{number} has no record {place}")
            };
            report.fault(format!("{told}; bring the right ones back from a copy"));
            return;
        }
        let says_so = record.number == name.number.text()
            && record.place == name.place
            && record.what.event() == name.event;
        if !says_so {
            report.fault(format!("{name} holds another record than its name says"));
        }
        if 0 < at && record.previous.as_ref() != row.seals.get(at - 1) {
            report.fault(format!(
                "{name} does not follow the record before it; one of them was replaced"
            ));
        }
    }
}
