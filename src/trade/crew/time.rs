//! From hours of work to trips, crew days and the hours that are charged.

use super::blocks::{Block, Step, blocks};
use super::pack::{Between, Stretch, is_inspected, pack};
use super::surfaces::{Visit, asked};
use super::{Crew, TaskHours, Work, hours_in_a_day, people};
use crate::input::business::{Charge, CrewPolicy, DayCount, DayRule};
use crate::reading::At;
use crate::trade::order::List;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, largest, number, of, sum};
use crate::trade::working::{Name, Quantity};
use crate::values::{Amount, Unit};

/// The crew and its day, as the owner says.
struct CrewDay {
    people: Quantity,
    hours: Quantity,
    travel: Quantity,
    /// None where the owner counts no hours for it.
    set_up: Option<Quantity>,
    step: Option<Quantity>,
    /// How often it comes to work, where the owner plans it.
    planned: Option<Quantity>,
}

impl CrewDay {
    fn of(policy: &CrewPolicy, planned: Option<&At<Amount>>) -> Self {
        Self {
            planned: planned.map(|planned| Quantity::said("trips planned", planned)),
            people: people(policy),
            hours: hours_in_a_day(policy),
            travel: Quantity::said("travel a person and day", &policy.travel),
            set_up: (!policy.set_up.value.value.is_zero())
                .then(|| Quantity::said("set-up a person and day", &policy.set_up)),
            step: match policy.day_rule.value {
                DayRule::ByTheHour => None,
                DayRule::UpTo(step) => Some(Quantity::given(
                    "round days up to",
                    Amount::new(step, Unit::Plain),
                    policy.day_rule.place,
                )),
            },
        }
    }

    /// What is left of a day for work.
    fn for_work(&self) -> Term {
        let left = of(&self.hours) - &self.travel;
        match &self.set_up {
            Some(set_up) => left - set_up,
            None => left,
        }
    }

    /// How often the crew comes for so many hours.
    fn visits(&self, worked: &Quantity) -> Term {
        (of(worked) / (of(&self.people) * self.for_work())).whole()
    }

    /// Days on site for a stretch: a pour is one day, however long, and visits are as often as asked.
    fn on_site(&self, name: &str, blocks: &[Block], worked: &Quantity) -> Quantity {
        let name = format!("days on site to {name}");
        if let [
            Block {
                step: Step::Place, ..
            },
        ] = blocks
        {
            let rule = "a pour is finished on its day, however long that is";
            return Quantity::by(rule, name, Unit::Trip, number(1));
        }
        let asked: Vec<&Quantity> = blocks.iter().filter_map(|one| one.asked.as_ref()).collect();
        if asked.is_empty() {
            let rule = "hours ÷ (people × a day without travel and set-up), up to a whole one";
            return Quantity::by(rule, name, Unit::Trip, self.visits(worked));
        }
        let rule = "the larger of what its hours take and what is asked for";
        let visits = largest(vec![self.visits(worked), sum(asked)]);
        Quantity::by(rule, name, Unit::Trip, visits)
    }

    fn stretch(&self, night: &'static str, blocks: Vec<Block>) -> Stretch {
        let names: Vec<&str> = blocks.iter().map(|block| block.name.as_str()).collect();
        let name = match &names[..] {
            [most @ .., last] if !most.is_empty() => format!("{} and {last}", most.join(", ")),
            names => names.concat(),
        };
        let worked = match &blocks[..] {
            [one] => one.worked.clone(),
            several => Quantity::by(
                "without a night between them",
                format!("hours to {name}"),
                Unit::Hour,
                sum(several.iter().map(|block| &block.worked)),
            ),
        };
        let in_a_day = (of(&self.people) * self.for_work()).value();
        let is_long = |one: &Block| one.step == Step::Place && in_a_day < one.worked.value();
        Stretch {
            is_long: blocks.iter().any(is_long),
            on_site: self.on_site(&name, &blocks, &worked),
            name,
            blocks,
            night,
            worked,
            trips: None,
            days: None,
        }
    }

