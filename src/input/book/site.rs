//! What answers about the site cost: an item, hours, or both.

use std::collections::BTreeMap;

use super::item::ItemKey;
use crate::input::phrases::Ratio;
use crate::input::site::{Form, Question};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Problem, Problems, suggest};
use crate::values::Unit;

keys! {
    /// What the answer to one question brings.
    pub struct SiteRule in "a rule of `site`" {
        item: Option<At<ItemKey>> = "item" as "name", none, "an item of this book", "masking film";
        /// So much of the item for so much of the answer.
        each: Option<At<Ratio>> = "each", else "one for one",
            "how much of the item for each foot, or for the job", "1 roll per 100 ft";
        hours: Option<At<Ratio>> = "hours", none,
            "work for each foot, or for the job", "2 hours per 100 ft";
    }
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

pub(super) fn read(
    book: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> BTreeMap<Question, SiteRule> {
    let mut rules = BTreeMap::new();
    let Some(node) = book.node(key) else {
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
        if let Ok(rule) = entry.node.group::<SiteRule>(problems) {
            rules.insert(question, rule.for_each(work_unit(question), problems));
        }
    }
    rules
}

impl SiteRule {
    /// What is given for each unit of the answer; the rest is reported and left out.
    fn for_each(self, unit: Unit, problems: &mut Problems) -> Self {
        let mut per = |said: Option<At<Ratio>>, key: &str, much: &str| {
            let said = said?;
            let problem = if said.value.per.unit != unit {
                format!("`{key}` is given per {unit} here")
            } else if key == "hours" && !said.value.much.unit.is_time() {
                "`hours` is measured in hours".to_owned()
            } else {
                return Some(said);
            };
            let problem = Problem::new("wrong-unit", problem).at(said.place);
            problems.push(problem.help(format!("write, for example, `{much} per {unit}`")));
            None
        };
        SiteRule {
            each: per(self.each, "each", "1 piece"),
            hours: per(self.hours, "hours", "1 hour"),
            ..self
        }
    }
}
