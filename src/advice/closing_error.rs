//! Did the walk round a slab end where it began?

use super::Case;
use crate::reading::Problem;
use crate::values::Length;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let error = slab.outline.closing_error();
        let off = error.distance().to_the_eighth();
        // What the tape does not tell is not worth a line.
        (off != Length::ZERO).then(|| {
            let parts = [
                (error.east, "east", "west"),
                (error.north, "north", "south"),
            ];
            let ways: Vec<String> = parts
                .into_iter()
                .filter(|(length, ..)| length.to_the_eighth() != Length::ZERO)
                .map(|(length, plus, minus)| {
                    let way = if length < Length::ZERO { minus } else { plus };
                    format!("{} {way}", length.abs().to_the_eighth())
                })
                .collect();
            let message = format!(
                "the outline of `{}` ends {} from where it began; that was spread over its sides",
                slab.key,
                ways.join(" and ")
            );
            Problem::new("closing-error", message)
                .at(slab.outline_place)
                .help("measure the side again that you trust least, or let the last side be `back to start`; up to 1/200 of the way round, at most 6 in, is spread: common practice, no source")
        })
    });
    answers.collect()
}
