//! The quantities of a job, gathered by what they belong to.

use super::slab::of_slab;
use crate::documents::views::office::{Sheet, every, numbered};
use crate::trade::Quantity;
use crate::trade::order::ConcreteOrder;
use crate::values::rounding;

/// Quantities that belong together, and what has to be said beside them.
#[derive(Clone, Debug)]
pub struct Group {
    /// `slab`, `removal`, `order`, `bought`, `work` or `crew`.
    pub part: &'static str,
    pub title: String,
    pub quantities: Vec<Quantity>,
    pub notes: Vec<String>,
}

/// Every quantity of the job as quoted; what is zero is left out.
pub fn groups(sheet: &Sheet<'_>) -> Vec<Group> {
    let needs = &sheet.offer.quoted().needs;
    let slabs = sheet.takeoff.slabs.iter().zip(needs.slabs.iter());
    let mut groups: Vec<Group> = slabs
        .map(|(slab, found)| of_slab(sheet, slab, found))
        .collect();
    let removed = needs.removals.iter();
    groups.push(Group {
        part: "removal",
        title: "Removal".into(),
        quantities: removed
            .flat_map(|one| {
                let cut = one.saw_cut.iter().map(|cut| cut.length.clone());
                [one.area.clone(), one.solid.clone()].into_iter().chain(cut)
            })
            .collect(),
        notes: Vec::new(),
    });
    groups.extend(needs.orders.iter().map(|order| of_order(sheet, order)));
    groups.push(bought(sheet));
    let tasks = needs.crew.tasks.iter();
    groups.push(Group {
        part: "work",
        title: "Work".into(),
        quantities: tasks
            .flat_map(|task| [task.work.clone(), task.hours.clone()])
            .collect(),
        notes: Vec::new(),
    });
    let crew = &needs.crew;
    groups.push(Group {
        part: "crew",
        title: "Crew".into(),
        quantities: crew.roots(),
        notes: vec!["`labor` is the hours charged.".into()],
    });
    for group in &mut groups {
        group
            .quantities
            .retain(|quantity| !quantity.value().is_zero());
    }
    groups.retain(|group| !group.quantities.is_empty());
    groups
}

fn of_order(sheet: &Sheet<'_>, order: &ConcreteOrder) -> Group {
    let allowance = format!("{} allowance", order.order.name());
    let mut quantities = vec![order.net.clone()];
    quantities.extend(
        every(sheet.offer.quoted())
            .into_iter()
            .find(|one| one.name() == allowance),
    );
    quantities.extend([
        order.order.clone(),
        order.short.clone(),
        order.standing.clone(),
    ]);
    let call = order.on_call.iter();
    quantities.extend(call.flat_map(|call| [call.firm.clone(), call.waits.clone()]));
    quantities.extend(order.back.clone());
    let loads: Vec<String> = order
        .loads
        .iter()
        .map(|yards| rounding::to_places(*yards, 4).normalize().to_string())
        .collect();
    let trucks = if loads.len() == 1 { "load" } else { "loads" };
    let mut notes = vec![format!(
        "{} {trucks}: {} cu yd",
        loads.len(),
        loads.join(" + ")
    )];
    notes.extend(order.on_call.as_ref().map(|call| {
        format!(
            "of the last load {} waits until you call for it",
            call.waits.amount()
        )
    }));
    Group {
        part: "order",
        title: format!("Concrete: {}", order.order.name()),
        quantities,
        notes,
    }
}

/// What is paid for, in the amount that is really bought.
fn bought(sheet: &Sheet<'_>) -> Group {
    let lines = numbered(&sheet.offer.quoted().lines);
    Group {
        part: "bought",
        title: "Bought, hired and charged".into(),
        quantities: lines
            .iter()
            .filter_map(|(_, line)| line.quantity.clone())
            .collect(),
        notes: Vec::new(),
    }
}
