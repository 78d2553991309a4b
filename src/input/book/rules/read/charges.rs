//! Reads what the plant charges beside the concrete.

use super::words::{item, yards};
use crate::input::book::ItemKey;
use crate::input::book::rules::{Charges, Returned, Winter};
use crate::input::book::tables;
use crate::reading::{At, Fields, Node, Problems};

pub(super) fn charges(supply: &Fields<'_>, problems: &mut Problems) -> Charges {
    let mut charges = Charges {
        saturday: supply.read::<String>("saturday", problems),
        on_call: supply.read::<String>("on call", problems),
        winter: supply
            .node("winter")
            .and_then(|node| winter(node, problems)),
        returned: supply
            .node("returned")
            .and_then(|node| returned(node, problems)),
        ..Charges::default()
    };
    if let Some(node) = supply.node("fees") {
        let lines = node.items("`fees`", problems);
        charges.fees = lines
            .into_iter()
            .filter_map(|line| named(line, problems))
            .collect();
    }
    if let Some(node) = supply.node("zones") {
        for zone in node.entries("`zones`", problems) {
            if let Some(item) = named(&zone.node, problems) {
                let item = (item.value != "none").then_some(item);
                charges.zones.insert(zone.key.clone(), item);
            }
        }
    }
    charges
}

fn named(node: &Node, problems: &mut Problems) -> Option<At<ItemKey>> {
    node.text("an item's name", problems).ok().map(|text| At {
        value: text.to_owned(),
        place: node.place,
    })
}

fn winter(node: &Node, problems: &mut Problems) -> Option<Winter> {
    let fields = node.fields(&tables::WINTER, problems).ok()?;
    let item = item(&fields, problems);
    let during = fields.need("during", problems).ok();
    Some(Winter {
        item: item?,
        during: during?,
    })
}

fn returned(node: &Node, problems: &mut Problems) -> Option<Returned> {
    let fields = node.fields(&tables::RETURNED, problems).ok()?;
    let item = item(&fields, problems);
    let over = yards(&fields, "over", problems);
    Some(Returned {
        item: item?,
        over: over?,
    })
}
