//! What the crew has to do: every task that may occur, with its work in each part of the job.

use rust_decimal::Decimal;

use super::Work;
use super::stages::Stage;
use super::surfaces::{finishing, sealing};
use super::task::Task;
use crate::input::book::Rules;
use crate::input::job::{Extra, ExtraWhat, Method, Slab};
use crate::reading::At;
use crate::trade::measure::{BaseQuantities, SlabQuantities};
use crate::trade::order::{ConcreteOrder, Parts, Section, delivered, is_labor};
use crate::trade::term::{number, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// How much of a task a slab takes.
type SlabWork = fn(&Slab, &SlabQuantities) -> Option<Quantity>;

/// A step is formed and finished as one piece of work, by its own rate.
fn formed(slab: &Slab, edge: &Quantity) -> Option<Quantity> {
    (!slab.is_step()).then(|| edge.clone())
}

/// What is done before the concrete comes, in the order of the work.
const FORMING: [(&str, SlabWork); 7] = [
    ("form straight", |slab, found| {
        formed(slab, &found.edges.straight)
    }),
    ("form curved", |slab, found| {
        formed(slab, &found.edges.curved)
    }),
    ("form deep", |slab, found| formed(slab, &found.edges.deep)),
    ("vapor retarder", |_, found| {
        found.retarder.as_ref().map(|_| found.area.clone())
    }),
    ("bars", |_, found| steel(found)),
    ("mesh", |_, found| {
        found.mesh.as_ref().map(|_| found.area.clone())
    }),
    ("drill holes", |_, found| found.holes()),
];

impl Work<'_> {
    pub(super) fn of_each(
        &self,
        what: impl Fn(&Slab, &SlabQuantities) -> Option<Quantity>,
    ) -> Parts {
        let slabs = self.takeoff.slabs.iter().zip(self.slabs).enumerate();
        slabs
            .filter_map(|(i, (slab, found))| Some((Section::Slab(i), what(slab, found)?)))
            .collect()
    }

    fn each_base(&self, what: fn(&BaseQuantities) -> &Quantity) -> Parts {
        let slabs = self.slabs.iter().enumerate();
        let bases = slabs.flat_map(|(i, found)| found.bases().map(move |base| (i, base)));
        bases
            .map(|(i, base)| (Section::Slab(i), what(base).clone()))
            .collect()
    }
}

/// Every task that slabs may bring, with its work in each of them.
pub(super) fn listed(work: &Work<'_>, rules: &Rules) -> Vec<Task> {
    let mut base = work.each_base(|base| &base.compacted);
    base.extend(work.of_each(|slab, found| {
        slab.sections.fill()?;
        found.fill().cloned()
    }));
    let on_base = work.each_base(|base| &base.area);
    let base = Task::rated("base", Stage::Form, base).or(Unit::SquareFoot, on_base);
    let tons = delivered(work.takeoff, work.slabs, rules).into_values();
    let base = base.or(Unit::Ton, tons.flatten().collect());
    let mut tasks = vec![base];
    for (name, what) in &FORMING {
        let mut task = Task::rated(*name, Stage::Form, work.of_each(what));
        if *name == "bars" {
            let laid =
                |_: &Slab, found: &SlabQuantities| found.steel().next().map(|_| found.area.clone());
            task = task
                .or(Unit::Pound, work.of_each(|_, found| weight(found)))
                .or(Unit::SquareFoot, work.of_each(laid));
        }
        let face: Option<SlabWork> = match *name {
            "form straight" => Some(|slab, found| formed(slab, &found.edges.straight_face)),
            "form curved" => Some(|slab, found| formed(slab, &found.edges.curved_face)),
            "form deep" => Some(|slab, found| formed(slab, &found.edges.deep_face)),
            _ => None,
        };
        if let Some(face) = face {
            task = task.or(Unit::SquareFoot, work.of_each(face));
        }
        tasks.push(task);
    }
    tasks.extend(Method::ALL.map(|method| {
        let ordered = work.orders.iter().filter(|order| order.by == method);
        let parts = ordered.flat_map(placed).collect();
        let area = work.of_each(|slab, found| {
            let by = work.takeoff.access_of(slab.placement).by.value;
            (by == method).then(|| found.area.clone())
        });
        let task = Task::rated(format!("place by {}", method.name()), Stage::Place, parts);
        Task {
            places: Some(method),
            ..task.or(Unit::SquareFoot, area)
        }
    }));
    tasks.extend(finishing(work, rules));
    let one = Quantity::by("each step", "step", Unit::Piece, number(1));
    let steps = work.of_each(|slab, found| match &found.steps {
        Some(steps) => Some(steps.risers.clone()),
        None => slab.is_step().then(|| one.clone()),
    });
    let cured = work.of_each(|_, found| Some(found.surface()));
    tasks.extend([
        Task::rated("step", Stage::Place, steps),
        Task::rated("cure, strip and clean", Stage::Strip, cured),
    ]);
    tasks.extend(sealing(work, rules));
    tasks
}

