//! Thickened edges: what they add below the slab, and the bars along them.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::bars::weigh;
use super::lap;
use super::{BarQuantities, Run, edges};
use crate::geometry::Compass;
use crate::geometry::rim::{self, Corners, Strip};
use crate::input::book::Rules;
use crate::input::business::OrderPolicy;
use crate::input::job::{Slab, Thickened};
use crate::trade::sets::Sets;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Shorter stretches carry no bars of their own.
const SHORTEST: Length = Length::inches_whole(6);

#[derive(Clone, Debug)]
pub struct ThickenedQuantities {
    /// Along the outside.
    pub length: Quantity,
    /// Bottom of the edge, corners counted once.
    pub strip: Quantity,
    /// What a taper adds, as if it were as deep as the edge.
    pub taper: Option<Quantity>,
    /// Below the slab.
    pub concrete: Quantity,
    pub bars: Option<BarQuantities>,
    /// Room inside the walls of a stoop, for fill.
    pub core: Option<Quantity>,
}

pub(super) fn measure(
    slab: &Slab,
    area: &Quantity,
    thickness: &Quantity,
    (policy, rules): (&OrderPolicy, &Rules),
    sets: Sets<'_>,
) -> Option<ThickenedQuantities> {
    let thickened = slab.sections.thickened.as_ref()?;
    let strips = slab.thickened_strips();
    let lengths: Vec<Quantity> = strips
        .iter()
        .map(|strip| edges::along(slab, strip.side, strip.stretch))
        .collect();
    let length = sets.settle(Quantity::by(
        "sides added up",
        format!("{} thickened edge", slab.key),
        Unit::Foot,
        sum(&lengths),
    ));
    let corners = Turns::of(slab, &rim::corners(&slab.outline, &strips));
    let width = Quantity::feet("edge width", &thickened.width);
    let strip = sets.settle(Quantity::by(
        "length × width; each corner takes off a square of the width, an inside corner adds one",
        format!("{} thickened strip", slab.key),
        Unit::SquareFoot,
        corners.off(of(&length) * &width, |corners| {
            of(corners) * &width * &width
        }),
    ));
    let taper = thickened.taper.as_ref().map(|run| {
        let run = Quantity::feet("taper", run);
        sets.settle(Quantity::by(
            "half of length × taper; each corner takes off taper × (width + taper ÷ 3), an inside corner adds it",
            format!("{} taper", slab.key),
            Unit::SquareFoot,
            corners.off(of(&length) * &run / number(2), |corners| {
                of(corners) * &run * (of(&width) + of(&run) / number(3))
            }),
        ))
    });
    let thickness = &thickness_there(slab, &strips, thickness);
    let depth = Quantity::inches("edge depth", &thickened.depth);
    let below = of(&depth) - thickness;
    let bottom = match &taper {
        Some(taper) => of(&strip) + taper,
        None => of(&strip),
    };
    let concrete = sets.settle(Quantity::by(
        "strip × (whole depth − thickness) ÷ 324 = cu yd",
        format!("{} thickened concrete", slab.key),
        Unit::CubicYard,
        bottom * below.clone() / number(dec!(324)),
    ));
    let filled = slab.sections.is_filled();
    let core = filled.then(|| {
        sets.settle(Quantity::by(
            "inside the walls and below the slab ÷ 324 = cu yd",
            format!("{} fill", slab.key),
            Unit::CubicYard,
            (of(area) - &strip) * below / number(dec!(324)),
        ))
    });
    Some(ThickenedQuantities {
        bars: bars(slab, thickened, &strips, &lengths, (policy, rules), sets),
        length,
        strip,
        taper,
        concrete,
        core,
    })
}

