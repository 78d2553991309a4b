//! Is it too far for wheelbarrows?

use super::Case;
use crate::input::job::Method;
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::Length;

const FARTHEST: Length = Length::feet_whole(100);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let ways = case.takeoff.ways_in().into_iter();
    let far = ways
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
    answers.collect()
}
