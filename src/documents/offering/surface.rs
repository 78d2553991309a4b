//! What a customer reads of finishes, colors, sealers and curing: the owner's words, no item, no dose.

use std::sync::Arc;

use super::phrases::{list, printed};
use super::{Offering, english, season};
use crate::documents::views::quote::Term;
use crate::input::book::{Curing, Sealer};
use crate::input::job::{Border, EdgeKind, Slab};
use crate::input::phrases::Dose;
use crate::values::Unit;

/// `stamped like split slate`, or the finish by its name; and its border.
pub(super) fn finish(of: Offering<'_>, slab: &Slab) -> String {
    let says = |name: &String| {
        let entry = of.rules.finishes.get(name);
        printed(entry.and_then(|one| one.says.as_ref()).unwrap_or(name))
    };
    let whole = says(&slab.finish.value);
    let open = |_: &&Border| slab.edges.iter().any(|part| part.kind == EdgeKind::Open);
    match slab.border.as_ref().filter(open) {
        None => whole,
        Some(border) => format!(
            "{whole}, with a border of {}\u{a0}in along the open edges: {}",
            printed(&border.width.value.in_inches().number()),
            says(&border.finish.value)
        ),
    }
}

pub(super) fn color(of: Offering<'_>, slab: &Slab) -> Option<String> {
    let name = &slab.color.as_ref()?.value;
    let entry = of.rules.colors.get(name);
    let says = entry.and_then(|one| one.says.as_ref()).unwrap_or(name);
    Some(format!("{}, all through the concrete", printed(says)))
}

pub(super) fn seal(of: Offering<'_>, slab: &Slab) -> Option<String> {
    let name = &slab.seal.as_ref()?.value;
    let sealer = of.rules.sealers.get(name)?;
    let says = printed(sealer.says.as_ref().unwrap_or(name));
    let coats = match coats(sealer) {
        1 => String::new(),
        coats => format!(", {coats}\u{a0}coats"),
    };
    let days = sealer.after.value.0;
    let when = match days {
        days if season::is_too_cold_to_seal(of, slab, days) => {
            ", in spring, when it is dry and above 50\u{a0}°F".to_owned()
        }
        0 => String::new(),
        1 => ", a\u{a0}day after the pour or later".to_owned(),
        days => format!(", {days}\u{a0}days after the pour or later"),
    };
    Some(format!("{says}{coats}{when}"))
}

fn coats(sealer: &Sealer) -> u32 {
    match sealer.coverage.as_ref().map(|dose| dose.value) {
        Some(Dose::Area { coats, .. } | Dose::Coverage { coats, .. }) => coats,
        Some(Dose::Edge(_) | Dose::Yard(_) | Dose::Cement(_) | Dose::Pour(_)) | None => 1,
    }
}

/// `curing coat on, `, as far as it is true; with the slabs where they differ.
pub(super) fn cured(of: Offering<'_>) -> String {
    let slabs = &of.takeoff.slabs;
    let ways = [
        (Curing::Compound, "curing coat on"),
        (Curing::Cover, "covered while it cures"),
        (Curing::Wet, "kept wet while it cures"),
    ];
    let said = ways.into_iter().filter_map(|(way, words)| {
        let so = slabs.iter().filter(|slab| slab.curing.value == way);
        let names: Vec<String> = so.map(|slab| slab.called.clone()).collect();
        match names.len() {
            0 => None,
            all if all == slabs.len() => Some(format!("{words}, ")),
            _ => Some(format!("{words} ({}), ", list(&names))),
        }
    });
    said.collect()
}

/// As quoted and with every choice.
pub(super) fn slabs_of_all(of: Offering<'_>) -> impl Iterator<Item = &Slab> {
    let jobs = std::iter::once(of.takeoff).chain(of.takeoff.otherwise.values());
    jobs.flat_map(|job| &job.slabs).map(Arc::as_ref)
}

