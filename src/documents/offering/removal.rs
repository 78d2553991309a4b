//! What we take out, in the customer's words.

use super::phrases::{capital, length, list, sides, size_of};
use crate::input::job::{Permit, Removal, Takeoff};
use crate::input::phrases::SizePhrase;

pub(super) fn removed(takeoff: &Takeoff) -> String {
    let (stays, goes): (Vec<&Removal>, Vec<&Removal>) =
        takeoff.head.removals.iter().partition(|one| one.stays);
    let group = |of: &[&Removal], end: &str| {
        let texts: Vec<String> = of.iter().map(|one| said(one)).collect();
        (!texts.is_empty()).then(|| format!("{}; {end}", texts.join("; ")))
    };
    let groups = [
        group(&goes, "hauled away"),
        group(&stays, "kept on your land"),
    ];
    let mut sentences: Vec<String> = groups.into_iter().flatten().collect();
    for later in sentences.iter_mut().skip(1) {
        *later = capital(later);
    }
    sentences.join(". ")
}

fn said(removal: &Removal) -> String {
    let name = &removal.name.value;
    let Some(size) = removal.size.as_ref().map(|size| size.value) else {
        let under: Vec<String> = removal
            .under
            .iter()
            .map(|slab| slab.value.clone())
            .collect();
        let deep = removal.depth.as_ref().map_or_else(String::new, |depth| {
            format!(", {} deep", length(depth.value))
        });
        return format!("{name} under {}{deep}", list(&under));
    };
    let text = match size {
        SizePhrase::Block {
            length: long,
            width,
            ..
        } => format!("{name}, {}", sides(long, width)),
        SizePhrase::AreaDeep { depth, .. } => format!("{name}, {} deep", length(depth)),
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => format!("{name}, {}", sides(east_west, north_south)),
        SizePhrase::Circle { diameter } => format!("{name}, {} across", length(diameter)),
        SizePhrase::Shape(shape) => shape.outline().map_or_else(
            |_| name.clone(),
            |outline| format!("{name}, {}", size_of(Some(size), &outline)),
        ),
    };
    match &removal.saw_cut {
        Some(cut) => format!("{text}, sawn along {}", length(cut.value)),
        None => text,
    }
}

/// Said where the permit is in the price.
pub(super) fn permit(takeoff: &Takeoff) -> String {
    match &takeoff.head.permit {
        Permit::Item(_) => "taken out by us, in the price".to_owned(),
        Permit::Unsaid | Permit::None | Permit::Customer => String::new(),
    }
}

/// What is not included, once it is known who takes out the permit.
pub(super) fn without_permit(takeoff: &Takeoff, mut lines: Vec<String>) -> Vec<String> {
    match &takeoff.head.permit {
        Permit::Unsaid => {}
        Permit::None | Permit::Item(_) => lines.retain(|line| !speaks_of_it(line)),
        Permit::Customer => {
            lines.retain(|line| !speaks_of_it(line));
            lines.push("The permit, which you take out before we start".to_owned());
        }
    }
    lines
}

fn speaks_of_it(line: &str) -> bool {
    let mut words = line.split(|c: char| !c.is_alphabetic());
    words.any(|word| matches!(word.to_lowercase().as_str(), "permit" | "permits"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lines_about_permits_speak_of_permits() {
        assert!(speaks_of_it("Town permit, if one is asked for"));
        assert!(speaks_of_it("Permits and inspections"));
        assert!(!speaks_of_it("What the town permitted before"));
        assert!(!speaks_of_it("Rock, roots or soft soil below the base"));
    }
}
