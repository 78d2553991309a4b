//! What a slab's surface is: its color, its sealer and how it is cured, by itself or by its finish.

use super::names::known;
use crate::geometry::Outline;
use crate::input::book::{Curing, PriceBook};
use crate::input::job::Border;
use crate::input::phrases::{BorderPhrase, Dose};
use crate::reading::{At, Place, Problem, Problems, Read};
use crate::values::Length;

/// What the slab or its kind says of it.
pub(super) struct Said {
    pub border: Option<At<BorderPhrase>>,
    pub color: Option<At<String>>,
    pub seal: Option<At<String>>,
    pub curing: Option<At<Curing>>,
}

/// Color, sealer and curing, every name known.
pub(super) struct Surface {
    pub border: Option<Border>,
    pub color: Option<At<String>>,
    pub seal: Option<At<String>>,
    pub curing: At<Curing>,
}

/// What the slab or its kind says wins over what comes with the finish; `none` leaves it out.
pub(super) fn surface(
    said: Said,
    finish: &str,
    mix: Option<&At<String>>,
    place: Place,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<Surface> {
    let before = problems.len();
    let rules = &book.rules;
    let entry = rules.finishes.get(finish);
    let is_one = |name: &&At<String>| name.value != "none";
    if let Some(name) = said.color.as_ref().filter(is_one) {
        let _ = known(name, &rules.colors, "color", problems);
    }
    if let Some(name) = said.seal.as_ref().filter(is_one) {
        let _ = known(name, &rules.sealers, "sealer", problems);
    }
    let named = |own: Option<At<String>>, usual: Option<&At<String>>| {
        own.or_else(|| usual.cloned())
            .filter(|name| name.value != "none")
    };
    let color = named(said.color, entry.and_then(|one| one.color.as_ref()));
    let seal = named(said.seal, entry.and_then(|one| one.seal.as_ref()));
    if let (Some(color), Some(mix)) = (&color, mix) {
        weighed(color, mix, book, problems);
    }
    let curing = said
        .curing
        .or_else(|| entry.and_then(|one| one.curing.clone()));
    let border = said.border.and_then(border);
    problems.none_since(before)?;
    Ok(Surface {
        border,
        color,
        seal,
        curing: curing.unwrap_or(At {
            value: Curing::Compound,
            place,
        }),
    })
}

fn border(said: At<BorderPhrase>) -> Option<Border> {
    match said.value {
        BorderPhrase::None => None,
        BorderPhrase::Of { width, finish } => Some(Border {
            width: At {
                value: width,
                place: said.place,
            },
            finish: At {
                value: finish,
                place: said.place,
            },
        }),
    }
}

/// A border leaves something inside it.
pub(super) fn fits(border: &Border, outline: &Outline, problems: &mut Problems) {
    let (low, high) = outline.bounds();
    let narrow = Length::nanometres((high.x - low.x).min(high.y - low.y));
    if border.width.value * 2 < narrow {
        return;
    }
    let message = format!(
        "a border of `{}` leaves nothing inside a slab `{narrow}` wide",
        border.width.value
    );
    problems.push(
        Problem::new("border-too-wide", message)
            .at(border.width.place)
            .help("make it narrower, or give the whole slab that finish"),
    );
}

/// A color by the weight of the cement needs to know how much cement there is.
fn weighed(color: &At<String>, mix: &At<String>, book: &PriceBook, problems: &mut Problems) {
    let rules = &book.rules;
    let (Some(stock), Some(known)) = (rules.colors.get(&color.value), rules.mixes.get(&mix.value))
    else {
        return;
    };
    if matches!(stock.dose.value, Dose::Cement(_)) && known.cement_content.is_none() {
        let message = format!(
            "`{}` goes by the weight of the cement, and the book does not say how much is in `{}`",
            color.value, mix.value
        );
        problems.push(
            Problem::new("no-cement-content", message)
                .at(color.place)
                .also(known.item.place, "the mix")
                .help("ask the plant, and write it with the mix, for example `cement content: 564 lb per cu yd`"),
        );
    }
}
