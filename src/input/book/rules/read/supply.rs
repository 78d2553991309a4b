//! Reads how the plant sells concrete.

use super::charges::charges;
use super::words::{per_yard_or_load, word, yards};
use crate::input::book::rules::{Filling, ShortCount, ShortLoad, Supply};
use crate::input::book::tables;
use crate::reading::{Node, Problem, Problems};

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
    let filling = word(&fields, "loads", &["in turn", "evened"], problems);
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
        filling: if filling?.value == "evened" {
            Filling::Evened
        } else {
            Filling::InTurn
        },
        charges,
    })
}

pub(super) fn short_load(node: &Node, problems: &mut Problems) -> Option<ShortLoad> {
    let fields = node.fields(&tables::SHORT_LOAD, problems).ok()?;
    let under = fields
        .required("under", problems)
        .ok()
        .and_then(|_| yards(&fields, "under", problems));
    let counted = word(
        &fields,
        "counted",
        &["by truck", "by order", "on the last truck"],
        problems,
    );
    let charge = word(&fields, "charge", &["each yard", "flat"], problems);
    let counted = match counted?.value.as_str() {
        "by order" => ShortCount::ByOrder,
        "on the last truck" => ShortCount::LastTruck,
        _ => ShortCount::ByTruck,
    };
    Some(ShortLoad {
        under: under?,
        counted,
        flat: charge?.value == "flat",
    })
}
