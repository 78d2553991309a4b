//! Which slab is poured on which day.

use crate::input::job::takeoff::{Placement, Slab};
use crate::input::job::written::{PourWritten, SlabWritten};
use crate::reading::{BrokenNames, Problem, Problems};

/// Gives every slab its pour; a single pour without names takes them all.
pub(super) fn pours(
    written: &[PourWritten],
    slabs: &mut [(Slab, SlabWritten)],
    unsure: &BrokenNames,
    problems: &mut Problems,
) -> Vec<Placement> {
    let mut named = vec![None; slabs.len()];
    for (number, pour) in written.iter().enumerate() {
        for name in &pour.slabs {
            match slabs.iter().position(|(slab, _)| slab.key == name.value) {
                Some(i) if named[i].is_some() => {
                    problems.push(
                        Problem::new("poured-twice", format!("`{}` is poured twice", name.value))
                            .at(name.place)
                            .help("name it in one pour only; a slab poured in two halves is two slabs, the second `beside` the first: README.md shows it under \"In two halves\""),
                    );
                }
                Some(i) => named[i] = Some(number),
                None if unsure.has(&name.value) => {}
                None => {
                    problems.push(
                        Problem::new(
                            "unknown-slab",
                            format!("this job has no slab `{}`", name.value),
                        )
                        .at(name.place)
                        .help("use a name from `slabs`"),
                    );
                }
            }
        }
    }
    let some_named = named.iter().any(Option::is_some);
    for (i, (slab, _)) in slabs.iter_mut().enumerate() {
        match named[i] {
            Some(number) => slab.placement = number,
            None if some_named || 1 < written.len() => {
                problems.push(
                    Problem::new("not-poured", format!("no pour names `{}`", slab.key))
                        .at(slab.place)
                        .help("add it to the `slabs` of a pour"),
                );
            }
            None => {}
        }
    }
    if written.is_empty() {
        return vec![Placement {
            day: None,
            access: None,
            allowance: None,
            temperature: None,
        }];
    }
    written
        .iter()
        .map(|pour| Placement {
            day: Some(pour.day.clone()),
            access: pour.access.clone(),
            allowance: pour.allowance.clone(),
            temperature: pour.temperature.clone(),
        })
        .collect()
}
