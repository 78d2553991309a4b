//! How much work the answers about the site bring.

use super::SlabQuantities;
use crate::input::book::{Rules, SiteRule, work_unit};
use crate::input::job::Takeoff;
use crate::input::site::{Question, Work};
use crate::reading::At;
use crate::trade::term::{number, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// The work of every answer that brings some and has a rule in the book.
pub fn works(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    rules: &Rules,
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
