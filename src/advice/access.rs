//! Is it too far for the chute, or for wheelbarrows?

use super::Case;
use crate::input::job::Method;
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::Length;

const FARTHEST: Length = Length::feet_whole(100);
/// With what a mixer carries along; common practice, no source.
const CHUTE: Length = Length::feet_whole(18);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let ways = case.takeoff.ways_in();
    let beyond = ways.iter().filter(|way| way.is_by(Method::Chute));
    let beyond = beyond
        .filter_map(|way| way.distance.as_ref())
        .filter(|distance| CHUTE < distance.value);
    let chutes = beyond.map(|distance| {
        let message = format!("`{}` is farther than a chute reaches", distance.value);
        Problem::new("chute-reach", message)
            .at(distance.place)
            .help(format!(
                "about {CHUTE} is its reach; bring the truck nearer, or write `by: wheelbarrow`, `buggy` or `pump` ({})",
                Source::PRACTICE
            ))
    });
    let far = ways
        .iter()
        .filter(|way| way.is_by(Method::Wheelbarrow))
        .filter_map(|way| way.distance.as_ref())
        .filter(|distance| FARTHEST < distance.value);
    let answers = far.map(|distance| {
        let message = format!("`{}` is a long way for wheelbarrows", distance.value);
        Problem::new("long-barrow-run", message)
            .at(distance.place)
            .help(format!(
                "price it with `by: buggy` or `by: pump` too; over {FARTHEST} is where crews change over ({})",
                Source::PRACTICE
            ))
    });
    answers.chain(chutes).collect()
}
