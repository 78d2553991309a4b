//! Would two pours cost less on one day?

use super::Case;
use super::pour_day::faults;
use crate::costing::{in_pour, saving};
use crate::reading::Problem;
use crate::tables::Source;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let pours: Vec<_> = case.takeoff.pours().collect();
    let pairs = pours.windows(2);
    let answers = pairs.filter_map(|pair| {
        let [(first, one), (second, other)] = pair else {
            return None;
        };
        let way = |pour| case.takeoff.access_of(pour);
        if !way(*first).same(way(*second)) {
            return None;
        }
        let (to, from) = (*first, *second);
        let quoted = case.offer.quoted();
        let together = in_pour(case.takeoff, from, to);
        let (priced, saves) = saving(&together, quoted, case.pricing())?;
        let mut days = priced.needs.crew.pours.iter();
        if days.any(|day| !faults(&together, case.business, day).is_empty()) {
            return None;
        }
        let (earlier, later) = (one.day.as_ref()?, other.day.as_ref()?);
        let message = format!(
            "pours {} and {} cost {saves} less on one day",
            to + 1,
            from + 1
        );
        let help = format!(
            "pour both on {} where the crew can place them in a day and nothing has to harden between them; their edges are counted as they are measured now ({})",
            earlier.value,
            Source::PRACTICE
        );
        let problem = Problem::new("one-day", message).at(later.place);
        Some(problem.also(earlier.place, "the other day").help(help))
    });
    answers.collect()
}
