//! One slab with every name known: its kind, mix, base, steel and finish.

use super::names::{kind, known, meant};
use super::openings::openings;
use super::sections::sections;
use super::shape::{Edges, edges, outline, shape_place};
use super::steel;
use super::surface::{Said, fits, surface};
use super::{dowels, falls};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::input::job::Base;
use crate::input::job::takeoff::Slab;
use crate::input::job::written::{ShapeWritten, SlabWritten};
use crate::input::job::{Pin, sanity};
use crate::input::phrases::BasePhrase;
use crate::reading::{At, Problem, Problems, Read};

#[expect(
    clippy::too_many_lines,
    reason = "one look-up after another, each of a few lines"
)]
pub(super) fn slab(
    written: &SlabWritten,
    book: &PriceBook,
    business: &Business,
    problems: &mut Problems,
) -> Read<Slab> {
    let key = &written.key.value;
    // Without a kind, what the slab says itself is looked up all the same.
    let kind = kind(written, business, problems);
    let (values, mut usual) = match &kind {
        Ok(kind) => written.values.clone().or(&business.kinds[kind].values),
        Err(_) => (written.values.clone(), Vec::new()),
    };
    let outline = outline(&written.shaped.shape, problems);
    let missing = |what: &str, problems: &mut Problems| {
        let kind = match &kind {
            Ok(kind) => kind,
            Err(reported) => return *reported,
        };
        let message = format!("`{key}` has no {what}, and neither has its kind `{kind}`");
        problems.push(
            Problem::new("no-usual-value", message)
                .at(written.key.place)
                .help(format!(
                    "write `{what}` below it, or under `kinds` in business.yaml"
                )),
        )
    };
    let thickness = values.thickness;
    let thickness = thickness.ok_or_else(|| missing("thickness", problems));
    let mix = values.mix.ok_or_else(|| missing("mix", problems));
    let mix = mix.and_then(|mix| meant(mix, &book.rules.mixes, "mix", problems));
    // What stands upon another slab lies on concrete; a base is there only where it is said.
    let values_base = if written.on.is_some() && written.values.base.is_none() {
        usual.retain(|name| *name != "base");
        None
    } else {
        values.base
    };
    let base = match values_base {
        Some(At {
            value: BasePhrase::Of { depth, material },
            place,
        }) => {
            let material = At {
                value: material,
                place,
            };
            let depth = At {
                value: depth,
                place,
            };
            let known = known(&material, &book.rules.bases, "base", problems);
            known.map(|_| Some(Base { depth, material }))
        }
        Some(At {
            value: BasePhrase::None,
            ..
        })
        | None => Ok(None),
    };
    // What goes by the mix is not asked where nobody knows it.
    let mixed = mix.as_ref().ok();
    let bars = steel::bars(values.bars.as_ref(), mixed, book, problems);
    let across = steel::Across {
        said: values.corner_bars.as_ref(),
        is_own: written.values.corner_bars.is_some(),
        usual: &business.order.corner_bars,
    };
    let corner_bars = match &bars {
        Ok(bars) => steel::corner_bars(across, bars.as_ref(), book, problems),
        Err(reported) => Err(*reported),
    };
    let optional = |name: Option<At<String>>| name.filter(|name| name.value != "none");
    let mesh = optional(values.mesh);
    let mesh = mesh.map(|name| known(&name, &book.rules.mesh, "mesh", problems).map(|_| name));
    let fiber = optional(values.fiber);
    let fiber = fiber.map(|name| known(&name, &book.rules.fiber, "fiber", problems).map(|_| name));
    let finish = values.finish.unwrap_or_else(|| At {
        value: "broom".to_owned(),
        place: written.key.place,
    });
    let surface = surface(
        Said {
            border: values.border,
            color: values.color,
            seal: values.seal,
            curing: values.curing,
        },
        &finish.value,
        mixed,
        written.key.place,
        book,
        problems,
    );
    let outline = outline?;
    let level = values.level_base;
    let levels = falls::levels(written, &outline, problems)?;
    let falls = match &levels {
        Some(levels) => falls::shot(written, levels),
        None => falls::falls(written, values.fall, problems),
    };
    let thickness = thickness
        .map(|thickness| falls::on_level(thickness, level.as_ref(), &falls, &outline, problems));
    let sections = thickness.map(|thickness| {
        let (thickened, retarder) = (values.thickened, values.retarder);
        let rules = &book.rules;
        sections(
            written, thickness, thickened, retarder, &outline, rules, problems,
        )
    });
    let (outline, mut openings) = openings(written, outline, problems)?;
    sanity::area(key, &outline, shape_place(&written.shaped.shape), problems);
    let Edges { own: edges, middle } = edges(written, &outline, problems);
    let ring = openings.iter_mut().find(|opening| opening.of_ring);
    for part in ring.into_iter().flat_map(|ring| &mut ring.edges) {
        part.kind = middle.unwrap_or(part.kind);
    }
    let mut across =
        |pin, phrase| dowels::across(pin, phrase, &edges, &written.key, book, problems);
    let doweled = across(Pin::Dowels, values.dowels);
    let tied = across(Pin::Ties, values.ties);
    let (mesh, fiber) = (mesh.transpose()?, fiber.transpose()?);
    let (thickness, sections) = sections?;
    // A solid stoop is as thick as its steps are high, whatever is usual.
    usual.retain(|key| *key != "thickness" || !sections.is_solid());
    let surface = surface?;
    if let Some(border) = &surface.border {
        fits(border, &outline, problems);
    }
    Ok(Slab {
        key: key.clone(),
        place: written.key.place,
        called: written.called.clone().unwrap_or_else(|| key.clone()),
        edges,
        boxes: Vec::new(),
        around: written.around.clone(),
        carries: values.carries,
        inside: values.inside,
        outline,
        outline_place: shape_place(&written.shaped.shape),
        width: written.shaped.shape.width(),
        openings,
        size: if let ShapeWritten::Size(size) = &written.shaped.shape {
            Some(size.clone())
        } else {
            None
        },
        thickness,
        allowance: values.allowance,
        mix: mix?,
        base: base?,
        bars: bars?,
        corner_bars: corner_bars?,
        mesh,
        steel_at_joints: values
            .steel_at_joints
            .as_ref()
            .map_or(business.order.steel_at_joints.value, |said| said.value),
        dowels: doweled?,
        ties: tied?,
        fiber,
        finish,
        border: surface.border,
        color: surface.color,
        seal: surface.seal,
        curing: surface.curing,
        joints: values.joints.and_then(|joints| {
            joints.value.map(|value| At {
                value,
                place: joints.place,
            })
        }),
        drawn: Vec::new(),
        matched: Vec::new(),
        sawn: values.sawn,
        falls,
        levels,
        is_level_below: level.is_some_and(|level| level.value),
        lower: falls::lower(written, problems),
        sections,
        stands_alone: written.on.is_none() && written.beside.is_none(),
        on: written.on.as_ref().map(|on| on.value.slab.clone()),
        usual,
        kind: kind?,
        placement: 0,
    })
}
