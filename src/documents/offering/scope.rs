//! What we will do, made from the takeoff.

use super::phrases::{area, is_plain, length, list, size};
use super::{Offering, falls, sections, surface};
use crate::documents::views::quote::Term;
use crate::input::book::{Class, Mix};
use crate::input::job::{Extra, ExtraWhat, Says, Slab, Takeoff};
use crate::input::phrases::{JointMethod, SteelAtJoints};
use crate::trade::Quantity;
use crate::trade::measure::SlabQuantities;
use crate::values::{Amount, Length, Unit};

pub(super) fn scope(of: Offering<'_>) -> Vec<Term> {
    let takeoff = of.takeoff;
    let slabs = &of.offer.quoted().needs.slabs;
    let mut terms = Vec::new();
    let mut add = |word: &str, text: String| {
        if !text.is_empty() {
            terms.push(Term::new(word, text));
        }
    };
    add("Permit", super::removal::permit(takeoff));
    add("Remove", super::removal::removed(takeoff));
    add(
        "Base",
        each(takeoff, |slab| {
            let base = slab.base.as_ref().map(|base| {
                let depth = length(base.depth.value);
                format!("{depth} of {}, packed", base.material.value)
            });
            match (base, &slab.sections.retarder) {
                (base, None) => base,
                (None, Some(_)) => Some("vapor retarder sheet".to_owned()),
                (Some(base), Some(_)) => Some(format!("{base}, then a vapor retarder sheet")),
            }
        }),
    );
    add("Pour", poured(takeoff, slabs));
    add("Edges", each(takeoff, sections::edges));
    add("Steps", sections::steps(takeoff));
    let levels = takeoff.slabs.iter();
    let levels: Vec<String> = levels
        .filter_map(|slab| falls::lower(takeoff, slab))
        .collect();
    let met = takeoff.slabs.iter().filter_map(|slab| falls::met(slab));
    let levels: Vec<String> = levels.into_iter().chain(met).collect();
    add("Levels", levels.join("; "));
    if falls::are_to_be_told(&takeoff.slabs) {
        add("Falls", each(takeoff, falls::said));
    }
    add(
        "Concrete",
        each(takeoff, |slab| of.rules.mixes.get(&slab.mix.value).map(mix)),
    );
    add("Color", each(takeoff, |slab| surface::color(of, slab)));
    let found = |slab: &Slab| {
        let mut all = takeoff.slabs.iter().zip(slabs.iter());
        all.find(|(one, _)| std::ptr::eq(one.as_ref(), slab))
    };
    add("Steel", each(takeoff, |slab| steel(slab, found(slab)?.1)));
    add(
        "Dowels",
        each(takeoff, |slab| super::dowels::across(of, slab)),
    );
    add(
        "Fiber",
        each(takeoff, |slab| {
            slab.fiber.as_ref().map(|_| "fiber in the mix".to_owned())
        }),
    );
    add("Set", super::set::scope(of));
    add("Finish", finish(of, slabs));
    add("Seal", each(takeoff, |slab| surface::seal(of, slab)));
    add("Included", included(takeoff));
    add("Site", super::site::scope(of));
    let also = also(of);
    let word = if also.is_empty() { "Clean up" } else { "Also" };
    add(word, clean_up(of, also));
    terms
}

/// A step upon a slab is part of it to a customer; a stoop with a finish of its own is not.
fn is_plain_step(slab: &Slab) -> bool {
    slab.on.is_some() && slab.kind == "step"
}

/// One sentence for all slabs that agree, naming the slabs where they do not.
fn each(takeoff: &Takeoff, says: impl Fn(&Slab) -> Option<String>) -> String {
    let mut silent = takeoff.slabs.iter().filter(|slab| !is_plain_step(slab));
    let silent = silent.any(|slab| says(slab).is_none());
    let slabs = takeoff.slabs.iter().map(AsRef::as_ref);
    told(slabs.filter_map(|slab| Some((says(slab)?, slab))), !silent)
}

