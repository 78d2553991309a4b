//! Thickened edges: what they add below the slab, and the bars along them.

use rust_decimal::Decimal;

use super::bars::{BarQuantities, Run, stock_and_lap, weigh};
use super::{Measuring, edges, lap};
use crate::geometry::Compass;
use crate::geometry::rim::{self, Corners, Strip};
use crate::input::job::Slab;
use crate::reading::At;
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Shorter stretches carry no bars of their own.
const SHORTEST: Length = Length::inches_whole(6);

#[derive(Clone, Debug)]
pub struct ThickenedQuantities {
    /// What is thickened, and how long it is along the outside.
    sides: Vec<(Strip, Quantity)>,
    /// Below the slab.
    pub concrete: Quantity,
    /// Room inside the walls of a stoop, for fill.
    pub core: Option<Quantity>,
}

pub(super) fn measure(
    slab: &Slab,
    area: &Quantity,
    thickness: &Quantity,
    tally: &mut Tally<'_>,
) -> Option<ThickenedQuantities> {
    let thickened = slab.sections.thickened.as_ref()?;
    let strips = slab.thickened_strips();
    let lengths: Vec<Quantity> = strips
        .iter()
        .map(|strip| edges::along(slab, strip.side, strip.stretch))
        .collect();
    let length = tally.by(
        "sides added up",
        "thickened edge",
        Unit::Foot,
        sum(&lengths),
    );
    let corners = Turns::of(slab, &rim::corners(&slab.outline, &strips));
    let width = Quantity::feet("edge width", &thickened.width);
    // Bottom of the edge, corners counted once.
    let strip = tally.by(
        "length × width; each corner takes off a square of the width, an inside corner adds one",
        "thickened strip",
        Unit::SquareFoot,
        corners.off(of(&length) * &width, |corners| {
            of(corners) * &width * &width
        }),
    );
    // What a taper adds, as if it were as deep as the edge.
    let taper = thickened.taper.as_ref().map(|run| {
        let run = Quantity::feet("taper", run);
        tally.by(
            "half of length × taper; each corner takes off taper × (width + taper ÷ 3), an inside corner adds it",
            "taper",
            Unit::SquareFoot,
            corners.off(of(&length) * &run / number(2), |corners| {
                of(corners) * &run * (of(&width) + of(&run) / number(3))
            }),
        )
    });
    let thickness = &thickness_there(slab, &strips, thickness);
    let depth = Quantity::inches("edge depth", &thickened.depth);
    let below = of(&depth) - thickness;
    let bottom = match &taper {
        Some(taper) => of(&strip) + taper,
        None => of(&strip),
    };
    let concrete = tally.by(
        "strip × (whole depth − thickness) ÷ 324 = cu yd",
        "thickened concrete",
        Unit::CubicYard,
        yard::volume(bottom, below.clone()),
    );
    let filled = slab.sections.is_filled();
    let core = filled.then(|| {
        tally.by(
            "inside the walls and below the slab ÷ 324 = cu yd",
            "fill",
            Unit::CubicYard,
            yard::volume(of(area) - &strip, below),
        )
    });
    Some(ThickenedQuantities {
        sides: strips.into_iter().zip(lengths).collect(),
        concrete,
        core,
    })
}

/// Of the end the edges stand at, where they all stand at one end of a slab that is not even.
fn thickness_there(slab: &Slab, strips: &[Strip], mean: &Quantity) -> Quantity {
    let thin = slab.thickness.value.thin;
    let Some((thick, Some(toward))) = slab.thickness.value.thick else {
        return mean.clone();
    };
    let place = slab.thickness.place;
    let inches = |name: &'static str, value| Quantity::inches(name, &At { value, place });
    let all_look = |way: Compass| {
        let mut sides = strips.iter().map(|strip| &slab.outline.sides()[strip.side]);
        sides.all(|side| side.facing() == Some(way))
    };
    if all_look(toward) {
        inches("thick end", thick)
    } else if all_look(toward.opposite()) {
        inches("thin end", thin)
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
pub(super) fn bars(
    slab: &Slab,
    edge: &ThickenedQuantities,
    with: Measuring<'_>,
    tally: &Tally<'_>,
) -> Option<BarQuantities> {
    let wanted = slab.sections.thickened.as_ref()?.bars.as_ref()?;
    let (bar, count) = (wanted.value.bar, wanted.value.count);
    let (stock, lap) = stock_and_lap(slab, bar, with)?;
    let splice = lap::as_length(&lap.length);
    let covered = with.policy.cover.value * 2;
    let mut runs: Vec<Run> = Vec::new();
    let mut long: Vec<&Quantity> = Vec::new();
    for (strip, length) in &edge.sides {
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
    let cover = Quantity::feet("cover", &with.policy.cover);
    let ends = number(Decimal::from(2 * long.len()));
    let mut placed = of(&each) * (sum(long) - ends * &cover);
    if splices != 0 {
        placed = placed + number(splices) * &lap.length / number(12);
    }
    let placed = tally.between(
        "bars × (sides less cover at both ends), and a lap for each splice",
        "edge bars",
        Unit::Foot,
        placed,
    );
    Some(BarQuantities {
        weight: weigh(bar, &placed, tally.name("edge bar weight")),
        bar,
        runs,
        lap: (splices != 0).then_some(lap),
        placed,
    })
}
