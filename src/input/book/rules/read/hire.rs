//! Reads how a pump and a buggy are hired.

use super::words::item;
use crate::input::book::rules::{BuggyHire, Hose, PumpHire};
use crate::input::book::tables;
use crate::input::phrases::Ratio;
use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::{Amount, Unit};

pub(super) fn pump(node: &Node, problems: &mut Problems) -> Option<PumpHire> {
    let fields = node.fields(&tables::PUMP, problems).ok()?;
    let item = item(&fields, problems);
    let rate = fields
        .need("rate", problems)
        .ok()
        .and_then(|rate| an_hour(rate, problems));
    let set_up = hours(&fields, "set up", problems);
    let travel_time = hours(&fields, "travel time", problems);
    let once = PumpHire::ONCE
        .into_iter()
        .filter_map(|key| fields.read::<String>(key, problems).map(|item| (key, item)))
        .collect();
    let hose = fields.node("hose").and_then(|node| hose(node, problems));
    Some(PumpHire {
        item: item?,
        rate: rate?,
        set_up: set_up?,
        travel_time: travel_time?,
        once,
        hose,
    })
}

fn hose(node: &Node, problems: &mut Problems) -> Option<Hose> {
    let fields = node.fields(&tables::HOSE, problems).ok()?;
    let item = item(&fields, problems);
    let included = fields.need("included", problems).ok();
    Some(Hose {
        item: item?,
        included: included?,
    })
}

pub(super) fn buggy(node: &Node, problems: &mut Problems) -> Option<BuggyHire> {
    let fields = node.fields(&tables::BUGGY, problems).ok()?;
    let item = item(&fields, problems);
    let width = fields.read("width", problems);
    Some(BuggyHire { item: item?, width })
}

fn hours(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<Amount>> {
    let amount = fields.need(key, problems).ok()?;
    crate::input::checks::in_unit(amount, Unit::Hour, key, problems).ok()
}

/// Yards an hour, above nothing.
fn an_hour(rate: At<Ratio>, problems: &mut Problems) -> Option<At<Ratio>> {
    let (much, per) = (rate.value.much, rate.value.per);
    if much.unit == Unit::CubicYard && per.unit == Unit::Hour && !much.value.is_zero() {
        return Some(rate);
    }
    problems.push(
        Problem::new("wrong-unit", "a pump's rate is in cubic yards per hour")
            .at(rate.place)
            .help("write, for example, `20 cu yd per hour`"),
    );
    None
}