    /// The trips of the job in one sum, and every visit after the pour; hours of those fill no day before.
    fn all_trips(&self, before: &Quantity, returns: Option<&Quantity>) -> Quantity {
        let (visits, rule, with_returns) = match &self.planned {
            Some(planned) => (
                of(planned),
                "as you plan them",
                "as you plan them, and every visit after the pour",
            ),
            None => (
                self.visits(before),
                "hours ÷ (people × a day without travel and set-up), up to a whole one",
                "hours ÷ (people × a day without travel and set-up), up to a whole one, and every visit after the pour",
            ),
        };
        match returns {
            Some(returns) => Quantity::by(with_returns, "trips", Unit::Trip, visits + returns),
            None => Quantity::by(rule, "trips", Unit::Trip, visits),
        }
    }

    /// Visits after the pour: as often as they are asked for, and as their hours take.
    fn coming_back(&self, asked: Option<&Quantity>, hours: Vec<&Quantity>) -> Option<Quantity> {
        if hours.iter().all(|hours| hours.value().is_zero()) {
            return asked.cloned();
        }
        let hours = Quantity::by(
            "of all visits after the pour",
            "hours to return",
            Unit::Hour,
            sum(hours),
        );
        let by_hours = Quantity::by(
            "hours ÷ (people × a day without travel and set-up), up to a whole one",
            "trips by the hours to return",
            Unit::Trip,
            self.visits(&hours),
        );
        let mut visits = vec![of(&by_hours)];
        visits.extend(asked.map(of));
        Some(Quantity::by(
            "the larger of what its hours take and what finishes, sealers and rules ask for",
            "trips to return",
            Unit::Trip,
            largest(visits),
        ))
    }

    /// Trips of a stretch: of those that are planned, its part by its hours.
    fn to_stretch(&self, one: &Stretch, before: &Quantity) -> Quantity {
        let name = format!("trips to {}", one.name);
        match &self.planned {
            Some(planned) if !one.is_later() => {
                let rule = "of the trips you plan, its part by its hours";
                let part = of(planned) * &one.worked / before;
                Quantity::by(rule, name, Unit::Trip, part)
            }
            Some(_) | None => {
                let rule = "the crew comes on each of its days";
                Quantity::by(rule, name, Unit::Trip, of(&one.on_site))
            }
        }
    }

    /// Hours of so many trips on the way, and to set up and clean up.
    fn away(&self, trips: &Quantity) -> Term {
        let travel = of(trips) * &self.people * &self.travel;
        match &self.set_up {
            Some(set_up) => travel + of(trips) * &self.people * set_up,
            None => travel,
        }
    }

    /// Days at the house before the last visits, of those that are charged.
    fn at_house(&self, charged: &Quantity, crew: &Counted, days: &Quantity) -> Quantity {
        let name = "working days";
        let is_set = charged.overruled().or(days.overruled()).is_some();
        let work = crew.stretches.iter().filter(|one| !one.is_later());
        let of_work: Option<Vec<&Quantity>> = work.map(|one| one.days.as_ref()).collect();
        if let (Some(of_work), false) = (of_work, is_set) {
            let rule = "days of every stage before the last visits; what the customer reads";
            return Quantity::by(rule, name, Unit::Day, sum(of_work));
        }
        let of_people = of(&self.people) * &self.hours;
        let Some(returns) = &crew.returns else {
            let rule =
                "charged hours ÷ (people × a day), up to a whole day; what the customer reads";
            let days = of(charged) / of_people;
            return Quantity::by(rule, name, Unit::Day, days.whole());
        };
        let later = crew.stretches.iter().filter(|one| one.is_later());
        let later = self.away(returns) + sum(later.map(|one| &one.worked));
        let rule = "(charged hours − those of visits after the pour) ÷ (people × a day), up to a whole day; what the customer reads";
        let days = (of(charged) - later) / of_people;
        Quantity::by(rule, name, Unit::Day, days.whole())
    }

