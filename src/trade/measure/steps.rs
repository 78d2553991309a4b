//! A flight of steps: an exact prism of concrete, its risers, its faces.

use rust_decimal_macros::dec;

use crate::input::job::{Slab, Steps};
use crate::reading::At;
use crate::trade::sets::Sets;
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

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

pub(super) fn measure(slab: &Slab, sets: Sets<'_>) -> Option<StepQuantities> {
    let steps = slab.sections.steps.as_ref()?;
    let key = &slab.key;
    let risers = Quantity::given(
        format!("{key} risers"),
        Amount::new(steps.risers.value.into(), Unit::Piece),
        steps.risers.place,
    );
    let width = Quantity::feet("steps width", &steps.width);
    let rise = Quantity::feet("rise", &steps.rise);
    let tread = steps.tread.as_ref().filter(|_| 1 < steps.risers.value);
    let concrete = tread.map(|tread| sets.settle(prism(key, steps, tread, &risers, &width)));
    let riser_form = sets.settle(Quantity::by(
        "risers × width",
        format!("{key} riser form"),
        Unit::Foot,
        of(&risers) * &width,
    ));
    let faces = of(&riser_form) * &rise;
    let tread = tread.map(|tread| Quantity::feet("tread", tread));
    let face = sets.settle(Quantity::by(
        "risers, and the treads below the slab",
        format!("{key} step face"),
        Unit::SquareFoot,
        match &tread {
            Some(tread) => faces + (of(&risers) - number(1)) * tread * &width,
            None => faces,
        },
    ));
    let side_form = tread.map(|tread| {
        sets.settle(Quantity::by(
            "both sides × treads × tread",
            format!("{key} step sides"),
            Unit::Foot,
            number(2) * (of(&risers) - number(1)) * &tread,
        ))
    });
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
    key: &str,
    steps: &Steps,
    tread: &At<crate::values::Length>,
    risers: &Quantity,
    width: &Quantity,
) -> Quantity {
    let rise = Quantity::inches("rise", &steps.rise);
    let tread = Quantity::inches("tread", tread);
    Quantity::by(
        "width × tread × rise × (1 + 2 + … to the risers less one) ÷ 3,888 = cu yd: 27 cu ft × 144 sq in",
        format!("{key} step concrete"),
        Unit::CubicYard,
        of(width) * &tread * &rise * risers * (of(risers) - number(1))
            / number(2)
            / number(dec!(3888)),
    )
}
