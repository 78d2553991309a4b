//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

mod asked;
mod chosen;
mod names;
mod pours;
mod shape;
mod slab;

use std::collections::{BTreeMap, BTreeSet};

use chosen::{Site, chosen};
use names::known_in_unit;
use pours::pours;

use super::takeoff::{Slab, Takeoff};
use super::written::{JobWritten, SlabWritten};
use super::{ExtraWhat, positions};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::reading::Problems;

/// The takeoff with every name known, or every name that is not.
pub fn resolve(
    written: JobWritten,
    file_name: &str,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> Option<Takeoff> {
    let before = problems.len();
    let mut slabs: Vec<(Slab, SlabWritten)> = Vec::new();
    let mut unsure: BTreeSet<String> = written.unread;
    for slab in written.slabs {
        if let Some(resolved) = slab::slab(&slab, book, business, problems) {
            slabs.push((resolved, slab));
        } else {
            unsure.insert(slab.key.value);
        }
    }
    let placements = pours(&written.pours, &mut slabs, &unsure, problems);
    let contacts = positions::place(&mut slabs, &unsure, problems);
    let named = asked::Named {
        slabs: slabs.iter().map(|(slab, _)| slab.key.as_str()).collect(),
        removals: &written.removals,
        extras: &written.extras,
        unsure: &unsure,
    };
    asked::check(&written.options, &named, problems);
    let extras = written.extras.iter().chain(
        written
            .options
            .iter()
            .flat_map(|group| group.options.iter().flat_map(|option| &option.add)),
    );
    for extra in extras {
        if let ExtraWhat::Item(amount) = &extra.what {
            known_in_unit(&extra.name, amount, book, problems);
        }
    }
    let job = Takeoff {
        place: written.place,
        name: written.name.unwrap_or_else(|| file_name.to_owned()),
        title: written.title,
        customer: written.customer,
        measured: written.measured,
        quoted: written.quoted,
        exposure: written.exposure,
        access: written.access,
        difficulty: written.difficulty,
        slabs: Vec::new(),
        placements,
        removals: written.removals,
        extras: written.extras,
        added: Vec::new(),
        sets: written.sets,
        fixed_price: written.fixed_price,
        options: written.options.into(),
        otherwise: BTreeMap::new(),
        assumptions: written.assumptions,
        not_included: written.not_included,
        photos: written.photos,
    };
    let site = Site {
        slabs,
        contacts,
        incomplete: !unsure.is_empty(),
        book,
        business,
    };
    let job = chosen(job, &site, problems)?;
    (problems.len() == before).then_some(job)
}
