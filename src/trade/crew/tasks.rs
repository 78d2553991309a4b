//! What the crew has to do: every task that may occur, with its work in each part of the job.

use rust_decimal::Decimal;

use super::Work;
use super::surfaces::{finish_task, sealing};
use crate::input::book::Rules;
use crate::input::job::{Extra, ExtraWhat, Method};
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::measure::{SlabQuantities, faces};
use crate::trade::order::{ConcreteOrder, Section};
use crate::trade::term::{number, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

pub(super) enum TaskName {
    Rated(String),
    /// Hours that come with an item, a finish or a sealer of the book.
    Item(String, At<Ratio>),
}

impl TaskName {
    pub(super) fn text(&self) -> &str {
        match self {
            Self::Rated(name) | Self::Item(name, _) => name,
        }
    }

    pub(super) fn is_placing(&self) -> bool {
        matches!(self, Self::Rated(name) if name.starts_with("place by"))
    }
}

/// How much of a task a slab takes.
type Measured = fn(&SlabQuantities) -> Option<Quantity>;

/// Every task that slabs may bring, with its work in each of them.
pub(super) fn listed(work: &Work<'_>, rules: &Rules) -> Vec<(TaskName, Vec<(Section, Quantity)>)> {
    let mut tasks: Vec<(TaskName, Vec<(Section, Quantity)>)> = Vec::new();
    let slabs = |fits: &dyn Fn(usize, &SlabQuantities) -> Option<Quantity>| {
        work.slabs
            .iter()
            .enumerate()
            .filter_map(|(i, slab)| fits(i, slab).map(|quantity| (Section::Slab(i), quantity)))
            .collect::<Vec<_>>()
    };
    tasks.push((
        TaskName::Rated("base".into()),
        slabs(&|_, slab| slab.base.clone()),
    ));
    let bought = |i: usize| work.takeoff.slabs[i].sections.fill().is_some();
    let fill = slabs(&|i, slab| slab.fill().filter(|_| bought(i)).cloned());
    if let Some((_, base)) = tasks.last_mut() {
        base.extend(fill);
    }
    // A step is formed and finished as one piece of work, by its own rate.
    tasks.push((
        TaskName::Rated("form straight".into()),
        slabs(&|_, slab| (!slab.is_step).then(|| slab.edges.straight.clone())),
    ));
    tasks.push((
        TaskName::Rated("form curved".into()),
        slabs(&|_, slab| (!slab.is_step).then(|| slab.edges.curved.clone())),
    ));
    tasks.push((
        TaskName::Rated("form deep".into()),
        slabs(&|_, slab| (!slab.is_step).then(|| slab.edges.deep.clone())),
    ));
    tasks.push((
        TaskName::Rated("vapor retarder".into()),
        slabs(&|_, slab| slab.retarder.as_ref().map(|_| slab.area.clone())),
    ));
    let mesh = |slab: &SlabQuantities| slab.mesh.as_ref().map(|_| slab.area.clone());
    let set: [(&str, Measured); 3] = [
        ("bars", steel),
        ("mesh", mesh),
        ("drill holes", SlabQuantities::holes),
    ];
    for (name, what) in set {
        tasks.push((TaskName::Rated(name.into()), slabs(&|_, slab| what(slab))));
    }
    for method in Method::ALL {
        let ordered = work
            .orders
            .iter()
            .filter(|order| order.by == method)
            .flat_map(placed);
        let task = TaskName::Rated(format!("place by {}", method.name()));
        tasks.push((task, ordered.collect()));
    }
    let faces = faces(work.takeoff, work.slabs);
    let mut finishes: Vec<&str> = faces.iter().map(|face| face.finish).collect();
    finishes.sort_unstable();
    finishes.dedup();
    for finish in finishes {
        tasks.push((
            finish_task(finish, rules),
            faces
                .iter()
                .filter(|face| !work.slabs[face.slab].is_step && face.finish == finish)
                .map(|face| (Section::Slab(face.slab), face.area.clone()))
                .collect(),
        ));
    }
    let one = Quantity::by("each step", "step", Unit::Piece, number(1));
    tasks.push((
        TaskName::Rated("step".into()),
        slabs(&|_, slab| match &slab.steps {
            Some(steps) => Some(steps.risers.clone()),
            None => slab.is_step.then(|| one.clone()),
        }),
    ));
    tasks.push((
        TaskName::Rated("cure, strip and clean".into()),
        slabs(&|_, slab| Some(slab.surface())),
    ));
    tasks.extend(sealing(work, rules));
    tasks
}

/// Hours that come with items of the book that the takeoff adds.
pub(super) fn of_extras(
    extras: &[&Extra],
    rules: &Rules,
) -> Vec<(TaskName, Vec<(Section, Quantity)>)> {
    let mut tasks = Vec::new();
    for extra in extras {
        let ExtraWhat::Item(amount) = &extra.what else {
            continue;
        };
        if let Some(selling) = rules.selling.get(&extra.name.value)
            && let Some(rate) = &selling.work
        {
            let quantity = Quantity::given(
                format!("{}, as written", extra.name.value),
                Amount::new(amount.value.value, selling.unit),
                amount.place,
            );
            tasks.push((
                TaskName::Item(extra.name.value.clone(), rate.clone()),
                vec![(Section::Extras, quantity)],
            ));
        }
    }
    tasks
}

/// Feet of bars placed in a slab, those along its edges too.
fn steel(slab: &SlabQuantities) -> Option<Quantity> {
    let all: Vec<&Quantity> = slab.steel().map(|bars| &bars.placed).collect();
    match all[..] {
        [] => None,
        [one] => Some(one.clone()),
        _ => Some(Quantity::by(
            "in the slab and along its edges",
            "bars placed",
            Unit::Foot,
            sum(all),
        )),
    }
}

/// What of an order is placed in each slab.
fn placed(order: &ConcreteOrder) -> impl Iterator<Item = (Section, Quantity)> {
    let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
    let one_slab = order.shares.len() == 1;
    order.shares.iter().map(move |(section, share)| {
        let part = if one_slab || net.is_zero() {
            order.order.clone()
        } else {
            share_of(order, *share, net)
        };
        (*section, part)
    })
}

/// A slab's part of an order, by its net concrete; it only says where hours belong.
fn share_of(order: &ConcreteOrder, share: Decimal, net: Decimal) -> Quantity {
    let part = order.order.value() * share / net;
    Quantity::new(
        "ordered",
        Amount::new(part, Unit::CubicYard),
        Working::Plan {
            how: String::new(),
            of: Vec::new(),
            rule: "the order, by net concrete",
        },
    )
}
