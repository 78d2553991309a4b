//! Each question of advice, once where it has something to say and once where it has not.

mod money;
mod options;
mod seasons;
mod shapes;
mod site;
mod slabs;
mod steel;
mod steps;
mod supply;
mod surfaces;

use flatwork::inside::advice::advice;
use flatwork::inside::costing::{Pricing, offer, prices};
use flatwork::inside::input::{book, business, job};
use flatwork::inside::reading::{Problem, Problems, Sources, yaml};

const BUSINESS: &str = include_str!("../../../demo-quotes/business.yaml");
const BOOK: &str = crate::support::BOOK;

/// A patio that no question has anything to say about.
const PATIO: &str = "\
customer: Ira Sample
quoted: 2026-04-01
pour: 2026-05-01
exposure: frost
slabs:
  patio: {size: 24 ft x 16 ft, edges: {north: house}}
remove:
  - lawn: {size: 384 sq ft x 8 in, of: soil}
";

/// The three files of a job.
#[derive(Clone)]
struct Files {
    job: String,
    business: String,
    book: String,
}

impl Files {
    fn new() -> Self {
        Self {
            job: PATIO.to_owned(),
            // Water of a patio runs from the house.
            business: swapped(
                BUSINESS,
                "joints: 10 ft, fall: 1/4 in per ft}",
                "joints: 10 ft, fall: 1/4 in per ft south}",
            ),
            book: BOOK.to_owned(),
        }
    }

    #[track_caller]
    fn job(self, old: &str, new: &str) -> Self {
        Self {
            job: swapped(&self.job, old, new),
            ..self
        }
    }

    #[track_caller]
    fn business(self, old: &str, new: &str) -> Self {
        Self {
            business: swapped(&self.business, old, new),
            ..self
        }
    }

    /// With these normals of months in place of the business's own; none where nothing is said.
    #[track_caller]
    fn normals(self, said: &str) -> Self {
        let from = self.business.find("  normals:").expect("normals");
        let (own, _) = self.business[from..].split_once("  walk:").expect("an end");
        let own = own.to_owned();
        self.business(&own, said)
    }

    #[track_caller]
    fn book(self, old: &str, new: &str) -> Self {
        Self {
            book: swapped(&self.book, old, new),
            ..self
        }
    }

    /// Everything that is advised, with the text each place points at.
    #[track_caller]
    fn all(&self) -> Vec<(Problem, String)> {
        let (mut sources, mut problems) = (Sources::default(), Problems::default());
        let mut read = |name: &str, text: &str, problems: &mut Problems| {
            let id = sources.add(name, text.to_owned());
            yaml::read(id, &sources, problems)
        };
        let nodes = (
            read("business.yaml", &self.business, &mut problems),
            read("book.yaml", &self.book, &mut problems),
            read("job.yaml", &self.job, &mut problems),
        );
        let (Ok(business), Ok(book), Ok(takeoff)) = nodes else {
            panic!("{problems:?}");
        };
        let business = business::read(&business, &mut problems).expect("a business");
        let book = book::read(&book, &mut problems).expect("a book");
        let takeoff = job::read(&takeoff, &mut problems)
            .and_then(|written| job::resolve(written, "patio", &book, &business, &mut problems));
        assert!(problems.is_empty(), "{problems:?}");
        let takeoff = takeoff.expect("a job");
        let quoted = takeoff.head.quoted.expect("a day of the quote");
        let days: Vec<_> = takeoff
            .placements
            .iter()
            .map(|pour| {
                prices(
                    &book,
                    pour.day.as_ref().expect("a day").value,
                    &takeoff.name,
                )
            })
            .collect();
        let at = Pricing {
            book: &book,
            business: &business,
            days: &days,
        };
        let offer = offer(&takeoff, at, &mut problems);
        assert!(problems.is_empty(), "{problems:?}");
        let found = advice(&takeoff, at, &offer.expect("an offer"), quoted);
        let slice = |one: &Problem| {
            one.place
                .map(|place| sources.slice(place).to_owned())
                .unwrap_or_default()
        };
        found.iter().map(|one| (one.clone(), slice(one))).collect()
    }

    /// One answer to one question, whose message and help hold these words.
    #[track_caller]
    fn says(&self, code: &str, message: &str, help: &str) -> String {
        let all = self.all();
        let found: Vec<_> = all.iter().filter(|(one, _)| one.code == code).collect();
        let [(one, at)] = found[..] else {
            panic!("{} answers of {code} in {all:#?}", found.len());
        };
        assert!(one.message.contains(message), "{}", one.message);
        let said = one.help.as_deref().unwrap_or_default();
        assert!(said.contains(help), "{said}");
        at.clone()
    }

    #[track_caller]
    fn silent(&self, code: &str) {
        let all = self.all();
        assert!(all.iter().all(|(one, _)| one.code != code), "{all:#?}");
    }
}

/// The text with one of its parts exchanged; the part must be there.
#[track_caller]
fn swapped(text: &str, old: &str, new: &str) -> String {
    assert!(text.contains(old), "no {old}");
    text.replacen(old, new, 1)
}

const SIZE: &str = "size: 24 ft x 16 ft";
const EXPOSURE: &str = "exposure: frost";

#[test]
fn a_sound_job_hears_nothing() {
    let codes: Vec<&str> = Files::new().all().iter().map(|(one, _)| one.code).collect();
    assert_eq!(codes, Vec::<&str>::new());
}

#[test]
fn answers_are_always_the_same_and_in_one_line() {
    let files = Files::new().job(SIZE, "size: 40 ft x 3 ft, joints: none, thickness: 2 in");
    let (one, other) = (files.all(), files.all());
    assert_eq!(one, other);
    assert!(2 < one.len());
    for (problem, _) in &one {
        let start = problem.message.chars().next().unwrap();
        assert!(!start.is_uppercase() && !problem.message.contains('\n'));
        assert!(!problem.message.ends_with('.'), "{}", problem.message);
        assert!(problem.help.is_some() && problem.place.is_some());
    }
}
