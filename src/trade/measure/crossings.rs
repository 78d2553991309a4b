//! Where bars of both ways cross inside the slab: there they are tied.

use rust_decimal::Decimal;

use super::rows::Lines;
use crate::trade::tally::Tally;
use crate::trade::term::number;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// `None` where bars run one way only.
pub(super) fn measure(laid: &[Option<Lines>; 2], tally: &Tally<'_>) -> Option<Quantity> {
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
    let name = tally.name("bar crossings");
    let (across, along) = (level.len(), upright.len());
    let quantity = if many == across * along {
        Quantity::by(
            "bars one way × bars the other",
            name,
            Unit::Piece,
            number(Decimal::from(across)) * number(Decimal::from(along)),
        )
    } else {
        let how = format!(
            "counted where {across} lines east-west meet {along} lines north-south inside the outline"
        );
        let amount = Amount::new(Decimal::from(many), Unit::Piece);
        Quantity::new(name, amount, Working::plan(how, Vec::new(), ""))
    };
    Some(tally.sets.settle(quantity))
}
