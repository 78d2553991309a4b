//! A flight of steps: an exact prism of concrete, its risers, its faces.

use super::bars::{BarQuantities, along};
use super::{BaseQuantities, Measuring};
use crate::input::job::{Slab, Steps};
use crate::reading::At;
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Debug)]
pub struct StepQuantities {
    /// How many, the step up onto the slab too.
    pub risers: Quantity,
    /// Below the treads; the top riser is the slab's own edge.
    pub concrete: Option<Quantity>,
    /// Feet of riser: a board each, and a nosing to round.
    pub riser_form: Quantity,
    /// Feet of form at both sides of the flight.
    pub side_form: Option<Quantity>,
    /// Square feet that the boards of risers hold.
    pub riser_face: Quantity,
    /// Square feet at both sides of the flight.
    pub side_face: Option<Quantity>,
    /// Risers and treads.
    pub face: Quantity,
    /// Under the steps below the slab.
    pub base: Option<BaseQuantities>,
    /// Along each of them.
    pub bars: Option<BarQuantities>,
}

pub(super) fn measure(
    slab: &Slab,
    with: Measuring<'_>,
    tally: &mut Tally<'_>,
) -> Option<StepQuantities> {
    let steps = slab.sections.steps.as_ref()?;
    let risers = Quantity::given(
        tally.name("risers"),
        Amount::new(steps.risers.value.into(), Unit::Piece),
        steps.risers.place,
    );
    let width = Quantity::feet("steps width", &steps.width);
    let rise = Quantity::feet("rise", &steps.rise);
    tally.list([&risers]);
    let tread = steps.tread.as_ref().filter(|_| 1 < steps.risers.value);
    let concrete = tread.map(|tread| prism(steps, tread, &risers, &width, tally));
    let riser_form = tally.by(
        "risers × width",
        "riser form",
        Unit::Foot,
        of(&risers) * &width,
    );
    let tread = tread.map(|tread| Quantity::feet("tread", tread));
    let treads = || of(&risers) - number(1);
    let base = steps.base.as_ref().zip(tread.as_ref());
    let base = base.map(|(base, tread)| {
        let area = treads() * tread * &width;
        let area = tally.by(
            "treads × tread × width",
            "under steps",
            Unit::SquareFoot,
            area,
        );
        let depth = Quantity::inches("base depth of steps", &base.depth);
        let volume = yard::volume(of(&area), &depth);
        let compacted = tally.by(yard::VOLUME, "base of steps", Unit::CubicYard, volume);
        BaseQuantities { area, compacted }
    });
    let bars = bars(slab, steps, &width, with, tally);
    let side_form = tread.as_ref().map(|tread| {
        tally.by(
            "both sides × treads × tread",
            "step sides",
            Unit::Foot,
            number(2) * treads() * tread,
        )
    });
    let faces = of(&riser_form) * &rise;
    let riser_face = tally.between(
        "risers × width × rise",
        "face of risers",
        Unit::SquareFoot,
        faces.clone(),
    );
    let thick = steps.thick();
    let thick = thick
        .as_ref()
        .map(|thick| Quantity::inches("thickness of steps", thick));
    let side_face = tread.as_ref().map(|tread| match &thick {
        Some(thick) => tally.between(
            "both sides × treads × tread × thickness below each ÷ 12",
            "face of step sides",
            Unit::SquareFoot,
            number(2) * treads() * tread * thick / number(12),
        ),
        None => tally.between(
            "both sides × tread × rise × (1 + 2 + … to the risers less one) ÷ 12",
            "face of step sides",
            Unit::SquareFoot,
            of(tread) * &Quantity::inches("rise", &steps.rise) * &risers * treads() / number(12),
        ),
    });
    let face = tally.by(
        "risers, and the treads below the slab",
        "step face",
        Unit::SquareFoot,
        match &tread {
            Some(tread) => faces + treads() * tread * &width,
            None => faces,
        },
    );
    Some(StepQuantities {
        risers,
        concrete,
        riser_form,
        side_form,
        riser_face,
        side_face,
        face,
        base,
        bars,
    })
}

impl StepQuantities {
    /// What is dug out for their base.
    pub(super) fn dug(&self) -> Option<&Quantity> {
        self.base.as_ref().map(|base| &base.compacted)
    }
}

/// As long as the flight is wide, less cover at both ends.
fn bars(
    slab: &Slab,
    steps: &Steps,
    width: &Quantity,
    with: Measuring<'_>,
    tally: &mut Tally<'_>,
) -> Option<BarQuantities> {
    let wanted = steps.bars.as_ref()?;
    let run = steps.width.value - with.policy.cover.value * 2;
    let found = along(slab, wanted, &[(run, steps.treads())], with)?;
    let each = Quantity::given(
        "bars in each step",
        Amount::new(wanted.value.count.into(), Unit::Plain),
        wanted.place,
    );
    let cover = Quantity::feet("cover", &with.policy.cover);
    let long = of(width) - number(2) * &cover;
    let placed = of(&each) * number(steps.treads()) * long;
    let rule = "bars × steps × (width less cover at both ends), and a lap for each splice";
    Some(found.placed(rule, "step", placed, tally))
}

/// Each step is a block down to the ground: one rise high, then two, and so on up to the slab; or
/// where the bottom goes up with them all of one thickness.
fn prism(
    steps: &Steps,
    tread: &At<Length>,
    risers: &Quantity,
    width: &Quantity,
    tally: &mut Tally<'_>,
) -> Quantity {
    let rise = Quantity::inches("rise", &steps.rise);
    let tread = Quantity::inches("tread", tread);
    if let Some(thick) = steps.thick() {
        let thick = Quantity::inches("thickness of steps", &thick);
        let rule =
            "width × tread × thickness below each × treads ÷ 3,888 = cu yd: 27 cu ft × 144 sq in";
        let term = of(width) * &tread * &thick * (of(risers) - number(1)) / number(3888);
        return tally.by(rule, "step concrete", Unit::CubicYard, term);
    }
    tally.by(
        "width × tread × rise × (1 + 2 + … to the risers less one) ÷ 3,888 = cu yd: 27 cu ft × 144 sq in",
        "step concrete",
        Unit::CubicYard,
        of(width) * &tread * &rise * risers * (of(risers) - number(1)) / number(2) / number(3888),
    )
}
