//! The steel of a slab: bars the price book knows, and laps its mix can bear.

use rust_decimal_macros::dec;

use super::names::known;
use crate::input::book::PriceBook;
use crate::input::job::Bars;
use crate::input::phrases::{BarsPhrase, LapPhrase};
use crate::reading::{At, Problem, Problems};
use crate::values::Unit;

/// `None` when a bar is not known; `Some(None)` for a slab without bars.
#[expect(
    clippy::option_option,
    reason = "no bars is an answer, bars nobody sells are none"
)]
pub(super) fn bars(
    written: Option<&At<BarsPhrase>>,
    mix: Option<&At<String>>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Option<Option<Bars>> {
    let Some(&At { value, place }) = written else {
        return Some(None);
    };
    let Some(bars) = Bars::of(value, place) else {
        return Some(None);
    };
    for bar in bars.sizes() {
        let name = At {
            value: bar.to_string(),
            place,
        };
        let rules = &book.rules;
        if !known(&name, &rules.bars, "bar", problems) {
            return None;
        }
        if let Some(mix) = mix {
            strong_enough(&name, mix, book, problems)?;
        }
    }
    Some(Some(bars))
}

/// Class B is a rule for structural concrete: 2,500 psi or more (ACI 318-19 19.2.1.1, from memory).
fn strong_enough(
    bar: &At<String>,
    mix: &At<String>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Option<()> {
    let (stock, mixed) = (
        book.rules.bars.get(&bar.value)?,
        book.rules.mixes.get(&mix.value)?,
    );
    let strength = mixed.strength.value;
    match stock.lap.value {
        LapPhrase::ClassB if strength.value < dec!(2500) => {
            let message = format!(
                "{} bars lap by class B, and `{}` of `{}` is too weak for that",
                bar.value, strength, mix.value
            );
            let least = crate::values::Amount::new(dec!(2500), Unit::Psi);
            problems.push(
                Problem::new("weak-for-lap", message)
                    .at(mix.place)
                    .also(stock.lap.place, "the lap is named here")
                    .help(format!(
                        "take a mix of {least} or more, or give the lap in bar diameters, for example `lap: 40`"
                    )),
            );
            None
        }
        LapPhrase::ClassB | LapPhrase::Diameters(_) => Some(()),
    }
}
