//! Does the buggy, or the wheelbarrow, go through the gate?

use super::Case;
use crate::input::job::Method;
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::Length;

/// Where the book does not say how wide the buggy is; common practice, no source.
const USUAL: Length = Length::inches_whole(36);

/// A barrow with room for hands; common practice, no source.
const BARROW: Length = Length::inches_whole(30);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let own = case.book.rules.buggy.as_ref();
    let own = own.and_then(|buggy| buggy.width.as_ref());
    let width = own.map_or(USUAL, |width| width.value);
    let ways = case.takeoff.ways_in().into_iter();
    let narrow = ways
        .filter(|way| way.is_by(Method::Buggy))
        .filter_map(|way| way.gate.as_ref())
        .filter(|gate| gate.value < width);
    let answers = narrow.map(|gate| {
        let message = format!(
            "a buggy `{}` wide does not go through `{}`",
            width.in_inches(),
            gate.value.in_inches()
        );
        let problem = Problem::new("narrow-gate", message).at(gate.place);
        match own {
            Some(own) => problem
                .also(own.place, "its width")
                .help("take a wheelbarrow or a pump, or open the way"),
            None => problem.help(format!(
                "take a wheelbarrow or a pump, or write the `width` of your buggy into the book ({})",
                Source::PRACTICE
            )),
        }
    });
    answers.chain(barrows(case)).collect()
}

fn barrows(case: Case<'_>) -> impl Iterator<Item = Problem> {
    let ways = case.takeoff.ways_in().into_iter();
    ways.filter(|way| way.is_by(Method::Wheelbarrow))
        .filter_map(|way| way.gate.as_ref())
        .filter(|gate| gate.value < BARROW)
        .map(|gate| {
            let message = format!(
                "a wheelbarrow needs about `{}`, and `{}` is there",
                BARROW.in_inches(),
                gate.value.in_inches()
            );
            Problem::new("narrow-gate", message)
                .at(gate.place)
                .help(format!(
                    "measure it again, take a panel out, or take a pump ({})",
                    Source::PRACTICE
                ))
        })
}
