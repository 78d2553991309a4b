//! Dowels and ties across the edges of a slab: how many, the holes drilled for them, what fills those.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::EdgeQuantities;
use crate::input::book::{DowelStock, Rules};
use crate::input::job::{Dowels, EdgeKind, Pin, Slab};
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Milliliters in a cubic inch, exactly: 2.54 cm cubed.
const ML_IN_CUBIC_INCH: Decimal = dec!(16.387064);

/// Bars of one kind across the edges of one slab.
#[derive(Clone, Debug)]
pub struct DowelQuantities {
    pub pin: Pin,
    /// A kind of the price book.
    pub kind: String,
    pub count: Quantity,
    /// Holes in concrete that stays.
    pub holes: Quantity,
    /// What the holes hold beside the bars, where they are bonded.
    pub adhesive: Option<Quantity>,
}

pub(super) fn measure(
    slab: &Slab,
    edges: &EdgeQuantities,
    rules: &Rules,
    tally: &mut Tally<'_>,
) -> Vec<DowelQuantities> {
    let mut across = |pin: Pin, dowels: &Option<Dowels>| {
        let dowels = dowels.as_ref()?;
        let stock = rules.dowels.get(&dowels.kind.value)?;
        let crossed: Vec<&(EdgeKind, Quantity)> = edges
            .pinned
            .iter()
            .filter(|(kind, _)| kind.pin() == Some(pin))
            .collect();
        (!crossed.is_empty()).then(|| one(pin, (dowels, stock), &crossed, tally))
    };
    [
        across(Pin::Dowels, &slab.dowels),
        across(Pin::Ties, &slab.ties),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn one(
    pin: Pin,
    (dowels, stock): (&Dowels, &DowelStock),
    crossed: &[&(EdgeKind, Quantity)],
    tally: &mut Tally<'_>,
) -> DowelQuantities {
    let along: Vec<(EdgeKind, Quantity)> = crossed
        .iter()
        .map(|(kind, edge)| (*kind, tally.sets.settle(along(edge, pin, dowels, stock))))
        .collect();
    let count = tally.by(
        "edges added up",
        pin.name(),
        Unit::Piece,
        sum(along.iter().map(|(_, many)| many)),
    );
    let drilled: Vec<&Quantity> = along
        .iter()
        .filter(|(kind, _)| kind.is_drilled())
        .map(|(_, many)| many)
        .collect();
    // Where every edge is drilled, a count the owner sets is a count of holes too.
    let holes = if drilled.len() == along.len() {
        of(&count)
    } else {
        sum(drilled)
    };
    let holes = tally.by(
        "one for each in concrete that stays",
        &format!("holes for {}", pin.name()),
        Unit::Piece,
        holes,
    );
    let adhesive = stock.bond.0.as_ref().map(|_| {
        tally.by(
            "holes × adhesive a hole",
            &format!("adhesive for {}", pin.name()),
            Unit::Milliliter,
            of(&holes) * &in_a_hole(stock),
        )
    });
    DowelQuantities {
        pin,
        kind: dowels.kind.value.clone(),
        count,
        holes,
        adhesive,
    }
}

/// Spacing is a maximum: one more than the gaps that fit between the first and the last.
fn along(edge: &Quantity, pin: Pin, dowels: &Dowels, stock: &DowelStock) -> Quantity {
    let ends = Quantity::inches("from ends", &stock.from_ends);
    let spacing = Quantity::inches("dowel spacing", &dowels.spacing);
    let between = of(edge) * number(12) - number(2) * &ends;
    let many = if between.value() <= Decimal::ZERO {
        number(1)
    } else {
        (between / &spacing).whole() + number(1)
    };
    Quantity::by(
        "(edge × 12 − both ends) ÷ spacing, up to a whole one, + 1; common practice, no source",
        format!("{} {}", edge.name(), pin.name()),
        Unit::Piece,
        many,
    )
}

/// The hole less the bar: circles by their diameters, not by areas rounded for a table.
fn in_a_hole(stock: &DowelStock) -> Quantity {
    let hole = Quantity::inches("hole", &stock.hole);
    let bar = Quantity::given(
        "bar diameter",
        stock.bar.value.diameter().in_inches(),
        stock.bar.place,
    );
    let depth = Quantity::inches("hole depth", &stock.depth);
    let squares = of(&hole) * &hole - of(&bar) * &bar;
    Quantity::by(
        "π ÷ 4 × (hole² − bar²) × depth × 16.387064 ml to the cu in",
        "adhesive a hole",
        Unit::Milliliter,
        number(Decimal::PI) / number(4) * squares * &depth * number(ML_IN_CUBIC_INCH),
    )
}
