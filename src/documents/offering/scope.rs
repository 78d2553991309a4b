//! What we will do and what we will not, made from the takeoff.

use rust_decimal::Decimal;

use super::phrases::{area, length, list, printed, size};
use super::{Offering, english};
use crate::documents::views::quote::{Sentence, Term};
use crate::input::book::{Class, Mix};
use crate::input::job::{ExtraWhat, Method, Slab, Takeoff};
use crate::input::phrases::SizePhrase;
use crate::tables::joints::groove_depth;
use crate::trade::measure::SlabQuantities;
use crate::values::{Amount, Length, Unit, rounding};

pub(super) fn title(takeoff: &Takeoff) -> String {
    let names: Vec<String> = takeoff
        .slabs
        .iter()
        .map(|slab| slab.called.clone())
        .collect();
    format!("A new {}", list(&names))
}

pub(super) fn scope(of: Offering<'_>) -> Vec<Term> {
    let takeoff = of.takeoff;
    let slabs = &of.offer.quoted().needs.slabs;
    let mut terms = Vec::new();
    let mut add = |word: &str, text: String| {
        if !text.is_empty() {
            terms.push(Term {
                word: word.to_owned(),
                text,
            });
        }
    };
    add("Remove", removed(takeoff));
    add(
        "Base",
        each(takeoff, |slab| {
            slab.base.as_ref().map(|base| {
                format!(
                    "{} of {}, packed",
                    length(base.depth.value),
                    base.material.value
                )
            })
        }),
    );
    add("Pour", poured(takeoff, slabs));
    add(
        "Concrete",
        each(takeoff, |slab| of.rules.mixes.get(&slab.mix.value).map(mix)),
    );
    add("Steel", each(takeoff, steel));
    add(
        "Fiber",
        each(takeoff, |slab| {
            slab.fiber.as_ref().map(|_| "fiber in the mix".to_owned())
        }),
    );
    add("Finish", finish(takeoff, slabs));
    add("Clean up", clean_up(of));
    terms
}

/// One sentence for all slabs that agree, naming the slabs where they do not.
fn each(takeoff: &Takeoff, says: impl Fn(&Slab) -> Option<String>) -> String {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    let mut silent = false;
    for slab in &takeoff.slabs {
        match says(slab) {
            None => silent = silent || slab.on.is_none(),
            Some(text) => match groups.iter_mut().find(|(known, _)| *known == text) {
                Some((_, names)) => names.push(slab.called.clone()),
                None => groups.push((text, vec![slab.called.clone()])),
            },
        }
    }
    let alone = groups.len() == 1 && !silent;
    let texts: Vec<String> = groups
        .into_iter()
        .map(|(text, names)| {
            if alone {
                text
            } else {
                format!("{text} ({})", list(&names))
            }
        })
        .collect();
    texts.join("; ")
}

fn removed(takeoff: &Takeoff) -> String {
    let one = |removal: &crate::input::job::Removal| match removal.size.value {
        SizePhrase::Block {
            length: long,
            width,
            ..
        } => format!(
            "{}, {}",
            removal.name.value,
            super::phrases::sides(long, width)
        ),
        SizePhrase::AreaDeep { depth, .. } => {
            format!("{}, {} deep", removal.name.value, length(depth))
        }
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } => removal.name.value.clone(),
    };
    let texts: Vec<String> = takeoff.removals.iter().map(one).collect();
    if texts.is_empty() {
        String::new()
    } else {
        format!("{}; hauled away", texts.join("; "))
    }
}

fn poured(takeoff: &Takeoff, slabs: &[SlabQuantities]) -> String {
    let mut texts: Vec<String> = Vec::new();
    let mut thicknesses: Vec<Length> = takeoff
        .slabs
        .iter()
        .filter(|slab| slab.on.is_none())
        .map(|slab| slab.thickness.value)
        .collect();
    thicknesses.sort();
    thicknesses.dedup();
    for thickness in thicknesses {
        let of_it = takeoff
            .slabs
            .iter()
            .zip(slabs)
            .filter(|(slab, _)| slab.on.is_none() && slab.thickness.value == thickness);
        let names: Vec<String> = of_it.map(|(slab, measured)| one(slab, measured)).collect();
        texts.push(format!("{}, {} thick", list(&names), length(thickness)));
    }
    for (slab, _) in takeoff
        .slabs
        .iter()
        .zip(slabs)
        .filter(|(slab, _)| slab.on.is_some())
    {
        texts.push(format!(
            "{} {}, {} high",
            slab.called,
            size(slab),
            length(slab.thickness.value)
        ));
    }
    texts.join("; ")
}

/// A shape with its own plan is said by its area, a plain one by its size.
fn one(slab: &Slab, measured: &SlabQuantities) -> String {
    if slab.size.is_some() {
        format!("{} {}", slab.called, size(slab))
    } else {
        format!("{} of {}", slab.called, area(measured.area.value()))
    }
}

fn mix(mix: &Mix) -> String {
    let strength = Amount::new(mix.strength.value.value, Unit::Psi)
        .to_string()
        .replace(' ', "\u{a0}");
    if mix.air.value.number().is_zero() {
        format!("{strength} mix")
    } else {
        format!("{strength} mix, with air against frost")
    }
}

