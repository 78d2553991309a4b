//! The steel of a slab: bars the price book knows, and laps its mix can bear.

use rust_decimal_macros::dec;

use super::names::known;
use crate::input::book::{BarStock, PriceBook};
use crate::input::job::Bars;
use crate::input::phrases::{BarsPhrase, LapPhrase};
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Unit;

/// The bars of a slab, if it has any.
pub(super) fn bars(
    written: Option<&At<BarsPhrase>>,
    mix: Option<&At<String>>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<Option<Bars>> {
    let Some(&At { value, place }) = written else {
        return Ok(None);
    };
    let Some(bars) = Bars::of(value, place) else {
        return Ok(None);
    };
    for bar in bars.sizes() {
        let name = At {
            value: bar.to_string(),
            place,
        };
        let stock = known(&name, &book.rules.bars, "bar", problems)?;
        if let Some(mix) = mix {
            strong_enough(&name.value, stock, mix, book, problems)?;
        }
    }
    Ok(Some(bars))
}

/// Class B is a rule for structural concrete: 2,500 psi or more (ACI 318-19 19.2.1.1, not read).
fn strong_enough(
    bar: &str,
    stock: &BarStock,
    mix: &At<String>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<()> {
    let strength = known(mix, &book.rules.mixes, "mix", problems)?
        .strength
        .value;
    match stock.lap.value {
        LapPhrase::ClassB if strength.value < dec!(2500) => {
            let message = format!(
                "{bar} bars lap by class B, and `{strength}` of `{}` is too weak for that",
                mix.value
            );
            let least = crate::values::Amount::new(dec!(2500), Unit::Psi);
            Err(problems.push(
                Problem::new("weak-for-lap", message)
                    .at(mix.place)
                    .also(stock.lap.place, "the lap is named here")
                    .help(format!(
                        "take a mix of {least} or more, or give the lap in bar diameters, for example `lap: 40`"
                    )),
            ))
        }
        LapPhrase::ClassB | LapPhrase::Diameters(_) => Ok(()),
    }
}