/// Of the end the edges stand at, where they all stand at one end of a slab that is not even.
fn thickness_there(slab: &Slab, strips: &[Strip], mean: &Quantity) -> Quantity {
    let Some(end) = &slab.sections.thick_end else {
        return mean.clone();
    };
    let Some(toward) = end.toward else {
        return mean.clone();
    };
    let all_look = |way: Compass| {
        let mut sides = strips.iter().map(|strip| &slab.outline.sides()[strip.side]);
        sides.all(|side| side.facing() == Some(way))
    };
    if all_look(toward) {
        Quantity::inches("thick end", &end.thickness)
    } else if all_look(toward.opposite()) {
        Quantity::inches("thin end", &slab.thickness)
    } else {
        mean.clone()
    }
}

/// How many squares of the width the corners take off, or add where more of them turn inward.
enum Turns {
    None,
    Off(Quantity),
    On(Quantity),
}

impl Turns {
    fn of(slab: &Slab, found: &Corners) -> Self {
        if found.squares.is_zero() {
            return Self::None;
        }
        let count = |number: usize, what: &str| {
            let s = if number == 1 { "" } else { "s" };
            (number != 0).then(|| format!("{number} {what} corner{s}"))
        };
        let mut how: Vec<String> = [
            count(found.outside, "outside"),
            count(found.inside, "inside"),
        ]
        .into_iter()
        .flatten()
        .collect();
        if found.uneven {
            how.push("slants and curves by how far they turn".into());
        }
        let squares = Quantity::new(
            format!("{} edge corners", slab.key),
            Amount::new(found.squares.abs(), Unit::Plain),
            Working::Shape {
                how: how.join(", "),
                place: slab.place,
            },
        );
        if found.squares < Decimal::ZERO {
            Self::On(squares)
        } else {
            Self::Off(squares)
        }
    }

    /// `flat` without what the corners take off.
    fn off(&self, flat: Term, each: impl FnOnce(&Quantity) -> Term) -> Term {
        match self {
            Self::None => flat,
            Self::Off(squares) => flat - each(squares),
            Self::On(squares) => flat + each(squares),
        }
    }
}

/// Bars along each side, less cover at both ends, lapped where a stick is too short.
fn bars(
    slab: &Slab,
    thickened: &Thickened,
    strips: &[Strip],
    lengths: &[Quantity],
    (policy, rules): (&OrderPolicy, &Rules),
    sets: Sets<'_>,
) -> Option<BarQuantities> {
    let wanted = thickened.bars.as_ref()?;
    let (bar, count) = (wanted.value.bar, wanted.value.count);
    let stock = rules.bars.get(&bar.to_string())?;
    let lap = lap::lap(&slab.key, bar, stock, rules.mixes.get(&slab.mix.value)?);
    let splice = lap::as_length(&lap);
    let covered = policy.cover.value * 2;
    let mut runs: Vec<Run> = Vec::new();
    let mut long: Vec<&Quantity> = Vec::new();
    for (strip, length) in strips.iter().zip(lengths) {
        let run = strip
            .stretch
            .map_or_else(|| Length::of_feet(length.value()), |(from, to)| to - from)
            - covered;
        if run < SHORTEST {
            continue;
        }
        long.push(length);
        match runs.iter_mut().find(|known| known.length == run) {
            Some(known) => known.count += count,
            None => runs.push(Run::of(run, count, stock.stock.value, splice)),
        }
    }
    runs.sort_by_key(|run| std::cmp::Reverse(run.length));
    let splices: u32 = runs.iter().map(|run| run.count * (run.pieces - 1)).sum();
    let each = Quantity::given(
        "bars along the edge",
        Amount::new(count.into(), Unit::Plain),
        wanted.place,
    );
    let cover = Quantity::feet("cover", &policy.cover);
    let ends = number(Decimal::from(2 * long.len()));
    let mut placed = of(&each) * (sum(long) - ends * &cover);
    if splices != 0 {
        placed = placed + number(splices) * &lap / number(12);
    }
    let placed = sets.settle(Quantity::by(
        "bars × (sides less cover at both ends), and a lap for each splice",
        format!("{} edge bars", slab.key),
        Unit::Foot,
        placed,
    ));
    Some(BarQuantities {
        weight: weigh(bar, &placed, format!("{} edge bar weight", slab.key)),
        bar,
        runs,
        placed,
    })
}