/// What is said of slabs, once for those of which the same is; `alone` where it goes without their names.
fn told<'a>(said: impl Iterator<Item = (String, &'a Slab)>, alone: bool) -> String {
    let mut groups: Vec<(String, Vec<String>)> = Vec::new();
    for (text, slab) in said {
        match groups.iter_mut().find(|(known, _)| *known == text) {
            Some((_, names)) => names.push(slab.called.clone()),
            None => groups.push((text, vec![slab.called.clone()])),
        }
    }
    let alone = alone && groups.len() == 1;
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

fn poured(takeoff: &Takeoff, slabs: &[SlabQuantities]) -> String {
    let mut texts: Vec<String> = Vec::new();
    let is_flat = |slab: &Slab| !slab.is_upon() && !slab.sections.is_stoop();
    let mut thicknesses: Vec<(Length, Length, String)> = takeoff
        .slabs
        .iter()
        .filter(|slab| is_flat(slab))
        .map(|slab| thick(slab))
        .collect();
    thicknesses.sort();
    thicknesses.dedup();
    for thickness in thicknesses {
        let of_it = takeoff
            .slabs
            .iter()
            .zip(slabs)
            .filter(|(slab, _)| is_flat(slab) && thick(slab) == thickness);
        let names: Vec<String> = of_it.map(|(slab, measured)| one(slab, measured)).collect();
        texts.push(format!("{}, {} thick", list(&names), thickness.2));
    }
    for slab in takeoff.slabs.iter().filter(|slab| !is_flat(slab)) {
        if let Some(stoop) = sections::stoop(slab) {
            texts.push(stoop);
            continue;
        }
        let high = length(slab.thickness.value.thin);
        texts.push(format!("{} {}, {high} high", slab.called, size(slab)));
    }
    texts.join("; ")
}

/// Thin end, thick end, and both in words.
fn thick(slab: &Slab) -> (Length, Length, String) {
    let words = sections::thickness(slab);
    (slab.thickness.value.thin, slab.thickest(), words)
}

/// A shape with its own plan is said by its area, a plain one by its size.
fn one(slab: &Slab, measured: &SlabQuantities) -> String {
    let around = super::openings::around(slab);
    if slab.size.as_ref().is_some_and(|size| is_plain(size.value)) {
        format!("{} {}{around}", slab.called, size(slab))
    } else {
        let area = area(measured.area.value());
        format!("{} of {area}{around}", slab.called)
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

fn steel(slab: &Slab, measured: &SlabQuantities) -> Option<String> {
    let bars = slab.bars.as_ref().map(super::dowels::bars);
    let mesh = slab.mesh.as_ref().map(|_| "welded wire mesh".to_owned());
    let across = measured.corner_bars.as_ref().and(slab.corner_bars.as_ref());
    let across = across.map(|across| {
        let (count, bar) = (across.bars.value.count, across.bars.value.bar);
        let alike = slab.bars.as_ref().and_then(|bars| bars.alike());
        match alike.filter(|layer| layer.bar == bar) {
            Some(_) => format!("{count} across inside corners"),
            None => format!(
                "{count} of {} across inside corners",
                length(bar.diameter())
            ),
        }
    });
    let both: Vec<String> = [bars, mesh, across].into_iter().flatten().collect();
    let joints = measured.joints.as_ref();
    let is_jointed = joints.is_some_and(|joints| !joints.layout.lines.is_empty());
    let cut = match slab.steel_at_joints {
        SteelAtJoints::Cut if is_jointed => ", cut at the joints",
        SteelAtJoints::EveryOther if is_jointed => ", every other one cut at the joints",
        SteelAtJoints::Cut | SteelAtJoints::EveryOther | SteelAtJoints::Through => "",
    };
    (!both.is_empty()).then(|| format!("{}{cut}", both.join(" and ")))
}

fn finish(of: Offering<'_>, slabs: &[SlabQuantities]) -> String {
    let takeoff = of.takeoff;
    let finishes = each(takeoff, |slab| {
        (!is_plain_step(slab)).then(|| surface::finish(of, slab))
    });
    let jointed: Vec<&Slab> = takeoff
        .slabs
        .iter()
        .zip(slabs)
        .filter(|(_, measured)| measured.is_jointed())
        .map(|(slab, _)| slab.as_ref())
        .collect();
    // Who saws joints leaves their edges square.
    let rounded = if !jointed.is_empty() && jointed.iter().all(|slab| slab.is_sawn()) {
        ""
    } else {
        ", rounded edges"
    };
    let made = |slab: &Slab| {
        let deep = format!("{} deep", length(slab.groove()));
        match slab.joint_method() {
            JointMethod::Tooled => deep,
            JointMethod::SawnLate => format!("sawn {deep}"),
            JointMethod::SawnEarly => format!("sawn {deep} the same day"),
        }
    };
    let joints = told(jointed.iter().map(|slab| (made(slab), *slab)), true);
    if joints.is_empty() {
        return format!("{finishes}{rounded}");
    }
    format!("{finishes}{rounded}; joints {joints}")
}

/// What the first answer of a question adds, where one has to be taken; in the words of its title.
fn included(takeoff: &Takeoff) -> String {
    let musts = takeoff.options.iter().filter(|group| group.must_choose);
    let first = musts.filter_map(|group| group.options.first());
    let titles: Vec<&str> = first
        .filter(|option| !option.add.is_empty())
        .map(|option| option.name.value.as_str())
        .collect();
    titles.join("; ")
}

fn clean_up(of: Offering<'_>, mut also: String) -> String {
    if !also.is_empty() {
        also.push_str("; ");
    }
    let forms = if of.has_forms() { "forms out, " } else { "" };
    format!("{also}{}{forms}site swept", surface::cured(of))
}

/// Extras a customer would ask about, unless the owner says what is read; machines and fees are ours
/// to think of.
fn also(of: Offering<'_>) -> String {
    let shown = |class: Class| matches!(class, Class::Material | Class::Subcontract);
    let is_asked = |extra: &Extra| match &extra.what {
        ExtraWhat::Lump { class, .. } => shown(*class),
        ExtraWhat::Item(_) => of.offer.quoted().lines.iter().any(|line| {
            let name = line.quantity.as_ref().map(Quantity::name);
            line.class.is_some_and(shown) && name == Some(&extra.name.value)
        }),
    };
    let extras = of.takeoff.head.extras.iter();
    let said = extras.filter_map(|extra| match &extra.says {
        Says::Name => is_asked(extra).then(|| extra.name.value.clone()),
        Says::Words(words) => Some(words.clone()),
        Says::Nothing => None,
    });
    let names: Vec<String> = said
        .chain(of.offer.quoted().needs.says.iter().cloned())
        .collect();
    list(&names)
}
