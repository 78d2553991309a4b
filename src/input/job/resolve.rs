//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

mod flight;
mod names;
mod pours;
mod sections;
mod shape;
mod slab;
mod surface;

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
    for slab in written.slabs {
        if let Some(resolved) = slab::slab(&slab, book, business, problems) {
            slabs.push((resolved, slab));
        }
    }
    let placements = pours(&written.pours, &mut slabs, problems);
    positions::place(&mut slabs, problems);
    sections::placed(&mut slabs, problems);
    super::arranged::check(&written.arranged, book, problems);
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
    if problems.len() != before {
        return None;
    }
    Some(Takeoff {
        place: written.place,
        name: written.name.unwrap_or_else(|| file_name.to_owned()),
        title: written.title,
        customer: written.customer,
        measured: written.measured,
        quoted: written.quoted,
        exposure: written.exposure,
        access: written.access,
        arranged: written.arranged,
        difficulty: written.difficulty,
        slabs: slabs.into_iter().map(|(slab, _)| slab).collect(),
        placements,
        removals: written.removals,
        extras: written.extras,
        sets: written.sets,
        fixed_price: written.fixed_price,
        options: written.options,
        assumptions: written.assumptions,
        not_included: written.not_included,
        photos: written.photos,
    })
}
