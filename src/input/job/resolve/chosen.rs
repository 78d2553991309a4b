//! The job with every choice: which slabs it has, how they are made, what is left out.
//!
//! Whatever a choice leaves alone is one and the same slab in all of them, so that
//! it is measured once.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::{sections, slab};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::input::job::EdgePart;
use crate::input::job::positions::{self, Contact};
use crate::input::job::shared;
use crate::input::job::takeoff::{Slab, Takeoff};
use crate::input::job::written::SlabWritten;
use crate::input::job::written::options::{Choice, MOST, OptionItem, SlabChange, choices, count};
use crate::reading::{At, Problem, Problems, Read};

/// The slabs as measured, each at its place, before any edge is shared.
pub(super) struct Site<'a> {
    pub slabs: Vec<(Slab, SlabWritten)>,
    pub contacts: Vec<Contact>,
    /// Whether no slab is missing here for a problem of its own.
    pub complete: Read<()>,
    pub book: &'a PriceBook,
    pub business: &'a Business,
}

/// The slabs that were made so far.
struct Made<'a> {
    site: &'a Site<'a>,
    /// For each slab, its versions.
    versions: Vec<Vec<Version<'a>>>,
}

/// One slab with the values that some options give it.
struct Version<'a> {
    changes: Vec<&'a SlabChange>,
    /// What these values make.
    slab: Read<Slab>,
    /// The same with the edges of different neighbors, before steps are laid on them.
    made: Vec<(Vec<EdgePart>, Arc<Slab>)>,
}

/// `job` as quoted, and with every other choice; what no choice can be is reported.
pub(super) fn chosen(job: &Takeoff, site: &Site<'_>, problems: &mut Problems) -> Read<Takeoff> {
    let groups = Arc::clone(&job.options);
    let mut made = Made {
        site,
        versions: site
            .slabs
            .iter()
            .map(|(slab, _)| vec![Version::as_measured(slab)])
            .collect(),
    };
    // Many choices meet the same slip.
    let mut found = Problems::default();
    let mut one = |choice: &Choice| {
        let taken = choice.taken(&groups);
        let slabs = made.slabs(&taken, &mut found)?;
        Read::Ok(with(job, slabs, &taken))
    };
    let quoted = one(&Choice::as_quoted(&groups));
    let mut otherwise: BTreeMap<Choice, Takeoff> = BTreeMap::new();
    if count(&groups) <= MOST {
        for choice in choices(&groups).into_iter().skip(1) {
            if let Ok(job) = one(&choice) {
                otherwise.insert(choice, job);
            }
        }
    }
    let mut told: Vec<Problem> = Vec::new();
    for problem in found {
        if !told.contains(&problem) {
            told.push(problem);
        }
    }
    problems.extend(told);
    Ok(Takeoff {
        otherwise,
        ..quoted?
    })
}

/// The job with these slabs, less what is dropped, and with what is added.
fn with(job: &Takeoff, slabs: Vec<Arc<Slab>>, taken: &[&OptionItem]) -> Takeoff {
    let dropped = dropped(taken);
    let mut job = job.clone();
    job.slabs = slabs;
    job.head
        .removals
        .retain(|one| !dropped.contains(one.name.value.as_str()));
    job.head
        .extras
        .retain(|one| !dropped.contains(one.name.value.as_str()));
    let planned = taken.iter().rev().find_map(|option| option.trips.clone());
    job.head.trips = planned.or(job.head.trips);
    job.added = taken
        .iter()
        .flat_map(|option| option.add.iter().cloned())
        .collect();
    job
}

fn dropped<'a>(taken: &[&'a OptionItem]) -> BTreeSet<&'a str> {
    let names = taken.iter().flat_map(|option| &option.drop);
    names.map(|name| name.value.as_str()).collect()
}

