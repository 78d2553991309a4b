//! Bars and dowels as a homeowner reads them: how thick, how far apart, what they do.

use super::phrases::length;
use crate::input::job::{Bars, Layer};

/// `½ in bars every 18 in, both ways`.
pub(super) fn bars(bars: &Bars) -> String {
    let said = |layer: &Layer| {
        format!(
            "{} bars every {}",
            length(layer.bar.diameter()),
            length(layer.spacing.value)
        )
    };
    if let Some(layer) = bars.alike() {
        return format!("{}, both ways", said(layer));
    }
    let layers: Vec<String> = bars.layers().map(said).collect();
    match &layers[..] {
        [one, other] => format!("{one} one way, {other} the other"),
        _ => format!("{}, one way", layers.concat()),
    }
}