/// Whether any of it is sealed, as quoted or by a choice.
pub(super) fn may_be_sealed(of: Offering<'_>) -> bool {
    let options = of.takeoff.options.iter().flat_map(|group| &group.options);
    let named = options.flat_map(|option| {
        let added = option.add.iter().map(|extra| &extra.name.value);
        std::iter::once(&option.name.value).chain(added)
    });
    let extras = of.takeoff.head.extras.iter().map(|extra| &extra.name.value);
    let mut named = named.chain(extras).map(|name| name.to_lowercase());
    // What fills joints seals no surface.
    slabs_of_all(of).any(|slab| slab.seal.is_some())
        || named.any(|name| name.contains("seal") && !name.contains("joint"))
}

/// Whether frost and salt are a question where any of it lies.
pub(super) fn meets_winter(of: Offering<'_>) -> bool {
    let frost = season::freezes(of);
    frost && slabs_of_all(of).any(|slab| !slab.is_inside())
}

/// What to do and to leave, as far as this job has it.
pub(super) fn care(of: Offering<'_>) -> Vec<Term> {
    let slabs = &of.takeoff.slabs;
    let mut terms = Vec::new();
    let mut add = |(word, text): (&str, &str)| terms.push(Term::new(word, text));
    if let season::Frost::Protected { days } = season::frost(of) {
        let text = english::BLANKETS.1.replace("{days}", &days.to_string());
        add((english::BLANKETS.0, &text));
    }
    let visits = of.rules.rates.get("keep wet");
    let by_us = visits.is_some_and(|rate| rate.value.per.unit == Unit::Trip);
    let ways = [
        (Curing::Compound, english::CURING_COAT),
        (Curing::Cover, english::COVER),
        (
            Curing::Wet,
            if by_us {
                english::WET_BY_US
            } else {
                english::WET
            },
        ),
    ];
    for (way, (word, text)) in ways {
        // Nobody is told to put water on what freezes.
        let is_so = |slab: &Slab| {
            let freezes = way == Curing::Wet && !by_us && season::is_cold(of, slab);
            slab.curing.value == way && !freezes
        };
        if slabs.iter().any(|slab| is_so(slab)) {
            add((word, text));
        } else if slabs_of_all(of).any(is_so) {
            add((&format!("If chosen: {}", lower(word)), text));
        }
    }
    if slabs.iter().any(|slab| slab.color.is_some()) {
        add(english::COLOR);
    }
    if slabs.iter().any(|slab| slab.seal.is_some()) {
        add(english::SEALED);
    }
    if meets_winter(of) {
        add(english::FIRST_WINTER);
    }
    add(english::WATER);
    terms
}

/// `keep it wet.`
fn lower(word: &str) -> String {
    let mut letters = word.chars();
    let first = letters.next().into_iter().flat_map(char::to_lowercase);
    first.chain(letters).collect()
}

/// One kind sentence on cracks, and one on color where there is any.
pub(super) fn kind_word(of: Offering<'_>) -> String {
    if of.takeoff.slabs.iter().any(|slab| slab.color.is_some()) {
        format!("{} {}", english::KIND_WORD, english::KIND_WORD_COLOR)
    } else {
        english::KIND_WORD.to_owned()
    }
}

/// Said where the firm does seal, and this job neither has it nor offers it.
pub(super) fn not_sealed(of: Offering<'_>, said: &[String]) -> Option<String> {
    let options = of.takeoff.options.iter().flat_map(|group| &group.options);
    let extras = of.takeoff.head.extras.iter().map(|extra| &extra.name.value);
    let spoken_of = said
        .iter()
        .chain(extras)
        .chain(options.map(|option| &option.name.value))
        .any(|text| text.to_lowercase().contains("seal"));
    let sealed = of.takeoff.slabs.iter().any(|slab| slab.seal.is_some());
    let seals = !of.rules.sealers.is_empty();
    (seals && !sealed && !spoken_of).then(|| "Sealing the concrete".to_owned())
}
