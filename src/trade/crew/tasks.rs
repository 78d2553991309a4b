//! What the crew has to do: every task that may occur, with its work in each part of the job.

use super::covers::{by_the_visit, covered, lifting, wetting};
use super::placing::shared;
use super::sealing::sealing;
use super::step::Step;
use super::surfaces::finishing;
use super::task::Task;
use super::{Work, people};
use crate::input::book::{Curing, Rules};
use crate::input::job::{Extra, ExtraWhat, Slab};
use crate::input::phrases::JointMethod;
use crate::reading::At;
use crate::trade::measure::{BaseQuantities, SlabQuantities};
use crate::trade::order::{List, Parts, Policies, Section, delivered, is_labor};
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
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

/// Every task before the concrete comes, with its work in each slab.
pub(super) fn before_placing(work: &Work<'_>, rules: &Rules) -> Vec<Task> {
    let mut base = work.each_base(|base| &base.compacted);
    base.extend(work.of_each(|slab, found| {
        slab.sections.fill()?;
        found.fill().cloned()
    }));
    let on_base = work.each_base(|base| &base.area);
    let base = Task::rated("base", Step::Form, base).or(Unit::SquareFoot, on_base);
    let tons = delivered(work.takeoff, work.slabs, rules).into_values();
    let base = base.or(Unit::Ton, tons.flatten().collect());
    let mut tasks = vec![base];
    for (name, what) in &FORMING {
        let mut task = Task::rated(*name, Step::Form, work.of_each(what));
        if *name == "bars" {
            let laid =
                |_: &Slab, found: &SlabQuantities| found.is_barred().then(|| found.area.clone());
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
    tasks
}

/// Every task on the slabs once they are placed.
pub(super) fn after_placing(work: &Work<'_>, by: Policies<'_>) -> Vec<Task> {
    let rules = by.rules;
    let mut tasks: Vec<Task> = Vec::new();
    let bagged = work.orders.iter().filter_map(|order| {
        let bags = order.bags.as_ref()?;
        Some(shared(order, bags, "the bags, by net concrete"))
    });
    tasks.push(Task::rated(
        "mix bags",
        Step::Place,
        bagged.flatten().collect(),
    ));
    tasks.extend(finishing(work, rules));
    let one = Quantity::by("each step", "step", Unit::Piece, number(1));
    let steps = work.of_each(|slab, found| match &found.steps {
        Some(steps) => Some(steps.risers.clone()),
        None => slab.is_step().then(|| one.clone()),
    });
    let cured = work.of_each(|_, found| Some(found.surface()));
    tasks.extend(joints_and_covers(work, by));
    tasks.extend([
        Task::rated("step", Step::Place, steps),
        Task::rated("cure, strip and clean", Step::Strip, cured),
    ]);
    tasks.extend(sealing(work, rules));
    tasks
}

/// Work that takes hours of its own only where the book has a rate for it.
fn joints_and_covers(work: &Work<'_>, by: Policies<'_>) -> Vec<Task> {
    let rules = by.rules;
    let by_hand = work.of_each(|_, found| found.joints.as_ref()?.tooled.clone());
    // A saw for the same day works while the crew is there; the other waits for the concrete.
    let sawn = |method: JointMethod, name: &str, step: Step| {
        let cut = |what: fn(&(Quantity, Quantity)) -> &Quantity| {
            work.of_each(|slab, found| {
                let sawn = found.joints.as_ref()?.sawn.as_ref()?;
                (slab.joint_method() == method).then(|| what(sawn).clone())
            })
        };
        let task = Task::rated(name, step, cut(|(length, _)| length));
        let task = task.or(Unit::SquareFoot, cut(|(_, face)| face));
        let rate = rules.rates.get(name);
        match rate.or_else(|| rules.rates.get("joints by saw")) {
            Some(rate) => task.at(rate.clone()),
            None => task,
        }
    };
    let wet =
        work.of_each(|slab, found| (slab.curing.value == Curing::Wet).then(|| found.surface()));
    let wet = Task::rated("keep wet", Step::Strip, wet);
    let is_visited = by_the_visit(rules);
    let tasks = [
        Task::rated("joints by hand", Step::Place, by_hand),
        sawn(JointMethod::SawnEarly, "joints by early saw", Step::Place),
        sawn(JointMethod::SawnLate, "joints by saw", Step::Strip),
        Task::rated("cover slabs", Step::Place, covered(work, by)),
        Task::rated("lift covers", Step::Lift, covered(work, by)).or(Unit::Trip, lifting(work, by)),
        if is_visited {
            Task::rated("keep wet", Step::Wet, wetting(work))
        } else {
            wet
        },
    ];
    let is_rated = |task: &Task| task.rate.is_some() || rules.rates.get(&task.name).is_some();
    tasks.into_iter().filter(is_rated).collect()
}

/// Hours that come with items of the book that the takeoff adds, done when the book says; those it adds
/// as such, while forming.
pub(super) fn of_extras(extras: &[&Extra], list: &List<'_>) -> Vec<Task> {
    let rules = list.by.rules;
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
        let task = Task::rated(name.clone(), selling.stage, parts).at(rate);
        Some(task.waiting(selling.after.as_ref()))
    };
    let of_items = extras.iter().filter_map(of_item);
    let hours = extras.iter().filter(|extra| is_labor(extra, rules));
    let hours = hours.filter_map(|extra| match &extra.what {
        ExtraWhat::Item(amount) => Some((Section::Extras, in_hours(extra, amount, list))),
        ExtraWhat::Lump { .. } => None,
    });
    let added = Task {
        is_hours: true,
        ..Task::rated("added labor", Step::Form, hours.collect())
    };
    of_items.chain([added]).collect()
}

/// Hours of people, whichever way they are written.
fn in_hours(extra: &Extra, amount: &At<Amount>, list: &List<'_>) -> Quantity {
    let said = as_written(extra, amount, amount.value.unit);
    let (rule, hours) = match amount.value.unit {
        Unit::CrewHour => ("crew hours × people", of(&said) * &people(list.by.crew)),
        Unit::Minute => ("minutes ÷ 60", of(&said) / number(60)),
        _ => return said,
    };
    Quantity::by(rule, "added by the takeoff", Unit::Hour, hours)
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
            let rule = "all bars of the slab together";
            Some(Quantity::by(rule, name, unit, sum(all)))
        }
    }
}
