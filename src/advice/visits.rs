//! Do trips that are set leave room for the visits after the pour, and trips that are planned for the work?

use super::Case;
use crate::reading::Problem;
use crate::trade::working::Working;
use crate::values::{Amount, Unit, rounding};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = [swallowed(case), too_few(case)];
    answers.into_iter().flatten().collect()
}

fn swallowed(case: Case<'_>) -> Option<Problem> {
    let crew = &case.offer.quoted().needs.crew;
    let Working::Set { place, .. } = crew.trips.working() else {
        return None;
    };
    let (all, later) = (crew.trips.amount(), crew.returns.as_ref()?.amount());
    let message = format!("the `{all}` you set hold the `{later}` after the pour too");
    let help = "to plan the work alone write `trips: 2` in the takeoff in place of `set`: visits after the pour come beside it";
    Some(Problem::new("visits-in-set", message).at(*place).help(help))
}

fn too_few(case: Case<'_>) -> Option<Problem> {
    let planned = case.takeoff.head.trips.as_ref()?;
    let (crew, policy) = (&case.offer.quoted().needs.crew, &case.business.crew);
    let away = policy.travel.value.value + policy.set_up.value.value;
    let day = policy.hours_in_a_day.value.value - away;
    let room = planned.value.value * crew.people.value() * day;
    let room = Amount::new(room, Unit::Hour);
    if crew.before.value() <= room.value {
        return None;
    }
    let message = format!(
        "there is room for `{room}` of work in `{}`, and there are `{}`",
        planned.value,
        Amount::new(rounding::to_places(crew.before.value(), 2), Unit::Hour)
    );
    let help = "plan more trips, or longer days; hours and days are charged as they are computed";
    Some(
        Problem::new("trips-too-few", message)
            .at(planned.place)
            .help(help),
    )
}
