//! From hours of work to trips, crew days and the hours that are charged.

use super::blocks::blocks;
use super::crew_day::CrewDay;
use super::pack::{Between, Stretch, is_inspected, pack};
use super::pour_day::PourDay;
use super::step::Step;
use super::surfaces::asked;
use super::visit::Visit;
use super::visitors::Visitors;
use super::{Crew, TaskHours, Work};
use crate::input::business::{Charge, DayCount, DayRule};
use crate::trade::order::List;
use crate::trade::tally::Tally;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// How often the crew comes, and for what.
struct Counted {
    trips: Quantity,
    /// Of those, visits after the pour.
    returns: Option<Quantity>,
    /// Who makes them.
    visits: Vec<Visitors>,
    stretches: Vec<Stretch>,
}

pub(super) fn time(
    work: &Work<'_>,
    tasks: Vec<TaskHours>,
    visits: &[Visit],
    pours: Vec<PourDay>,
    list: &List<'_>,
) -> Crew {
    let policy = list.by.crew;
    let day = CrewDay::of(policy, work.takeoff.head.trips.as_ref());
    let mut listed = Tally::of("", list.sets);
    listed.show(tasks.iter().flat_map(|task| [&task.work, &task.hours]));
    let mut tally = Tally::of("", list.sets);
    let worked = tally.by(
        "tasks added up",
        "hours worked",
        Unit::Hour,
        sum(tasks.iter().map(|task| &task.hours)),
    );
    let asked = asked(visits, list);
    tally.list(&asked);
    let mut blocks = blocks(work, &tasks, &worked, visits, asked.as_ref(), list);
    day.wait_for_setting(&mut blocks, &pours);
    let between = Between {
        pours: list.by.pours,
        is_inspected: is_inspected(work.takeoff, policy.night),
        is_planned: day.planned.is_some(),
        lids: policy.lids,
    };
    let in_a_day = (of(&day.people) * day.for_work()).value();
    let stretches = pack(blocks, between, in_a_day).into_iter();
    let stretches: Vec<Stretch> = stretches
        .map(|(night, blocks)| day.stretch(night, blocks))
        .collect();
    let before = before_coming_back(&worked, &stretches);
    let counted = match policy.day_count.value {
        DayCount::ByTheJob => by_the_job(&day, stretches, asked.as_ref(), &mut tally),
        DayCount::ByStage => by_stage(&day, stretches, &before, &mut tally),
    };
    let is_asked = |now: &&Quantity| asked.as_ref().is_some_and(|asked| asked.is(now));
    tally.list(counted.returns.iter().filter(|now| !is_asked(now)));
    tally.show(counted.visits.iter().map(|one| &one.people));
    let OnSite {
        travel,
        set_up,
        waiting,
        hours,
    } = on_site(&day, &worked, &counted, &mut tally);
    let of_stretches = counted.stretches.iter().map(|one| one.days.as_ref());
    let of_stretches: Option<Vec<&Quantity>> = of_stretches.collect();
    tally.list(of_stretches.iter().flatten().copied());
    let days = tally.settle(match of_stretches {
        None => day.days(&hours, "crew days"),
        Some(of_stretches) => Quantity::by(
            "days of every stage added up",
            "crew days",
            Unit::Day,
            sum(of_stretches),
        ),
    });
    let by_days = matches!(policy.day_rule.value, DayRule::UpTo(_))
        && policy.charge.value == Charge::CrewDays;
    let (rule, term) = if by_days {
        let rule = "crew days × people × a day";
        (rule, of(&days) * &day.people * &day.hours)
    } else {
        ("hours as computed", of(&hours))
    };
    let charged = tally.by(rule, "labor", Unit::Hour, term);
    let at_house = day.at_house(&charged, &days, &counted.stretches, &counted.visits);
    let at_house = tally.settle(at_house);
    Crew {
        people: day.people,
        pours,
        tasks,
        at_house,
        stretches: counted.stretches,
        worked,
        before,
        trips: counted.trips,
        returns: counted.returns,
        back: counted.visits.into_iter().map(|one| one.people).collect(),
        travel,
        set_up,
        waiting,
        hours,
        days,
        charged,
        work_listed: listed.done(),
        time_listed: tally.done(),
    }
}

/// Hours beside the work, and all together.
struct OnSite {
    travel: Quantity,
    set_up: Option<Quantity>,
    waiting: Option<Quantity>,
    hours: Quantity,
}