    fn days(&self, hours: impl Into<Term>, name: impl Into<Name>) -> Quantity {
        let days = hours.into() / (of(&self.people) * &self.hours);
        let days = match &self.step {
            Some(step) => days.up_to(step),
            None => days,
        };
        Quantity::by(
            "hours ÷ (people × a day), up to the owner's step",
            name,
            Unit::Day,
            days,
        )
    }
}

/// How often the crew comes, and for what.
struct Counted {
    stretches: Vec<Stretch>,
    trips: Quantity,
    /// Of those, visits after the pour.
    returns: Option<Quantity>,
}

pub(super) fn time(
    work: &Work<'_>,
    tasks: Vec<TaskHours>,
    visits: &[Visit],
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
    let blocks = blocks(work, &tasks, &worked, visits, asked.as_ref(), list);
    let between = Between {
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
        DayCount::ByTheJob => {
            let blocks = stretches.iter().flat_map(|one| &one.blocks);
            // Lids have a trip of their own.
            let back = blocks.filter(|one| one.step.is_later() && one.step != Step::Lid);
            let back = back.map(|block| &block.worked).collect();
            let returns = day.coming_back(asked.as_ref(), back);
            let returns = returns.map(|one| list.sets.settle(one));
            Counted {
                trips: tally.settle(day.all_trips(&before, returns.as_ref())),
                returns,
                stretches,
            }
        }
        DayCount::ByStage => by_stage(&day, stretches, &before, &mut tally),
    };
    let is_asked = |now: &&Quantity| asked.as_ref().is_some_and(|asked| asked.is(now));
    tally.list(counted.returns.iter().filter(|now| !is_asked(now)));
    let trips = &counted.trips;
    let travel = tally.by(
        "trips × people × travel",
        "travel hours",
        Unit::Hour,
        of(trips) * &day.people * &day.travel,
    );
    let set_up = day.set_up.as_ref().map(|each| {
        tally.by(
            "trips × people × set-up and clean-up",
            "set-up hours",
            Unit::Hour,
            of(trips) * &day.people * each,
        )
    });
    let whole = of(&worked) + &travel;
    let (rule, whole) = match &set_up {
        Some(set_up) => ("work, travel and set-up", whole + set_up),
        None => ("work and travel", whole),
    };
    let hours = Quantity::by(rule, "hours", Unit::Hour, whole);
    tally.list([&hours]);
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
    let at_house = tally.settle(day.at_house(&charged, &counted, &days));
    Crew {
        people: day.people,
        pours: Vec::new(),
        tasks,
        at_house,
        stretches: counted.stretches,
        worked,
        before,
        trips: counted.trips,
        returns: counted.returns,
        travel,
        set_up,
        hours,
        days,
        charged,
        work_listed: listed.done(),
        time_listed: tally.done(),
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
    let computed = Quantity::by(
        "trips of every stage added up",
        "trips",
        Unit::Trip,
        sum(&own),
    );
    let trips = tally.settle(computed);
    for (one, own) in stretches.iter_mut().zip(own) {
        let its = match trips.overruled() {
            Some(computed) if !computed.value().is_zero() => {
                let rule = "of the trips you set, its part by those computed";
                let part = of(&own) * &trips / computed;
                Quantity::by(rule, own.named(), Unit::Trip, part)
            }
            Some(_) | None => own,
        };
        let hours = of(&one.worked) + day.away(&its);
        let days = day.days(hours, format!("days to {}", one.name));
        one.days = Some(tally.sets.settle(days));
        one.trips = Some(its);
    }
    let later = stretches.iter().filter(|one| one.is_later());
    let later: Vec<&Quantity> = later.filter_map(|one| one.trips.as_ref()).collect();
    let returns = (!later.is_empty()).then(|| {
        let rule = "trips after the pour added up";
        Quantity::by(rule, "trips to return", Unit::Trip, sum(later))
    });
    Counted {
        trips,
        returns,
        stretches,
    }
}
