//! A flight of steps: an exact prism of concrete, its risers, its faces.

use crate::input::job::{Slab, Steps};
use crate::reading::At;
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
    /// Risers and treads.
    pub face: Quantity,
}

pub(super) fn measure(slab: &Slab, tally: &mut Tally<'_>) -> Option<StepQuantities> {
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
    let side_form = tread.as_ref().map(|tread| {
        tally.by(
            "both sides × treads × tread",
            "step sides",
            Unit::Foot,
            number(2) * treads() * tread,
        )
    });
    let faces = of(&riser_form) * &rise;
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
        face,
    })
}

/// Each step is a block down to the ground: one rise high, then two, and so on up to the slab.
fn prism(
    steps: &Steps,
    tread: &At<Length>,
    risers: &Quantity,
    width: &Quantity,
    tally: &mut Tally<'_>,
) -> Quantity {
    let rise = Quantity::inches("rise", &steps.rise);
    let tread = Quantity::inches("tread", tread);
    tally.by(
        "width × tread × rise × (1 + 2 + … to the risers less one) ÷ 3,888 = cu yd: 27 cu ft × 144 sq in",
        "step concrete",
        Unit::CubicYard,
        of(width) * &tread * &rise * risers * (of(risers) - number(1)) / number(2) / number(3888),
    )
}