impl<'a> Made<'a> {
    /// The slabs when these options are taken.
    fn slabs(&mut self, taken: &[&'a OptionItem], problems: &mut Problems) -> Read<Vec<Arc<Slab>>> {
        let dropped = dropped(taken);
        let sound = self.placed(taken, &dropped, problems);
        let mut numbers: Vec<Option<usize>> = Vec::new();
        for (i, (slab, _)) in self.site.slabs.iter().enumerate() {
            if dropped.contains(slab.key.as_str()) {
                numbers.push(None);
            } else {
                let changes = taken
                    .iter()
                    .flat_map(|option| &option.change)
                    .filter(|change| change.slab.value == slab.key);
                numbers.push(Some(self.version(i, changes.collect(), problems)));
            }
        }
        let versions = &self.versions;
        let here = numbers.iter().enumerate().map(|(i, number)| {
            let slab = number.map(|number| versions[i][number].slab.as_ref());
            slab.transpose().map_err(|reported| *reported)
        });
        sound?;
        let here: Vec<Option<&Slab>> = here.collect::<Read<_>>()?;
        let edges = shared::edges(&here, &self.site.contacts);
        let numbered = numbers.into_iter().zip(edges).enumerate();
        let mut slabs = Vec::new();
        for (i, (number, edges)) in numbered {
            let Some(number) = number else { continue };
            let version = &mut self.versions[i][number];
            let known = version.made.iter().find(|(known, _)| *known == edges);
            if let Some((_, known)) = known {
                slabs.push(Arc::clone(known));
                continue;
            }
            let mut slab = Slab {
                edges: edges.clone(),
                ..version.slab.clone()?
            };
            sections::placed(&mut slab, &self.site.slabs[i].1, problems);
            let slab = Arc::new(slab);
            version.made.push((edges, Arc::clone(&slab)));
            slabs.push(slab);
        }
        Ok(slabs)
    }

    /// A slab is left, and none was placed by one that is dropped.
    fn placed(
        &self,
        taken: &[&OptionItem],
        dropped: &BTreeSet<&str>,
        problems: &mut Problems,
    ) -> Read<()> {
        let before = problems.len();
        let is_dropped = |name: &str| dropped.contains(name);
        let left = self
            .site
            .slabs
            .iter()
            .filter(|(slab, _)| !is_dropped(&slab.key));
        if left.clone().next().is_none() {
            self.site.complete?;
            let keys = || self.site.slabs.iter().map(|(slab, _)| &slab.key);
            let drops = taken.iter().filter_map(|option| {
                let of_slab = |name: &&At<String>| keys().any(|key| *key == name.value);
                Some((&option.name.value, option.drop.iter().find(of_slab)?))
            });
            let drops: Vec<(&String, &At<String>)> = drops.collect();
            // Work that never had a slab, such as a part of a change order, has none to lose.
            if let Some((_, last)) = drops.last() {
                let titles: Vec<String> = drops
                    .iter()
                    .map(|(title, _)| format!("`{title}`"))
                    .collect();
                let message = format!("with {} no slab is left", titles.join(" and "));
                problems.push(Problem::new("nothing-left", message).at(last.place).help("keep one slab in every choice; what excludes each other belongs under one `choose one`"));
            }
        }
        for (slab, written) in left {
            let Some(reference) = positions::reference(written) else {
                continue;
            };
            let mut drops = taken.iter().flat_map(|option| &option.drop);
            let Some(drop) = drops.find(|name| name.value == reference.value.slab) else {
                continue;
            };
            let word = if written.on.is_some() { "on" } else { "beside" };
            let message = format!(
                "`{}` lies {word} `{}`, which is dropped here",
                slab.key, drop.value
            );
            problems.push(
                Problem::new("placed-by-dropped", message)
                    .at(drop.place)
                    .also(reference.place, "its place is said here")
                    .help(format!(
                        "drop `{}` too, or say where it lies without `{}`",
                        slab.key, drop.value
                    )),
            );
        }
        problems.none_since(before)
    }

    /// The number of the version of slab `i` that these changes make.
    fn version(&mut self, i: usize, with: Vec<&'a SlabChange>, problems: &mut Problems) -> usize {
        let same = |version: &Version<'_>| {
            version.changes.len() == with.len()
                && version
                    .changes
                    .iter()
                    .zip(&with)
                    .all(|(one, other)| std::ptr::eq(*one, *other))
        };
        if let Some(known) = self.versions[i].iter().position(same) {
            return known;
        }
        let (measured, written) = &self.site.slabs[i];
        let mut written = written.clone();
        for change in &with {
            written.values = change.values.clone().or(&written.values).0;
        }
        let made = slab::slab(&written, self.site.book, self.site.business, problems);
        self.versions[i].push(Version {
            changes: with,
            slab: made.map(|slab| Slab {
                outline: measured.outline.clone(),
                placement: measured.placement,
                boxes: measured.boxes.clone(),
                ..slab
            }),
            made: Vec::new(),
        });
        self.versions[i].len() - 1
    }
}

impl Version<'_> {
    fn as_measured(slab: &Slab) -> Self {
        Self {
            changes: Vec::new(),
            slab: Ok(slab.clone()),
            made: Vec::new(),
        }
    }
}
