//! Bars and dowels as a homeowner reads them: how thick, how far apart, what they do.

use super::Offering;
use super::phrases::{length, list};
use crate::input::job::{Bars, Dowels, EdgeKind, Layer, Pin, Slab};

/// `½ in bars every 18 in, both ways`.
pub(super) fn bars(bars: &Bars) -> String {
    let said = |layer: &Layer| {
        let thick = length(layer.bar.diameter());
        format!("{thick} bars every {}", length(layer.spacing.value))
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

/// `½ in smooth steel dowels every 24 in into the concrete that stays, free to slide`.
pub(super) fn across(of: Offering<'_>, slab: &Slab) -> Option<String> {
    let kinds = [(Pin::Dowels, &slab.dowels), (Pin::Ties, &slab.ties)];
    let texts: Vec<String> = kinds
        .into_iter()
        .filter_map(|(pin, dowels)| said(of, slab, pin, dowels.as_ref()?))
        .collect();
    (!texts.is_empty()).then(|| texts.join(", and "))
}

fn said(of: Offering<'_>, slab: &Slab, pin: Pin, dowels: &Dowels) -> Option<String> {
    let stock = of.rules.dowels.get(&dowels.kind.value)?;
    let crossed = || {
        let kinds = slab.edges.iter().map(|part| part.kind);
        kinds.filter(|kind| kind.pin() == Some(pin))
    };
    let mut where_to: Vec<String> = Vec::new();
    if crossed().any(EdgeKind::is_drilled) {
        where_to.push("into the concrete that stays".to_owned());
    }
    if crossed().any(|kind| !kind.is_drilled()) {
        where_to.push("across the joint between two pours".to_owned());
    }
    if where_to.is_empty() {
        return None;
    }
    let bar = stock.bar.value;
    let what = if bar.is_smooth() {
        "smooth steel dowels"
    } else {
        "steel bars"
    };
    let free = if pin == Pin::Dowels && bar.is_smooth() {
        ", free to slide"
    } else {
        ", holding both sides together"
    };
    Some(format!(
        "{} {what} every {} {}{free}",
        length(bar.diameter()),
        length(dowels.spacing.value),
        list(&where_to)
    ))
}
