//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

mod asked;
mod boxes;
mod chosen;
mod dowels;
mod dug;
mod falls;
mod flight;
mod joints;
mod names;
mod openings;
mod pours;
mod sections;
mod shape;
mod slab;
mod steel;
mod surface;

use std::collections::BTreeMap;

use chosen::{Site, chosen};
use names::known_in_unit;
use pours::pours;

use super::takeoff::{Slab, Takeoff};
use super::written::{JobWritten, SlabWritten};
use super::{ExtraWhat, overlaps, positions};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::reading::{Problems, Read, Reported};

/// The takeoff with every name known, or every name that is not.
pub fn resolve(
    written: JobWritten,
    file_name: &str,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> Read<Takeoff> {
    let looked_up = looked_up(written, file_name, book, business, problems);
    looked_up.map_err(|slipped| slipped.reported)
}

/// A job that could not be looked up as it is written.
pub struct Slipped {
    pub reported: Reported,
    /// With names read as what was probably meant, if that is all: good for more questions, not
    /// for a price.
    pub mended: Option<Box<Takeoff>>,
}

/// The same, and with slips in some names still what the rest makes.
pub fn looked_up(
    written: JobWritten,
    file_name: &str,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> Result<Takeoff, Slipped> {
    let before = problems.len();
    let mut slabs: Vec<(Slab, SlabWritten)> = Vec::new();
    let mut head = written.head;
    head.site = crate::input::site::or_usual(head.site, &business.site.usual);
    names::kinds_of_rules(book, business, problems);
    let mut unsure = written.slabs.unread;
    for slab in written.slabs.read {
        match slab::slab(&slab, book, business, problems) {
            Ok(resolved) => slabs.push((resolved, slab)),
            Err(reported) => unsure.insert(slab.key.value, reported),
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
    dug::check(&head.removals, &named, problems);
    asked::check(&head.options, &named, problems);
    boxes::resolve(&mut slabs, book, problems);
    joints::resolve(&mut slabs, problems);
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
        complete: unsure.none(),
        book,
        business,
    };
    let broken = |reported| Slipped {
        reported,
        mended: None,
    };
    let job = chosen(&job, &site, problems).map_err(broken)?;
    let Err(reported) = problems.none_since(before) else {
        return Ok(job);
    };
    // With any other slip it is not known what else would be computed.
    let names_only = problems.len() == after_slabs && site.complete.is_ok();
    Err(Slipped {
        reported,
        mended: names_only.then(|| Box::new(job)),
    })
}
