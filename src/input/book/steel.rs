//! What the price book says of steel, held against itself: laps and sticks, wire and its unit.

use rust_decimal::Decimal;

use super::rules::{Role, Rules, dowels};
use crate::input::phrases::LapPhrase;
use crate::reading::{Problem, Problems};
use crate::tables::bars::Bar;
use crate::values::Unit;

pub(super) fn check(rules: &Rules, problems: &mut Problems) {
    for (name, stock) in &rules.bars {
        let (Ok(bar), LapPhrase::Diameters(many)) = (name.parse::<Bar>(), stock.lap.value) else {
            continue;
        };
        let lap = Decimal::from(bar.diameter().as_nanometres()) * many.value;
        if Decimal::from(stock.stock.value.as_nanometres()) <= lap {
            let message = format!(
                "a lap of {} diameters of {name} is as long as the bar, {}",
                many.number(),
                stock.stock.value
            );
            problems.push(
                Problem::new("lap-too-long", message)
                    .at(stock.lap.place)
                    .help("give the lap in bar diameters, 40 as a rule, not in inches"),
            );
        }
    }
    for (key, place) in dowels::items_named(&rules.dowels) {
        if let Some(selling) = rules.selling.get(key)
            && selling.unit != Unit::Piece
        {
            let message = format!(
                "dowels, caps and cartridges are counted, and `{key}` is priced in {}",
                selling.unit.symbol()
            );
            problems.push(
                Problem::new("wrong-unit", message)
                    .at(place)
                    .also(selling.place, "the item")
                    .help("price it by the piece: `unit: piece`"),
            );
        }
    }
    let wire = rules.roles.get(&Role::TieWire);
    if let Some((wire, key)) = wire.and_then(|wire| Some((wire, wire.value.as_ref()?)))
        && let Some(selling) = rules.selling.get(key)
        && selling.unit != Unit::Pound
    {
        let message = format!(
            "tie wire is worked out in lb, and `{key}` is priced in {}",
            selling.unit.symbol()
        );
        problems.push(
            Problem::new("wrong-unit", message)
                .at(wire.place)
                .also(selling.place, "the item")
                .help("price it by the lb; a roll of 3.5 lb is `unit: lb`, `sold in: 3.5`"),
        );
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;
    use crate::input::book::Selling;
    use crate::reading::{At, FileId, Place};

    fn codes(unit: Unit) -> Vec<&'static str> {
        let place = Place {
            file: FileId(0),
            start: 0,
            end: 0,
        };
        let mut rules = Rules::default();
        let value = Some("wire".to_owned());
        rules.roles.insert(Role::TieWire, At { value, place });
        rules.selling.insert(
            "wire".to_owned(),
            Selling {
                unit,
                step: dec!(0),
                smallest: dec!(0),
                work: None,
                place,
            },
        );
        let mut problems = Problems::default();
        check(&rules, &mut problems);
        problems.iter().map(|problem| problem.code).collect()
    }

    #[test]
    fn tie_wire_is_priced_by_the_pound() {
        assert_eq!(codes(Unit::Roll), ["wrong-unit"]);
        assert!(codes(Unit::Pound).is_empty());
    }
}
