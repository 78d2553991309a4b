//! Work around the slabs: boxes set, covers adjusted, lids that come later, what the site asks for.

use super::Work;
use super::step::Step;
use super::task::Task;
use crate::input::book::BoxStock;
use crate::input::job::SetBox;
use crate::input::phrases::Ratio;
use crate::input::site::Question;
use crate::reading::At;
use crate::trade::measure::works;
use crate::trade::order::{Parts, Policies, boxes, whole};
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Tasks that only some jobs have, in the order of the work.
pub(super) fn listed(work: &Work<'_>, by: Policies<'_>) -> Vec<Task> {
    let rules = by.rules;
    let works = works(work.takeoff, work.slabs, rules).into_iter();
    let works = works.filter_map(|(question, rule, quantity)| {
        let (name, step) = (format!("site {}", question.name()), done_in(question));
        Some(Task::rated(name, step, whole(quantity)).at(rule.hours?))
    });
    let mut tasks: Vec<Task> = works.collect();
    let known = || boxes::known(work.takeoff, rules);
    let pieces = |fits: &dyn Fn(&SetBox, &BoxStock) -> bool| -> Parts {
        known()
            .filter(|(_, set, stock)| fits(set, stock))
            .map(|(section, set, _)| (section, boxes::piece(set)))
            .collect()
    };
    let own = known().filter(|(_, set, _)| set.adjust.is_none());
    let mut names: Vec<(&str, &At<Amount>)> = own
        .filter_map(|(_, set, stock)| Some((set.stock.value.as_str(), stock.hours.as_ref()?)))
        .collect();
    names.sort_by_key(|(name, _)| *name);
    names.dedup_by_key(|(name, _)| *name);
    for (name, hours) in names {
        let rate = hours.clone().map(|much| {
            let per = Amount::new(1.into(), Unit::Piece);
            Ratio { much, per }
        });
        let parts = pieces(&|set, _| set.adjust.is_none() && set.stock.value == name);
        tasks.push(Task::rated(format!("set {name}"), Step::Form, parts).at(rate));
    }
    let by_the_rate = pieces(&|set, stock| set.adjust.is_none() && stock.hours.is_none());
    let adjusted = pieces(&|set, _| set.adjust.is_some());
    let later = pieces(&|set, _| set.waits_for_lid());
    tasks.extend([
        Task::rated("set box", Step::Form, by_the_rate),
        Task::rated("adjust box", Step::Form, adjusted),
        Task::rated("set lid", Step::Lid, later),
    ]);
    if boxes::is_extra_trip(work.takeoff, by) {
        let once = Quantity::by("once, for all lids", "come back", Unit::Trip, number(1));
        tasks.push(Task::rated("come back", Step::Lid, whole(once)));
    }
    tasks
}

fn done_in(question: Question) -> Step {
    match question {
        Question::Washout => Step::Place,
        Question::Backfill => Step::Strip,
        Question::TruckOver
        | Question::OverheadWires
        | Question::Sprinklers
        | Question::LawnCrossed
        | Question::OtherHeights
        | Question::CarsNear
        | Question::WallsToCover
        | Question::LinesMarked => Step::Form,
    }
}
