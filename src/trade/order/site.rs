//! What the answers about the site bring: items and hours by the rules of the book.

use super::{List, whole};
use crate::input::book::{SiteRule, work_unit};
use crate::input::job::Takeoff;
use crate::input::site::{Question, Work};
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// The work of every answer that brings some and has a rule in the book.
pub(in crate::trade) fn works(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    rules: &crate::input::book::Rules,
) -> Vec<(Question, SiteRule, Quantity)> {
    let answers = takeoff.head.site.iter().filter_map(|(question, answer)| {
        let rule = rules.site.get(question)?;
        let name = format!("site {} to do", question.name());
        let work = match answer.value.work(*question) {
            Work::Nothing => return None,
            Work::Once => Quantity::by("once", name, work_unit(*question), number(1)),
            Work::Feet(value) => {
                let place = answer.place;
                Quantity::feet(name, &At { value, place })
            }
            Work::FormedEdges => {
                let edges = slabs
                    .iter()
                    .flat_map(|slab| [&slab.edges.straight, &slab.edges.deep, &slab.edges.curved])
                    .filter(|length| !length.value().is_zero());
                Quantity::by("edges that had a form", name, Unit::Foot, sum(edges))
            }
        };
        Some((*question, rule.clone(), work))
    });
    answers.collect()
}

pub(super) fn list(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    for (question, rule, work) in works(takeoff, slabs, list.by.rules) {
        let Some(item) = &rule.item else { continue };
        let name = format!("site {}", question.name());
        let quantity = match &rule.each {
            Some(each) => Quantity::by(
                "so much for each",
                name.clone(),
                each.value.much.unit,
                of(&work).at_rate(("so much", "for each"), each),
            ),
            None if work.amount().unit == Unit::Lump => {
                let unit = list.unit(item).unwrap_or(Unit::Piece);
                let amount = Amount::new(work.value(), unit);
                Quantity::new(name.clone(), amount, work.working().clone())
            }
            None => work,
        };
        list.buy(item, name, "what the answer brings", &whole(quantity));
    }
}
