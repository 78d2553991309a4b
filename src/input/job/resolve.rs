//! Looks up every name of a takeoff: kinds, mixes, bars, finishes, positions.

use super::takeoff::{Bars, Base, Fall, Placement, Slab, Takeoff};
use super::written::{JobWritten, ShapeWritten, SlabWritten};
use super::{EdgeKind, EdgePart, ExtraWhat, positions, sanity};
use crate::geometry::{Leg, Outline, WalkError};
use crate::input::book::{PriceBook, unknown_item};
use crate::input::business::Business;
use crate::input::phrases::{BarsPhrase, BasePhrase, FallPhrase, SizePhrase};
use crate::reading::{At, Place, Problem, Problems, suggest};
use crate::values::{Length, Unit};

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
    if slabs.is_empty() && problems.len() == before {
        problems.push(
            Problem::new("no-slabs", "this job has no slab")
                .at(written.place)
                .help("name one under `slabs`, for example `patio: 12 ft x 15 ft`"),
        );
    }
    positions::place(&mut slabs, problems);
    let placements = pours(&written.pours, &mut slabs, problems);
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
    let mix = mix.filter(|mix| known(mix, book.rules.mixes.keys(), "mix", problems));
    let base = match values.base {
        Some(At {
            value: BasePhrase::Of { depth, material },
            place,
        }) => {
            let material = At {
                value: material,
                place,
            };
            known(&material, book.rules.bases.keys(), "base", problems).then_some(Some(Base {
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
            known(&name, book.rules.bars.keys(), "bar", problems).then_some(Some(Bars {
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
    let mesh_known = mesh
        .as_ref()
        .is_none_or(|mesh| known(mesh, book.rules.mesh.keys(), "mesh", problems));
    let fiber = optional(values.fiber);
    let fiber_known = fiber
        .as_ref()
        .is_none_or(|fiber| known(fiber, book.rules.fiber.keys(), "fiber", problems));
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
    problems: &mut Problems,
) -> bool {
    let names: Vec<&str> = names.map(String::as_str).collect();
    if names.contains(&name.value.as_str()) {
        return true;
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

fn shape_place(shape: &ShapeWritten) -> Place {
    match shape {
        ShapeWritten::Size(size) => size.place,
        ShapeWritten::Walked(_, place) => *place,
    }
}

fn outline(shape: &ShapeWritten, problems: &mut Problems) -> Option<Outline> {
    let (legs, place) = match shape {
        ShapeWritten::Size(size) => match size.value {
            SizePhrase::Rectangle {
                east_west,
                north_south,
            } => return Some(Outline::rectangle(east_west, north_south)),
            SizePhrase::Circle { diameter } => return Some(Outline::circle(diameter)),
            SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => return None,
        },
        ShapeWritten::Walked(legs, place) => (legs, *place),
    };
    let walked: Vec<Leg> = legs.iter().map(|leg| leg.value.leg).collect();
    let error = match Outline::walked(&walked) {
        Ok(outline) => return Some(outline),
        Err(error) => error,
    };
    let leg_place = |i: usize| legs.get(i).map_or(place, |leg| leg.place);
    problems.push(match error {
        WalkError::TooFew => {
            Problem::new("outline-too-short", "an outline needs at least three sides")
                .at(place)
                .help("walk all the way round, back to the first corner")
        }
        WalkError::NotClosed { east, north } => Problem::new(
            "outline-not-closed",
            format!(
                "the outline ends {} from where it began",
                apart(east, north)
            ),
        )
        .at(leg_place(legs.len().saturating_sub(1)))
        .help(
            "check each side against your notes; the last one must come back to the first corner",
        ),
        WalkError::Crosses { first, second } => Problem::new(
            "outline-crosses",
            format!("side {} runs into side {}", second + 1, first + 1),
        )
        .at(leg_place(second))
        .also(leg_place(first), "the other side")
        .help("check the directions and the lengths of these two sides"),
        WalkError::BulgeTooDeep { leg } => Problem::new(
            "bulge-too-deep",
            "this bulge is deeper than half a circle",
        )
        .at(leg_place(leg))
        .help("the bulge is how far the curve stands out at its middle, at most half the side"),
        WalkError::NoArea => Problem::new("outline-flat", "this outline encloses nothing")
            .at(place)
            .help("give sides in at least two directions"),
    });
    None
}

fn apart(east: Length, north: Length) -> String {
    let one = |length: Length, plus: &str, minus: &str| {
        (length != Length::ZERO).then(|| {
            format!(
                "{} {}",
                length.abs(),
                if Length::ZERO < length { plus } else { minus }
            )
        })
    };
    let parts: Vec<String> = [one(east, "east", "west"), one(north, "north", "south")]
        .into_iter()
        .flatten()
        .collect();
    parts.join(" and ")
}

/// One part a side: what a leg says wins over what `edges` says of its direction.
fn edges(written: &SlabWritten, outline: &Outline, problems: &mut Problems) -> Vec<EdgePart> {
    use crate::geometry::Facing;
    use crate::input::phrases::Compass;
    if outline.is_circle().is_some() && !written.edges.is_empty() {
        problems.push(
            Problem::new("edges-of-a-circle", "a circle has no north or east edge")
                .at(written.key.place)
                .help("take `edges` out; a circle is open all round"),
        );
    }
    let named = |facing: Facing| {
        let side = match facing {
            Facing::North => Compass::North,
            Facing::East => Compass::East,
            Facing::South => Compass::South,
            Facing::West => Compass::West,
            Facing::Slanted => return None,
        };
        written
            .edges
            .iter()
            .find(|(compass, _)| *compass == side)
            .map(|(_, kind)| *kind)
    };
    let leg_says = |leg: usize| {
        if let ShapeWritten::Walked(legs, _) = &written.shape {
            legs.get(leg).and_then(|leg| leg.value.against)
        } else {
            None
        }
    };
    let sides = outline.sides().iter().enumerate();
    sides
        .map(|(i, side)| EdgePart {
            side: i,
            kind: leg_says(side.leg)
                .or_else(|| named(side.facing()))
                .unwrap_or(EdgeKind::Open),
            stretch: None,
        })
        .collect()
}

/// Gives every slab its pour; a single pour without names takes them all.
fn pours(
    written: &[super::written::PourWritten],
    slabs: &mut [(Slab, SlabWritten)],
    problems: &mut Problems,
) -> Vec<Placement> {
    let mut named = vec![None; slabs.len()];
    for (number, pour) in written.iter().enumerate() {
        for name in &pour.slabs {
            match slabs.iter().position(|(slab, _)| slab.key == name.value) {
                Some(i) if named[i].is_some() => problems.push(
                    Problem::new("poured-twice", format!("`{}` is poured twice", name.value))
                        .at(name.place)
                        .help("name it in one pour only"),
                ),
                Some(i) => named[i] = Some(number),
                None => problems.push(
                    Problem::new(
                        "unknown-slab",
                        format!("this job has no slab `{}`", name.value),
                    )
                    .at(name.place)
                    .help("use a name from `slabs`"),
                ),
            }
        }
    }
    for (i, (slab, _)) in slabs.iter_mut().enumerate() {
        match named[i] {
            Some(number) => slab.placement = number,
            None if 1 < written.len() => problems.push(
                Problem::new("not-poured", format!("no pour names `{}`", slab.key))
                    .at(slab.place)
                    .help("add it to the `slabs` of a pour"),
            ),
            None => {}
        }
    }
    if written.is_empty() {
        return vec![Placement { day: None }];
    }
    written
        .iter()
        .map(|pour| Placement {
            day: Some(pour.day.clone()),
        })
        .collect()
}
