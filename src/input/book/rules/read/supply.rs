//! Reads how the plant sells concrete.

use super::charges::charges;
use super::words::{per_yard_or_load, yards};
use crate::input::book::rules::{ShortLoad, Supply};
use crate::input::book::tables;
use crate::reading::{At, Node, Problem, Problems};

pub(super) fn supply(node: &Node, problems: &mut Problems) -> Option<Supply> {
    let fields = node.fields(&tables::SUPPLY, problems).ok()?;
    let sold_in = yards(&fields, "sold in", problems);
    let smallest = yards(&fields, "smallest order", problems);
    let truck = yards(&fields, "truck", problems);
    let pump_prime = yards(&fields, "pump prime", problems);
    let free_time = per_yard_or_load(fields.need("free time", problems).ok(), problems);
    let short_load = fields
        .node("short load")
        .and_then(|node| short_load(node, problems));
    let filling = fields
        .need("loads", problems)
        .ok()
        .map(|at: At<_>| at.value);
    let charges = charges(&fields, problems);
    let truck = truck?;
    if truck.value.value.is_zero() {
        problems.push(
            Problem::new("not-above-zero", "a truck carries more than nothing")
                .at(truck.place)
                .help("write what a full load is, for example `9 cu yd`"),
        );
        return None;
    }
    Some(Supply {
        sold_in: sold_in?,
        smallest: smallest?,
        truck,
        short_load,
        free_time: free_time?,
        pump_prime: pump_prime?,
        filling: filling?,
        charges,
    })
}

pub(super) fn short_load(node: &Node, problems: &mut Problems) -> Option<ShortLoad> {
    let fields = node.fields(&tables::SHORT_LOAD, problems).ok()?;
    let under = fields
        .required("under", problems)
        .ok()
        .and_then(|_| yards(&fields, "under", problems));
    let counted: Option<At<_>> = fields.need("counted", problems).ok();
    let charge: Option<At<_>> = fields.need("charge", problems).ok();
    Some(ShortLoad {
        under: under?,
        counted: counted?.value,
        charge: charge?.value,
    })
}
