//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

mod pours;
mod shape;

use pours::pours;
use shape::{edges, outline, shape_place};

use super::takeoff::{Bars, Base, Fall, Slab, Takeoff};
use super::written::{JobWritten, ShapeWritten, SlabWritten};
use super::{ExtraWhat, positions, sanity};
use crate::input::book::{PriceBook, unknown_item};
use crate::input::business::Business;
use crate::input::phrases::{BarsPhrase, BasePhrase, FallPhrase};
use crate::reading::{At, Problem, Problems, suggest};
use crate::values::Unit;

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
        if let Some(resolved) = self::slab(&slab, book, business, problems) {
            slabs.push((resolved, slab));
        }
    }
    let placements = pours(&written.pours, &mut slabs, problems);
    positions::place(&mut slabs, problems);
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

#[expect(
    clippy::too_many_lines,
    reason = "one look-up after another, each of a few lines"
)]
fn slab(
    written: &SlabWritten,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> Option<Slab> {
    let key = &written.key.value;
    let kind = kind(written, business, problems)?;
    let (values, usual) = written.values.clone().or(&business.kinds[&kind].values);
    let outline = outline(&written.shape, problems);
    let missing = |what: &str, problems: &mut Problems| {
        let message = format!("`{key}` has no {what}, and neither has its kind `{kind}`");
        problems.push(
            Problem::new("no-usual-value", message)
                .at(written.key.place)
                .help(format!(
                    "write `{what}` below it, or under `kinds` in business.yaml"
                )),
        );
    };
    let thickness = values.thickness.or_else(|| {
        missing("thickness", problems);
        None
    });
    let mix = values.mix.or_else(|| {
        missing("mix", problems);
        None
    });
    let mix = mix.filter(|mix| {
        known(
            mix,
            book.rules.mixes.keys(),
            "mix",
            &book.rules.broken,
            problems,
        )
    });
    let base = match values.base {
        Some(At {
            value: BasePhrase::Of { depth, material },
            place,
        }) => {
            let material = At {
                value: material,
                place,
            };
            known(
                &material,
                book.rules.bases.keys(),
                "base",
                &book.rules.broken,
                problems,
            )
            .then_some(Some(Base {
                depth: At {
                    value: depth,
                    place,
                },
                material,
            }))
        }
        Some(At {
            value: BasePhrase::None,
            ..
        })
        | None => Some(None),
    };
    let bars = match values.bars {
        Some(At {
            value: BarsPhrase::Both { bar, spacing },
            place,
        }) => {
            let name = At {
                value: bar.to_string(),
                place,
            };
            known(
                &name,
                book.rules.bars.keys(),
                "bar",
                &book.rules.broken,
                problems,
            )
            .then_some(Some(Bars {
                bar,
                spacing: At {
                    value: spacing,
                    place,
                },
            }))
        }
        Some(At {
            value: BarsPhrase::None,
            ..
        })
        | None => Some(None),
    };
    let optional = |name: Option<At<String>>| name.filter(|name| name.value != "none");
    let mesh = optional(values.mesh);
    let mesh_known = mesh.as_ref().is_none_or(|mesh| {
        known(
            mesh,
            book.rules.mesh.keys(),
            "mesh",
            &book.rules.broken,
            problems,
        )
    });
    let fiber = optional(values.fiber);
    let fiber_known = fiber.as_ref().is_none_or(|fiber| {
        known(
            fiber,
            book.rules.fiber.keys(),
            "fiber",
            &book.rules.broken,
            problems,
        )
    });
    let finish = values.finish.unwrap_or_else(|| At {
        value: "broom".to_owned(),
        place: written.key.place,
    });
    let outline = outline?;
    if let Some(thickness) = &thickness {
        sanity::thickness(key, thickness, problems);
    }
    sanity::area(key, &outline, shape_place(&written.shape), problems);
    if !mesh_known || !fiber_known {
        return None;
    }
    Some(Slab {
        key: key.clone(),
        place: written.key.place,
        called: written.called.clone().unwrap_or_else(|| key.clone()),
        edges: edges(written, &outline, problems),
        outline,
        size: if let ShapeWritten::Size(size) = &written.shape {
            Some(size.clone())
        } else {
            None
        },
        thickness: thickness?,
        mix: mix?,
        base: base?,
        bars: bars?,
        mesh,
        fiber,
        finish,
        joints: values.joints.and_then(|joints| {
            joints.value.map(|value| At {
                value,
                place: joints.place,
            })
        }),
        fall: values.fall.and_then(|fall| match fall.value {
            FallPhrase::Level => None,
            FallPhrase::PerFoot { rise, toward } => Some(Fall {
                rise: At {
                    value: rise,
                    place: fall.place,
                },
                toward,
            }),
        }),
        stands_alone: written.on.is_none() && written.beside.is_none(),
        on: written.on.as_ref().map(|on| on.value.slab.clone()),
        usual,
        kind,
        placement: 0,
    })
}

/// A slab's kind is what `kind` says, else its name, else the last word of its name that is a kind.
fn kind(written: &SlabWritten, business: &Business, problems: &mut Problems) -> Option<String> {
    let name = written.kind.as_ref().unwrap_or(&written.key);
    if business.kinds.contains_key(&name.value) {
        return Some(name.value.clone());
    }
    if written.kind.is_none()
        && let Some(word) = name
            .value
            .split_whitespace()
            .rev()
            .find(|word| business.kinds.contains_key(*word))
    {
        return Some(word.to_owned());
    }
    let names: Vec<&str> = business.kinds.keys().map(String::as_str).collect();
    let problem = Problem::new(
        "unknown-kind",
        format!("business.yaml has no kind of slab `{}`", name.value),
    )
    .at(name.place);
    problems.push(match suggest::closest(&name.value, names.iter().copied()) {
        Some(near) => problem.help(format!(
            "did you mean `{near}`? Its kinds are {}",
            names.join(", ")
        )),
        None => problem.help(format!(
            "say `kind: {}` below it, or one of {}",
            names.first().unwrap_or(&"patio"),
            names.join(", ")
        )),
    });
    None
}

fn known<'a>(
    name: &At<String>,
    names: impl Iterator<Item = &'a String>,
    what: &str,
    broken: &std::collections::BTreeSet<String>,
    problems: &mut Problems,
) -> bool {
    let names: Vec<&str> = names.map(String::as_str).collect();
    if names.contains(&name.value.as_str()) {
        return true;
    }
    if broken.contains(&name.value) {
        return false;
    }
    let problem = Problem::new(
        "unknown-name",
        format!("price book has no {what} `{}`", name.value),
    )
    .at(name.place);
    problems.push(match suggest::closest(&name.value, names.iter().copied()) {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None if names.is_empty() => problem.help(format!(
            "the price book names no {what} at all; add it there"
        )),
        None => problem.help(format!("it has {}", names.join(", "))),
    });
    false
}

fn known_in_unit(
    name: &At<String>,
    amount: &At<crate::values::Amount>,
    book: &PriceBook,
    problems: &mut Problems,
) {
    let Some(item) = book.items.get(&name.value) else {
        if !book.broken.contains(&name.value) {
            problems.push(
                unknown_item(&name.value, book.items.keys().map(String::as_str)).at(name.place),
            );
        }
        return;
    };
    if amount.value.unit == item.selling.unit
        || (amount.value.unit == Unit::Plain
            && matches!(item.selling.unit, Unit::Piece | Unit::Lump))
    {
        return;
    }
    let found = if amount.value.unit == Unit::Plain {
        "without a unit".to_owned()
    } else {
        format!("in {}", amount.value.unit.symbol())
    };
    let message = format!(
        "`{}` is priced in {}, and this is {found}",
        name.value,
        item.selling.unit.symbol()
    );
    problems.push(
        Problem::new("wrong-unit", message)
            .at(amount.place)
            .also(item.place, "the price book says so here")
            .help(format!("write how many {}", item.selling.unit.plural())),
    );
}
