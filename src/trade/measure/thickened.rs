//! Thickened edges: what they add below the slab, and the bars along them.

use rust_decimal::Decimal;

use super::bars::{self, BarQuantities, Run};
use super::lap;
use super::rows::SHORTEST;
use super::strips::Turns;
use super::{Measuring, edges};
use crate::geometry::Compass;
use crate::geometry::rim::{self, Strip};
use crate::input::job::Slab;
use crate::reading::At;
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

const TAPER: &str = "half of length × taper; each corner takes off taper × (width + taper ÷ 3), an inside corner adds it";

#[derive(Clone, Debug)]
pub struct ThickenedQuantities {
    /// What is thickened, and how long it is along the outside.
    sides: Vec<(Strip, Quantity)>,
    /// Below the slab.
    pub concrete: Quantity,
    /// Of it what goes deeper than the base, where there is one and anything does.
    pub below_base: Option<Quantity>,
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
    let corners = Turns::of(slab, "edge corners", &rim::corners(&slab.outline, &strips));
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
    let run = thickened.taper.as_ref();
    let run = run.map(|run| Quantity::feet("taper", run));
    let tapered = |run: &Quantity| {
        corners.off(of(&length) * run / number(2), |corners| {
            of(corners) * run * (of(&width) + of(run) / number(3))
        })
    };
    let taper = run
        .as_ref()
        .map(|run| tally.by(TAPER, "taper", Unit::SquareFoot, tapered(run)));
    let thickness = &thickness_there(slab, &strips, thickness);
    let depth = Quantity::inches("edge depth", &thickened.depth);
    let below = of(&depth) - thickness;
    let bottom = |taper: Option<&Quantity>| match taper {
        Some(taper) => of(&strip) + taper,
        None => of(&strip),
    };
    let concrete = tally.by(
        "strip × (whole depth − thickness) ÷ 324 = cu yd",
        "thickened concrete",
        Unit::CubicYard,
        yard::volume(bottom(taper.as_ref()), below.clone()),
    );
    let below_base = slab.base.as_ref().and_then(|base| {
        let base = Quantity::inches("base depth", &base.depth);
        let deeper = below.clone() - &base;
        if deeper.value() <= Decimal::ZERO {
            return None;
        }
        // A taper comes up evenly: below the base it runs as far in as it is still deep there.
        let taper = run.as_ref().map(|run| {
            let run = of(run) * deeper.clone() / below.clone();
            let run = tally.between(
                "taper × what is below the base ÷ all below the slab",
                "taper below the base",
                Unit::Foot,
                run,
            );
            tally.between(
                TAPER,
                "tapered area below the base",
                Unit::SquareFoot,
                tapered(&run),
            )
        });
        Some(tally.between(
            "strip × (whole depth − thickness − base) ÷ 324 = cu yd",
            "thickened concrete below the base",
            Unit::CubicYard,
            yard::volume(bottom(taper.as_ref()), deeper),
        ))
    });
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
        below_base,
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

/// Bars along each side, less cover at both ends, lapped where a stick is too short.
pub(super) fn bars(
    slab: &Slab,
    edge: &ThickenedQuantities,
    with: Measuring<'_>,
    tally: &Tally<'_>,
) -> Option<BarQuantities> {
    let wanted = slab.sections.thickened.as_ref()?.bars.as_ref()?;
    let covered = with.policy.cover.value * 2;
    let run = |(strip, length): &(Strip, Quantity)| {
        let whole = strip
            .stretch
            .map_or_else(|| Length::of_feet(length.value()), |(from, to)| to - from);
        whole - covered
    };
    let runs: Vec<(Length, u32)> = edge.sides.iter().map(|side| (run(side), 1)).collect();
    let found = bars::along(slab, wanted, &runs, with)?;
    let long = edge.sides.iter().filter(|side| SHORTEST <= run(side));
    let long: Vec<&Quantity> = long.map(|(_, length)| length).collect();
    let each = Quantity::given(
        "bars along the edge",
        Amount::new(wanted.value.count.into(), Unit::Plain),
        wanted.place,
    );
    let cover = Quantity::feet("cover", &with.policy.cover);
    let ends = number(Decimal::from(2 * long.len()));
    let placed = of(&each) * (sum(long) - ends * &cover);
    let rule = "bars × (sides less cover at both ends), and a lap for each splice";
    Some(found.placed(rule, "edge", placed, tally))
}

/// An L for each bar at each corner where two edges meet: both its legs lap with a bar along an edge.
pub(super) fn bent(
    slab: &Slab,
    edge: &ThickenedQuantities,
    with: Measuring<'_>,
    tally: &Tally<'_>,
) -> Option<BarQuantities> {
    let wanted = slab.sections.thickened.as_ref()?.bars.as_ref()?;
    let strips: Vec<Strip> = edge.sides.iter().map(|(strip, _)| *strip).collect();
    let sharp = rim::corners(&slab.outline, &strips).sharp;
    let many = u32::try_from(sharp).expect("corners of one slab");
    let wanted_here = with.policy.bent_corner_bars && many != 0;
    let (stock, lap) = bars::stock_and_lap(slab, wanted.value.bar, with).filter(|_| wanted_here)?;
    let count = many * wanted.value.count;
    let corners = Quantity::new(
        tally.name("corners of edge bars"),
        Amount::new(many.into(), Unit::Plain),
        Working::Shape {
            how: "where two edges with bars meet, turned by more than 30 degrees".to_owned(),
            place: wanted.place,
        },
    );
    let each = Quantity::given(
        "bars along the edge",
        Amount::new(wanted.value.count.into(), Unit::Plain),
        wanted.place,
    );
    let feet = of(&corners) * &each * number(Decimal::TWO) * &lap.length / number(12);
    let rule = "corners × bars × two legs, each as long as the lap; common practice, no source";
    let legs = lap::as_length(&lap.length) * 2;
    Some(BarQuantities::bent(
        (
            wanted.value.bar,
            Run::of(legs, count, stock.stock.value, lap::as_length(&lap.length)),
        ),
        lap,
        tally.between(rule, "bent corner bars", Unit::Foot, feet),
        tally,
    ))
}
