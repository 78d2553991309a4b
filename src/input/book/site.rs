//! What answers about the site cost: an item, hours, or both.

use std::collections::BTreeMap;

use super::ItemKey;
use super::tables::SITE_RULE;
use crate::input::phrases::Ratio;
use crate::input::site::{Form, Question};
use crate::reading::{At, Fields, Node, Problem, Problems, suggest};
use crate::values::Unit;

/// What the answer to one question brings.
#[derive(Clone, Debug)]
pub struct SiteRule {
    pub item: Option<At<ItemKey>>,
    /// So much of the item for so much of the answer; one for one without it.
    pub each: Option<At<Ratio>>,
    pub hours: Option<At<Ratio>>,
}

/// The unit in which the work of an answer is measured.
pub fn work_unit(question: Question) -> Unit {
    match (question, question.form()) {
        (Question::Backfill, _) => Unit::Foot,
        (Question::OtherHeights, _) | (_, Form::Yes | Form::Words(_)) => Unit::Lump,
        (_, Form::Length) => Unit::Foot,
    }
}

/// Questions whose answers never bring work of ours.
const UNPRICED: [Question; 2] = [Question::OverheadWires, Question::LinesMarked];

pub(super) fn read(book: &Fields<'_>, problems: &mut Problems) -> BTreeMap<Question, SiteRule> {
    let mut rules = BTreeMap::new();
    let Some(node) = book.node("site") else {
        return rules;
    };
    let priced = || {
        Question::ALL
            .into_iter()
            .filter(|question| !UNPRICED.contains(question))
    };
    for entry in node.entries("`site`", problems) {
        let Some(question) = priced().find(|question| question.name() == entry.key) else {
            let keys: Vec<&str> = priced().map(Question::name).collect();
            let problem = Problem::new(
                "unknown-key",
                format!("`site` of the price book has no key `{}`", entry.key),
            )
            .at(entry.key_place);
            problems.push(match suggest::closest(&entry.key, keys.iter().copied()) {
                Some(near) => problem.help(format!("did you mean `{near}`?")),
                None => problem.help(format!("its keys are {}", keys.join(", "))),
            });
            continue;
        };
        if let Some(rule) = rule(question, &entry.node, problems) {
            rules.insert(question, rule);
        }
    }
    rules
}

fn rule(question: Question, node: &Node, problems: &mut Problems) -> Option<SiteRule> {
    let fields = node.fields(&SITE_RULE, problems).ok()?;
    let unit = work_unit(question);
    let each = per(&fields, "each", unit, "1 piece", problems);
    let hours = per(&fields, "hours", unit, "1 hour", problems);
    let hours = hours.filter(|hours| {
        let timed = matches!(hours.value.much.unit, Unit::Hour | Unit::CrewHour);
        if !timed {
            problems.push(
                Problem::new("wrong-unit", "`hours` is measured in hours")
                    .at(hours.place)
                    .help(format!("write, for example, `1 hour per {unit}`")),
            );
        }
        timed
    });
    Some(SiteRule {
        item: fields.read::<String>("item", problems),
        each,
        hours,
    })
}

/// A rate for each unit of the answer.
fn per(
    fields: &Fields<'_>,
    key: &str,
    unit: Unit,
    much: &str,
    problems: &mut Problems,
) -> Option<At<Ratio>> {
    let ratio: At<Ratio> = fields.read(key, problems)?;
    if ratio.value.per.unit == unit {
        return Some(ratio);
    }
    let message = format!("`{key}` is given per {unit} here");
    problems.push(
        Problem::new("wrong-unit", message)
            .at(ratio.place)
            .help(format!("write, for example, `{much} per {unit}`")),
    );
    None
}
