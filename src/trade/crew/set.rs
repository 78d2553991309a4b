//! Work around the slabs: boxes set, covers adjusted, lids that come later, what the site asks for.

use super::Work;
use super::tasks::TaskName;
use crate::input::book::{BoxStock, Rules};
use crate::input::job::SetBox;
use crate::input::phrases::Ratio;
use crate::reading::At;
use crate::trade::order::{Section, Ways, boxes, site};
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

type Task = (TaskName, Vec<(Section, Quantity)>);

/// Tasks that only some jobs have, in the order of the work.
pub(super) fn listed(work: &Work<'_>, ways: Ways<'_>) -> Vec<Task> {
    let rules = ways.rules;
    let mut tasks = site_work(work, rules);
    let boxes = |fits: &dyn Fn(&SetBox, &BoxStock) -> bool| -> Vec<(Section, Quantity)> {
        boxes::known(work.takeoff, rules)
            .filter(|(_, set, stock)| fits(set, stock))
            .map(|(section, set, _)| (section, boxes::piece(set)))
            .collect()
    };
    let own = boxes::known(work.takeoff, rules)
        .filter(|(_, set, stock)| set.adjust.is_none() && stock.hours.is_some());
    let mut names: Vec<(&str, &At<Amount>)> = own
        .filter_map(|(_, set, stock)| Some((set.stock.value.as_str(), stock.hours.as_ref()?)))
        .collect();
    names.sort_by_key(|(name, _)| *name);
    names.dedup_by_key(|(name, _)| *name);
    for (name, hours) in names {
        let rate = At {
            value: Ratio {
                much: hours.value,
                per: Amount::new(1.into(), Unit::Piece),
            },
            place: hours.place,
        };
        tasks.push((
            TaskName::Item(format!("set {name}"), rate),
            boxes(&|set, _| set.adjust.is_none() && set.stock.value == name),
        ));
    }
    tasks.push((
        TaskName::Rated("set box".into()),
        boxes(&|set, stock| set.adjust.is_none() && stock.hours.is_none()),
    ));
    tasks.push((
        TaskName::Rated("adjust box".into()),
        boxes(&|set, _| set.adjust.is_some()),
    ));
    tasks.push((
        TaskName::Rated("set lid".into()),
        boxes(&|set, _| set.waits_for_lid()),
    ));
    if boxes::is_extra_trip(work.takeoff, ways) {
        let once = Quantity::by("once, for all lids", "come back", Unit::Trip, number(1));
        tasks.push((
            TaskName::Rated("come back".into()),
            vec![(Section::Whole, once)],
        ));
    }
    tasks
}

fn site_work(work: &Work<'_>, rules: &Rules) -> Vec<Task> {
    let works = site::works(work.takeoff, work.slabs, rules).into_iter();
    works
        .filter_map(|(question, rule, quantity)| {
            let name = TaskName::Item(format!("site {}", question.name()), rule.hours?);
            Some((name, vec![(Section::Whole, quantity)]))
        })
        .collect()
}
