//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

mod asked;
mod boxes;
mod chosen;
mod dowels;
mod flight;
mod names;
mod openings;
mod pours;
mod sections;
mod shape;
mod slab;
mod steel;
mod surface;

use std::collections::{BTreeMap, BTreeSet};

use chosen::{Site, chosen};
use names::known_in_unit;
use pours::pours;

use super::takeoff::{Slab, Takeoff};
use super::written::{JobWritten, SlabWritten};
use super::{ExtraWhat, overlaps, positions};
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
    match looked_up(written, file_name, book, business, problems) {
        LookedUp::Whole(takeoff) => Some(*takeoff),
        LookedUp::Mended(_) | LookedUp::Broken => None,
    }
}

/// How far a job could be looked up.
pub enum LookedUp {
    Whole(Box<Takeoff>),
    /// Some names are read as what was probably meant: good for more questions, not for a price.
    Mended(Box<Takeoff>),
    Broken,
}

/// The same, and with slips in some names still what the rest makes.
pub fn looked_up(
    written: JobWritten,
    file_name: &str,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> LookedUp {
    let before = problems.len();
    let mut slabs: Vec<(Slab, SlabWritten)> = Vec::new();
    let mut head = written.head;
    head.site = crate::input::site::or_usual(head.site, &business.site.usual);
    let mut unsure: BTreeSet<String> = written.slabs.unread;
    for slab in written.slabs.read {
        if let Some(resolved) = slab::slab(&slab, book, business, problems) {
            slabs.push((resolved, slab));
        } else {
            unsure.insert(slab.key.value);
        }
    }
    let after_slabs = problems.len();
    let placements = pours(&head.pours, &mut slabs, &unsure, problems);
    let contacts = positions::place(&mut slabs, &unsure, problems);
    overlaps::check(&slabs, &contacts, problems);
    let named = asked::OptionNames {
        slabs: slabs.iter().map(|(slab, _)| slab.key.as_str()).collect(),
        removals: &head.removals,
        extras: &head.extras,
        unsure: &unsure,
    };
    asked::check(&head.options, &named, problems);
    boxes::resolve(&mut slabs, book, problems);
    super::arranged::check(&head, book, problems);
    let extras = head.extras.iter().chain(
        head.options
            .iter()
            .flat_map(|group| group.options.iter().flat_map(|option| &option.add)),
    );
    for extra in extras {
        if let ExtraWhat::Item(amount) = &extra.what {
            known_in_unit(&extra.name, amount, book, problems);
        }
    }
    let name = head.name.take();
    let job = Takeoff {
        place: written.place,
        name: name.unwrap_or_else(|| file_name.to_owned()),
        customer: written.customer,
        slabs: Vec::new(),
        placements,
        added: Vec::new(),
        options: std::mem::take(&mut head.options).into(),
        otherwise: BTreeMap::new(),
        head,
    };
    let site = Site {
        slabs,
        contacts,
        incomplete: !unsure.is_empty(),
        book,
        business,
    };
    let incomplete = site.incomplete;
    match chosen(&job, &site, problems) {
        Some(job) if problems.len() == before => LookedUp::Whole(Box::new(job)),
        // With any other slip it is not known what else would be computed.
        Some(job) if problems.len() == after_slabs && !incomplete => {
            LookedUp::Mended(Box::new(job))
        }
        _ => LookedUp::Broken,
    }
}
