//! What the answers about the site ask for: wires, a septic tank, lines, a permit, a price.

use super::{Case, DECIDES};
use crate::input::job::Permit;
use crate::input::site::{Answer, Question};
use crate::reading::{At, Problem};
use crate::tables::{Read, Source};

const WIRES: Source = Source::new("29 CFR 1926.1408", "Table A, up to 50 kV", Read::Secondary);
const LINES: Source = Source::new(
    "state law, told by two one-call centers",
    "",
    Read::Secondary,
);
/// Kinds that lie where the public passes.
const IN_PUBLIC_WAY: [&str; 2] = ["apron", "sidewalk"];

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = [wires(case), septic(case), lines(case), permit(case)];
    let mut found: Vec<Problem> = answers.into_iter().flatten().collect();
    found.extend(unpriced(case));
    found
}

fn answer(case: Case<'_>, question: Question) -> Option<&At<Answer>> {
    case.takeoff.head.site.get(&question)
}

fn wires(case: Case<'_>) -> Option<Problem> {
    let at = answer(case, Question::OverheadWires)?;
    let Answer::Length(height) = &at.value else {
        return None;
    };
    let message = format!("wires hang `{height}` up where the truck works");
    Some(
        Problem::new("overhead-wires", message)
            .at(at.place)
            .help(format!(
                "keep every part of a truck, chute and boom 10 ft from them, and ask whoever owns them; source: {WIRES}; {DECIDES}"
            )),
    )
}

fn septic(case: Case<'_>) -> Option<Problem> {
    let at = answer(case, Question::TruckOver)?;
    at.value.has("septic tank").then(|| {
        Problem::new("septic-tank", "the truck would drive over a septic tank")
            .at(at.place)
            .help(format!(
                "a loaded mixer breaks tanks and pipes; price it with another way in, or by `by: buggy` or `by: pump` ({})",
                Source::PRACTICE
            ))
    })
}

fn lines(case: Case<'_>) -> Option<Problem> {
    let at = answer(case, Question::LinesMarked)?;
    (at.value == Answer::No).then(|| {
        Problem::new("lines-not-marked", "the lines underground are not marked yet")
            .at(at.place)
            .help(format!(
                "call 811 some working days before anyone digs: it is free; private lines are not marked by it; source: {LINES}; {DECIDES}"
            ))
    })
}

/// Asks and never decides.
fn permit(case: Case<'_>) -> Option<Problem> {
    if !matches!(case.takeoff.head.permit, Permit::Unsaid) {
        return None;
    }
    let slab = case
        .takeoff
        .slabs
        .iter()
        .find(|slab| IN_PUBLIC_WAY.contains(&slab.kind.as_str()) || slab.around.is_public())?;
    let message = format!(
        "`{}` lies where the public passes; has anyone asked about a permit?",
        slab.key
    );
    Some(
        Problem::new("permit-to-ask", message)
            .at(slab.place)
            .help(format!(
                "ask the town, then write `permit: customer`, `none` or the item that you pay; {DECIDES}"
            )),
    )
}

/// Work that the quote promises and the book does not price.
fn unpriced(case: Case<'_>) -> Vec<Problem> {
    let promised = case.takeoff.head.site.iter().filter(|(question, at)| {
        let ours = at.value.has("ours") || at.value.has("hauled");
        ours && !case.book.rules.site.contains_key(question)
    });
    promised
        .map(|(question, at)| {
            let message = format!(
                "`{}` is ours, and the price book has no price for it",
                question.name()
            );
            Problem::new("site-unpriced", message)
                .at(at.place)
                .help(format!(
                    "write `{}` under `site` of the price book, with an item or hours",
                    question.name()
                ))
        })
        .collect()
}
