//! Concrete of a slab: volumes before any allowance.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{BoxQuantities, OpeningQuantities, StepQuantities, ThickenedQuantities};
use crate::geometry::Compass;
use crate::input::job::Slab;
use crate::reading::At;
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

const HALF: Decimal = dec!(0.5);

/// Of an even slab as written, else that at the middle of its area, since it rises evenly.
pub(super) fn thickness(
    slab: &Slab,
    openings: &[OpeningQuantities],
    tally: &mut Tally<'_>,
) -> Quantity {
    let place = slab.thickness.place;
    let inches = |name: &'static str, value| Quantity::inches(name, &At { value, place });
    let thin = inches("thickness", slab.thickness.value.thin);
    let Some((thick, toward)) = slab.thickness.value.thick else {
        return thin;
    };
    let thick = match risen(slab, toward, &thin) {
        Some(risen) => {
            let rule = "thickness of the low end + fall × run";
            tally.between(rule, "thick end on a level base", Unit::Inch, risen)
        }
        None => inches("thick end", thick),
    };
    // Nobody knows toward which side it rises: as a rectangle.
    let share = toward.map_or(HALF, |toward| {
        let holes = openings.iter().zip(slab.outline.holes());
        let taken_off = holes.filter(|(opening, _)| opening.is_taken_off);
        slab.outline.middle(toward, taken_off.map(|(_, hole)| hole))
    });
    let (rule, mean) = if share == HALF {
        (
            "the mean of thin and thick end; exact for rectangles",
            (of(&thin) + &thick) / number(2),
        )
    } else {
        let share = Quantity::new(
            tally.name("middle of the area"),
            Amount::new(share, Unit::Plain),
            Working::Shape {
                how: "how much of the way from the thin end to the thick one".to_owned(),
                place: slab.outline_place,
            },
        );
        (
            "at the middle of its area, so much of the way from the thin end to the thick one",
            of(&thin) + (of(&thick) - &thin) * &share,
        )
    };
    tally.by(rule, "mean thickness", Unit::Inch, mean)
}

/// The high end of a slab that falls upon a level base.
fn risen(slab: &Slab, toward: Option<Compass>, thin: &Quantity) -> Option<Term> {
    let fall = slab.falls.first().filter(|_| slab.is_level_below)?;
    let run = At {
        value: slab.outline.run(toward?),
        place: slab.outline_place,
    };
    let rise = Quantity::inches("fall in a foot", &fall.rise);
    let feet = of(&Quantity::feet("run of the fall", &run));
    Some(of(thin) + of(&rise) * feet)
}

/// What a slab takes more because its bottom is level, for whoever wonders.
pub(super) fn over_level_base(
    slab: &Slab,
    area: &Quantity,
    mean: &Quantity,
    tally: &mut Tally<'_>,
) {
    if slab.is_level_below {
        let place = slab.thickness.place;
        let thin = Quantity::inches(
            "thickness",
            &At {
                value: slab.thickness.value.thin,
                place,
            },
        );
        let more = yard::volume(of(area), of(mean) - &thin);
        let rule = "area × (mean thickness − that of the low end) ÷ 324, in the concrete already";
        let more = tally.between(rule, "more on a level base", Unit::CubicYard, more);
        tally.list([&more]);
    }
}

/// The slab by itself, less the boxes large enough to count.
pub(super) fn flat(
    slab: &Slab,
    area: &Quantity,
    thickness: &Quantity,
    boxes: &[BoxQuantities],
    tally: &mut Tally<'_>,
) -> Quantity {
    let is_all = slab.sections.thickened.is_none() && slab.sections.steps.is_none();
    let title = if is_all { "concrete" } else { "flat concrete" };
    let volume = yard::volume(of(area), thickness);
    let deducted = boxes.iter().filter(|one| one.is_deducted);
    let mut deducted = deducted.map(|one| &one.displaced).peekable();
    let flat = if deducted.peek().is_none() {
        tally.between(yard::VOLUME, title, Unit::CubicYard, volume)
    } else {
        let name = tally.name("concrete without boxes");
        let before = Quantity::by(yard::VOLUME, name, Unit::CubicYard, volume);
        tally.between(
            "less what the boxes displace that are no smaller than your smallest opening",
            title,
            Unit::CubicYard,
            of(&before) - sum(deducted),
        )
    };
    if !is_all {
        tally.list([&flat]);
    }
    flat
}

/// The slab with its thickened edges and its steps.
pub(super) fn whole(
    flat: &Quantity,
    thickened: Option<&ThickenedQuantities>,
    steps: Option<&StepQuantities>,
    tally: &mut Tally<'_>,
) -> Quantity {
    if thickened.is_none() && steps.is_none() {
        tally.list([flat]);
        return flat.clone();
    }
    let parts = [
        Some(flat),
        thickened.map(|edge| &edge.concrete),
        steps.and_then(|steps| steps.concrete.as_ref()),
    ];
    tally.by(
        "slab, thickened edges and steps",
        "concrete",
        Unit::CubicYard,
        sum(parts.into_iter().flatten()),
    )
}
