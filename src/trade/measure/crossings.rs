//! Where bars of both ways cross inside the slab: there they are tied.

use rust_decimal::Decimal;

use super::bars::Lines;
use crate::input::job::Slab;
use crate::trade::sets::Sets;
use crate::trade::term::number;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// `None` where bars run one way only.
pub(super) fn measure(slab: &Slab, laid: &[Option<Lines>; 2], sets: Sets<'_>) -> Option<Quantity> {
    let [Some(level), Some(upright)] = laid else {
        return None;
    };
    let many = level
        .iter()
        .flat_map(|(y, spans)| spans.iter().map(|span| (*y, *span)))
        .map(|(y, (from, to))| {
            let within = upright.iter().filter(|(x, _)| from <= *x && *x <= to);
            within
                .filter(|(_, spans)| spans.iter().any(|(low, high)| *low <= y && y <= *high))
                .count()
        })
        .sum::<usize>();
    let name = format!("{} bar crossings", slab.key);
    let (across, along) = (level.len(), upright.len());
    let quantity = if many == across * along {
        Quantity::by(
            "bars one way × bars the other",
            name,
            Unit::Piece,
            number(Decimal::from(across)) * number(Decimal::from(along)),
        )
    } else {
        Quantity::new(
            name,
            Amount::new(Decimal::from(many), Unit::Piece),
            Working::Plan {
                how: format!(
                    "counted where {across} lines east-west meet {along} lines north-south inside the outline"
                ),
                of: Vec::new(),
                rule: "",
            },
        )
    };
    Some(sets.settle(quantity))
}