fn on_site(day: &CrewDay, worked: &Quantity, counted: &Counted, tally: &mut Tally<'_>) -> OnSite {
    let travel = tally.by(
        if counted.visits.is_empty() {
            "trips × people × travel"
        } else {
            "trips of the whole crew × people × travel, and that of every visit"
        },
        "travel hours",
        Unit::Hour,
        day.travel_of(&counted.trips, &counted.visits),
    );
    let set_up = day.set_up.as_ref().map(|each| {
        tally.by(
            if counted.visits.is_empty() {
                "trips × people × set-up and clean-up"
            } else {
                "trips of the whole crew × people × set-up and clean-up, and that of every visit"
            },
            "set-up hours",
            Unit::Hour,
            day.set_up_of(&counted.trips, &counted.visits, each),
        )
    });
    let waits = counted.stretches.iter().flat_map(Stretch::waiting);
    let waits: Vec<&Quantity> = waits.collect();
    let waiting = (!waits.is_empty()).then(|| {
        let rule = "of pours that are longer on the clock than a working day";
        tally.by(rule, "waiting hours", Unit::Hour, sum(waits))
    });
    let mut whole = of(worked) + &travel;
    if let Some(waiting) = &waiting {
        whole = whole + waiting;
    }
    let (rule, whole) = match (&set_up, &waiting) {
        (Some(set_up), None) => ("work, travel and set-up", whole + set_up),
        (Some(set_up), Some(_)) => ("work, travel, waiting and set-up", whole + set_up),
        (None, None) => ("work and travel", whole),
        (None, Some(_)) => ("work, travel and waiting", whole),
    };
    let hours = Quantity::by(rule, "hours", Unit::Hour, whole);
    tally.list([&hours]);
    OnSite {
        travel,
        set_up,
        waiting,
        hours,
    }
}

/// What fills the days before the crew comes back.
fn before_coming_back(worked: &Quantity, stretches: &[Stretch]) -> Quantity {
    let back = stretches.iter().filter(|one| one.is_later());
    let back: Vec<&Quantity> = back.map(|one| &one.worked).collect();
    if back.iter().all(|back| back.value().is_zero()) {
        return worked.clone();
    }
    Quantity::by(
        "hours worked − those of visits after the pour",
        "hours before coming back",
        Unit::Hour,
        of(worked) - sum(back),
    )
}

/// The trips of the job in one sum, whatever nights lie in it.
fn by_the_job(
    day: &CrewDay,
    stretches: Vec<Stretch>,
    asked: Option<&Quantity>,
    tally: &mut Tally<'_>,
) -> Counted {
    let later = stretches.iter().filter(|one| one.is_later());
    let blocks = later.flat_map(|one| &one.blocks);
    // Lids have a trip of their own.
    let back = blocks.filter(|one| one.step != Step::Lid);
    let hours = Quantity::by(
        "of all visits after the pour",
        "hours after the pour",
        Unit::Hour,
        sum(back.map(|block| &block.worked)),
    );
    let returns = day.coming_back(asked, &hours);
    let returns = returns.map(|one| tally.sets.settle(one));
    let trips = tally.settle(day.all_trips(&stretches, returns.as_ref()));
    let visits = returns.iter().map(|own| {
        let charged = of_those_set(&trips, own);
        day.visitors(Step::Return.name(), &hours, own, charged)
    });
    Counted {
        visits: visits.collect(),
        trips,
        returns,
        stretches,
    }
}

/// Trips for one thing: of those that the owner set for the whole job, its part.
fn of_those_set(trips: &Quantity, own: &Quantity) -> Quantity {
    match trips.overruled() {
        Some(computed) if !computed.value().is_zero() => {
            let rule = "of the trips you set, its part by those computed";
            let part = of(own) * trips / number(computed.value());
            let name = format!("{}, of those you set", own.name());
            Quantity::by(rule, name, Unit::Trip, part)
        }
        Some(_) | None => own.clone(),
    }
}

/// What has a night before it is a stage: its trips and its days go up by themselves.
fn by_stage(
    day: &CrewDay,
    mut stretches: Vec<Stretch>,
    before: &Quantity,
    tally: &mut Tally<'_>,
) -> Counted {
    let own: Vec<Quantity> = stretches
        .iter()
        .map(|one| tally.sets.settle(day.to_stretch(one, before)))
        .collect();
    let is_set = own.iter().any(|one| one.overruled().is_some());
    let parts = stretches.iter().zip(&own);
    let later = parts.filter(|(one, _)| one.is_later()).map(|(_, own)| own);
    let (rule, all) = match &day.planned {
        // Not by its parts, whose last digits are rounded.
        Some(planned) if !is_set && !before.value().is_zero() => (
            "as you plan them, and every visit after the pour",
            of(planned) + sum(later),
        ),
        Some(_) | None => ("trips of every stage added up", sum(&own)),
    };
    let computed = Quantity::by(rule, "trips", Unit::Trip, all);
    let trips = tally.settle(computed);
    let mut visits = Vec::new();
    for (one, own) in stretches.iter_mut().zip(own) {
        let its = of_those_set(&trips, &own);
        let days = if one.is_visit {
            let mut visitors = day.visitors(&one.name, &one.worked, &own, its.clone());
            visitors.is_later = one.is_later();
            let there = day.days_there(one, &visitors);
            let days = day.days_back(&one.name, &there, &visitors);
            one.there = Some(there);
            one.people = Some(visitors.people.clone());
            visits.push(visitors);
            days
        } else {
            let there = one
                .waiting()
                .fold(of(&one.worked), |all, waiting| all + waiting);
            let hours = there + day.all_away(&its);
            day.days_of(one, hours)
        };
        one.days = Some(tally.sets.settle(days));
        one.trips = Some(its);
    }
    let later = stretches.iter().filter(|one| one.is_later());
    let later: Vec<&Quantity> = later.filter_map(|one| one.trips.as_ref()).collect();
    let returns = (!later.is_empty()).then(|| {
        let rule = "trips after the pour added up";
        Quantity::by(rule, "trips after the pour", Unit::Trip, sum(later))
    });
    Counted {
        trips,
        returns,
        visits,
        stretches,
    }
}