fn steel(slab: &Slab) -> Option<String> {
    let bars = slab.bars.as_ref().map(|bars| {
        format!(
            "{} bars every {}, both ways",
            length(bars.bar.diameter()),
            length(bars.spacing.value)
        )
    });
    let mesh = slab.mesh.as_ref().map(|_| "welded wire mesh".to_owned());
    let both: Vec<String> = [bars, mesh].into_iter().flatten().collect();
    (!both.is_empty()).then(|| both.join(" and "))
}

fn finish(takeoff: &Takeoff, slabs: &[SlabQuantities]) -> String {
    let finishes = each(takeoff, |slab| {
        (slab.on.is_none()).then(|| slab.finish.value.clone())
    });
    let jointed = takeoff.slabs.iter().zip(slabs).filter(|(_, measured)| {
        measured
            .joints
            .as_ref()
            .is_some_and(|joints| !joints.panels.lines.is_empty())
    });
    let deepest = jointed
        .map(|(slab, _)| groove_depth(slab.thickness.value))
        .max();
    let joints = deepest.map_or_else(String::new, |depth| {
        format!("; joints {} deep, as drawn", length(depth))
    });
    format!("{finishes}, rounded edges{joints}")
}

fn clean_up(of: Offering<'_>) -> String {
    let also = also(of);
    let also = if also.is_empty() {
        also
    } else {
        format!("{also}; ")
    };
    format!("{also}curing coat on, forms out, site swept")
}

/// Extras a customer would ask about; machines and fees are ours to think of.
fn also(of: Offering<'_>) -> String {
    let shown = |class: Class| matches!(class, Class::Material | Class::Subcontract);
    let names: Vec<String> = of
        .takeoff
        .extras
        .iter()
        .filter(|extra| match &extra.what {
            ExtraWhat::Lump { class, .. } => shown(*class),
            ExtraWhat::Item(_) => of.offer.quoted().lines.iter().any(|line| {
                line.class.is_some_and(shown)
                    && line
                        .quantity
                        .as_ref()
                        .is_some_and(|quantity| quantity.name() == extra.name.value)
            }),
        })
        .map(|extra| extra.name.value.clone())
        .collect();
    list(&names)
}

pub(super) fn when(of: Offering<'_>) -> Vec<Sentence> {
    let crew = &of.offer.quoted().needs.crew;
    let days = crew.trips.value();
    let before = i64::try_from(rounding::round_up_to(days, Decimal::ONE))
        .unwrap_or(1)
        .max(1);
    let start = of.pour.plus(-before).date().max(of.quoted.date());
    let start = crate::values::Day::new(start);
    let end = start.plus(i64::from(of.business.quote.start_window.0));
    let sentence = |before: &str, strong: String, after: &str| Sentence {
        before: before.to_owned(),
        strong,
        after: after.to_owned(),
    };
    let count = Amount::new(days, Unit::Plain).number();
    let working = if count == "1" {
        "1 working day".to_owned()
    } else {
        format!("{count} working days")
    };
    vec![
        sentence(
            "Start between ",
            format!("{} and {}", start.long(), end.long()),
            ".",
        ),
        sentence("", working, " at your house."),
        sentence(english::RAIN, String::new(), ""),
    ]
}

pub(super) fn not_included(of: Offering<'_>) -> Vec<String> {
    let takeoff = of.takeoff;
    let mut lines: Vec<String> = Vec::new();
    if takeoff.removals.is_empty() {
        lines.push("Taking out old concrete or soil".to_owned());
    }
    lines.extend(of.business.not_included.iter().cloned());
    lines.extend(takeoff.not_included.iter().cloned());
    if takeoff
        .slabs
        .iter()
        .all(|slab| slab.bars.is_none() && slab.mesh.is_none())
    {
        lines.push("Steel in the concrete".to_owned());
    }
    lines.push("Grass seed and plants".to_owned());
    let mut lines: Vec<String> = lines.iter().map(|line| printed(line)).collect();
    if !takeoff.options.is_empty() {
        lines.push("What you may choose on page\u{a0}{page:choices}".to_owned());
    }
    lines
}

/// A title up to its first comma.
pub(super) fn short(title: &str) -> String {
    title.split(',').next().unwrap_or(title).trim().to_owned()
}

pub(super) fn assumptions(of: Offering<'_>) -> Vec<String> {
    let mut lines = of.business.assumptions.clone();
    lines.extend(of.takeoff.assumptions.iter().cloned());
    let access = &of.takeoff.access;
    match access.by.value {
        Method::Chute => lines.push("The mixer can reach the work with its chute".to_owned()),
        Method::Wheelbarrow | Method::Buggy | Method::Pump => {
            let distance = access
                .distance
                .as_ref()
                .map(|distance| format!(" of {}", length(distance.value)));
            let gate = access
                .gate
                .as_ref()
                .map(|gate| format!(", {}\u{a0}in wide", gate.value.in_inches().number()));
            if distance.is_some() || gate.is_some() {
                lines.push(format!(
                    "A firm path{}{} from the truck to the work",
                    distance.unwrap_or_default(),
                    gate.unwrap_or_default()
                ));
            }
        }
    }
    lines.iter().map(|line| printed(line)).collect()
}
