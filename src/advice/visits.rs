//! Do trips that are set leave room for the visits after the pour, and trips that are planned for the work?

use rust_decimal::Decimal;

use super::Case;
use crate::input::business::DayCount;
use crate::reading::Problem;
use crate::trade::working::{Quantity, Working};
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
    let returns = crew.returns.as_ref()?;
    let (all, later) = (crew.trips.amount(), visits(case, returns));
    let rest = (all.value - later.value).max(Decimal::ONE);
    let rest = Amount::new(rest, Unit::Plain);
    let message = format!("the `{all}` you set hold the `{later}` after the pour too");
    let help = format!(
        "to plan the work alone write `trips: {rest}` in the takeoff in place of `set`: visits after the pour come beside it"
    );
    Some(Problem::new("visits-in-set", message).at(*place).help(help))
}

/// How often the crew comes back. Where days go by stage, what was set is shared out among stages, and a
/// part of a visit would tell nobody anything.
fn visits(case: Case<'_>, returns: &Quantity) -> Amount {
    match case.business.crew.day_count.value {
        DayCount::ByTheJob => returns.amount(),
        DayCount::ByStage => {
            let stretches = case.offer.quoted().needs.crew.stretches.iter();
            let later = stretches.filter(|one| one.is_later());
            let visits = later.map(|one| one.on_site.value()).sum();
            Amount::new(visits, Unit::Trip)
        }
    }
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
