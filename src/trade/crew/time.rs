//! From hours of work to trips, crew days and the hours that are charged.

use super::stages::{self, Stage, StageHours};
use super::{Crew, TaskHours, hours_in_a_day, people};
use crate::input::business::{Charge, CrewPolicy, DayCount, DayRule};
use crate::reading::At;
use crate::trade::order::List;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, largest, of, sum};
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

    fn trips(&self, worked: &Quantity, name: impl Into<Name>) -> Quantity {
        let rule = "hours ÷ (people × a day without travel and set-up), up to a whole one";
        Quantity::by(rule, name, Unit::Trip, self.visits(worked))
    }

    /// The trips of the job, and every visit after the pour; hours of those fill no day before.
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
    fn coming_back(&self, asked: &Quantity, worked: &Quantity) -> Quantity {
        let by_hours = self.trips(worked, "trips by the hours to return");
        Quantity::by(
            "the larger of what its hours take and what finishes, sealers and rules ask for",
            format!("trips to {}", Stage::Return.name()),
            Unit::Trip,
            largest(vec![of(&by_hours), of(asked)]),
        )
    }

    /// The trips of a stage: of those that are planned, its part by its hours.
    fn to_stage(&self, one: &StageHours, before: &Quantity) -> Quantity {
        let name = format!("trips to {}", one.stage.name());
        match &self.planned {
            Some(planned) if one.stage != Stage::Return => {
                let rule = "of the trips you plan, its part by its hours";
                let part = of(planned) * &one.worked / before;
                Quantity::by(rule, name, Unit::Trip, part)
            }
            Some(_) | None => self.trips(&one.worked, name),
        }
    }

    /// Days at the house before the last visits, from the hours that are charged.
    fn at_house(
        &self,
        charged: &Quantity,
        stages: &[StageHours],
        returns: Option<&Quantity>,
    ) -> Quantity {
        let name = "working days";
        let of_people = || of(&self.people) * &self.hours;
        let back = stages.iter().find(|one| one.stage == Stage::Return);
        let Some(returns) = returns else {
            let rule =
                "charged hours ÷ (people × a day), up to a whole day; what the customer reads";
            let days = of(charged) / of_people();
            return Quantity::by(rule, name, Unit::Day, days.whole());
        };
        let mut later = of(returns) * &self.people * &self.travel;
        if let Some(set_up) = &self.set_up {
            later = later + of(returns) * &self.people * set_up;
        }
        if let Some(back) = back {
            later = later + &back.worked;
        }
        let rule = "(charged hours − those of visits after the pour) ÷ (people × a day), up to a whole day; what the customer reads";
        let days = (of(charged) - later) / of_people();
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

pub(super) fn time(
    tasks: Vec<TaskHours>,
    mut returns: Option<Quantity>,
    planned: Option<&At<Amount>>,
    list: &List<'_>,
) -> Crew {
    let policy = list.by.crew;
    let day = CrewDay::of(policy, planned);
    let mut work = Tally::of("", list.sets);
    work.show(tasks.iter().flat_map(|task| [&task.work, &task.hours]));
    let mut tally = Tally::of("", list.sets);
    let worked = tally.by(
        "tasks added up",
        "hours worked",
        Unit::Hour,
        sum(tasks.iter().map(|task| &task.hours)),
    );
    let mut stages = stages::hours(&tasks);
    let by_the_stage = policy.day_count.value == DayCount::ByStage;
    if by_the_stage && returns.is_some() && stages.iter().all(|one| one.stage != Stage::Return) {
        stages.push(stages::without_hours(Stage::Return));
    }
    let before = before_coming_back(&worked, &stages);
    let asked = returns.clone();
    tally.list(&asked);
    let trips = match policy.day_count.value {
        DayCount::ByTheJob => {
            let back = stages.iter().find(|one| one.stage == Stage::Return);
            if let (Some(asked), Some(back)) = (&returns, back) {
                returns = Some(list.sets.settle(day.coming_back(asked, &back.worked)));
            }
            day.all_trips(&before, returns.as_ref())
        }
        DayCount::ByStage => by_stage(&day, &mut stages, &mut returns, list),
    };
    let is_asked = |now: &&Quantity| asked.as_ref().is_some_and(|asked| asked.is(now));
    tally.list(returns.iter().filter(|now| !is_asked(now)));
    let trips = tally.settle(trips);
    let travel = tally.by(
        "trips × people × travel",
        "travel hours",
        Unit::Hour,
        of(&trips) * &day.people * &day.travel,
    );
    let set_up = day.set_up.as_ref().map(|each| {
        tally.by(
            "trips × people × set-up and clean-up",
            "set-up hours",
            Unit::Hour,
            of(&trips) * &day.people * each,
        )
    });
    let whole = of(&worked) + &travel;
    let (rule, whole) = match &set_up {
        Some(set_up) => ("work, travel and set-up", whole + set_up),
        None => ("work and travel", whole),
    };
    let hours = Quantity::by(rule, "hours", Unit::Hour, whole);
    tally.list([&hours]);
    let of_stages: Vec<&Quantity> = stages.iter().filter_map(|one| one.days.as_ref()).collect();
    tally.list(of_stages.iter().copied());
    let days = tally.settle(if of_stages.is_empty() {
        day.days(&hours, "crew days")
    } else {
        Quantity::by(
            "days of every stage added up",
            "crew days",
            Unit::Day,
            sum(of_stages),
        )
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
    let at_house = tally.settle(day.at_house(&charged, &stages, returns.as_ref()));
    Crew {
        people: day.people,
        pours: Vec::new(),
        tasks,
        at_house,
        stages,
        worked,
        before,
        trips,
        returns,
        travel,
        set_up,
        hours,
        days,
        charged,
        work_listed: work.done(),
        time_listed: tally.done(),
    }
}

/// What fills the days before the crew comes back.
fn before_coming_back(worked: &Quantity, stages: &[StageHours]) -> Quantity {
    let back = stages.iter().find(|one| one.stage == Stage::Return);
    // Hours that the owner set may be fewer than those of the visits.
    match back.filter(|back| back.worked.value() <= worked.value()) {
        Some(back) => Quantity::by(
            "hours worked − those of visits after the pour",
            "hours before coming back",
            Unit::Hour,
            of(worked) - &back.worked,
        ),
        None => worked.clone(),
    }
}

/// Every stage is a visit of its own: its trips and its days go up by themselves.
///
/// The crew comes back at least as often as finishes and sealers ask.
fn by_stage(
    day: &CrewDay,
    stages: &mut [StageHours],
    returns: &mut Option<Quantity>,
    list: &List<'_>,
) -> Quantity {
    let mut trips = Vec::new();
    let before = stages.iter().filter(|one| one.stage != Stage::Return);
    let before = Quantity::by(
        "of every stage before the crew comes back",
        "hours before coming back",
        Unit::Hour,
        sum(before.map(|one| &one.worked)),
    );
    for one in &mut *stages {
        let name = one.stage.name();
        let visits = match &returns {
            Some(returns) if one.stage == Stage::Return => day.coming_back(returns, &one.worked),
            Some(_) | None => day.to_stage(one, &before),
        };
        let visits = list.sets.settle(visits);
        if returns.is_some() && one.stage == Stage::Return {
            *returns = Some(visits.clone());
        }
        let mut hours = of(&one.worked) + of(&visits) * &day.people * &day.travel;
        if let Some(set_up) = &day.set_up {
            hours = hours + of(&visits) * &day.people * set_up;
        }
        one.days = Some(list.sets.settle(day.days(hours, format!("days to {name}"))));
        trips.push(visits);
    }
    Quantity::by(
        "trips of every stage added up",
        "trips",
        Unit::Trip,
        sum(&trips),
    )
}
