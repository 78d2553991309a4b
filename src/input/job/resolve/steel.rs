//! The steel of a slab: bars the price book knows, and laps its mix can bear.

use rust_decimal_macros::dec;

use super::names::known;
use crate::input::book::{BarStock, PriceBook};
use crate::input::job::{Bars, CornerBars};
use crate::input::phrases::{BarsPhrase, CornerBarsPhrase, LapPhrase};
use crate::input::sections::EdgeBars;
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

/// What lies across the corners of a slab, as far as anybody says it.
#[derive(Clone, Copy)]
pub(super) struct Across<'a> {
    pub said: Option<&'a At<CornerBarsPhrase>>,
    /// Said by the slab, and not by its kind.
    pub is_own: bool,
    pub usual: &'a At<CornerBarsPhrase>,
}

/// Across its corners what the slab says, else what is usual where it has bars.
pub(super) fn corner_bars(
    across: Across<'_>,
    bars: Option<&Bars>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<Option<CornerBars>> {
    let Some(&At { value, place }) = across.said.or(bars.map(|_| across.usual)) else {
        return Ok(None);
    };
    let CornerBarsPhrase::Each { count, bar, length } = value else {
        return Ok(None);
    };
    let own = bars.and_then(|bars| bars.sizes().last().copied());
    let Some(found) = bar.or(own) else {
        // A kind may say it for slabs of which one has no bars.
        if !across.is_own {
            return Ok(None);
        }
        let message = "the slab has no bars whose size those across its corners could have";
        let problem = Problem::new("bad-corner-bars", message).at(place);
        return Err(problems.push(problem.help("name the bar, for example `2 no. 4, 4 ft long`")));
    };
    if bar.is_some() {
        let name = At::new(found.to_string(), place);
        known(&name, &book.rules.bars, "bar", problems)?;
    }
    let bars = At::new(EdgeBars { count, bar: found }, place);
    Ok(Some(CornerBars { bars, length }))
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