/// Hours that come with items of the book that the takeoff adds; done while forming.
pub(super) fn of_extras(extras: &[&Extra], rules: &Rules) -> Vec<Task> {
    let of_item = |extra: &&Extra| {
        let ExtraWhat::Item(amount) = &extra.what else {
            return None;
        };
        let name = &extra.name.value;
        if is_labor(extra, rules) {
            return None;
        }
        let selling = rules.selling.get(name)?;
        let rate = selling.work.clone()?;
        let parts = vec![(Section::Extras, as_written(extra, amount, selling.unit))];
        Some(Task::rated(name.clone(), Stage::Form, parts).at(rate))
    };
    let of_items = extras.iter().filter_map(of_item);
    let hours = extras.iter().filter(|extra| is_labor(extra, rules));
    let hours = hours.filter_map(|extra| match &extra.what {
        ExtraWhat::Item(amount) => Some((Section::Extras, as_written(extra, amount, Unit::Hour))),
        ExtraWhat::Lump { .. } => None,
    });
    let added = Task {
        is_hours: true,
        ..Task::rated("added labor", Stage::Form, hours.collect())
    };
    of_items.chain([added]).collect()
}

fn as_written(extra: &Extra, amount: &At<Amount>, unit: Unit) -> Quantity {
    let name = format!("{}, as written", extra.name.value);
    Quantity::given(name, Amount::new(amount.value.value, unit), amount.place)
}

/// Feet of bars placed in a slab, those along its edges too.
fn steel(slab: &SlabQuantities) -> Option<Quantity> {
    let all = slab.steel().map(|bars| &bars.placed).collect();
    together("bars placed", Unit::Foot, all)
}

/// Pounds of them.
fn weight(slab: &SlabQuantities) -> Option<Quantity> {
    let all = slab.steel().map(|bars| &bars.weight).collect();
    together("bars placed, weight", Unit::Pound, all)
}

fn together(name: &'static str, unit: Unit, all: Vec<&Quantity>) -> Option<Quantity> {
    match all[..] {
        [] => None,
        [one] => Some(one.clone()),
        _ => {
            let rule = "in the slab, along its edges and in its steps";
            Some(Quantity::by(rule, name, unit, sum(all)))
        }
    }
}

/// What of an order is placed in each slab, by its net concrete; it only says where hours belong.
fn placed(order: &ConcreteOrder) -> impl Iterator<Item = (Section, Quantity)> {
    let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
    let one_slab = order.shares.len() == 1;
    order.shares.iter().map(move |(section, share)| {
        let part = match (order.order.value() * share).checked_div(net) {
            Some(part) if !one_slab => Quantity::new(
                "ordered",
                Amount::new(part, Unit::CubicYard),
                Working::plan("", Vec::new(), "the order, by net concrete"),
            ),
            Some(_) | None => order.order.clone(),
        };
        (*section, part)
    })
}
