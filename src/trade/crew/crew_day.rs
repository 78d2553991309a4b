//! The crew and its day: how often it comes for so many hours, and how many days those are.

use super::blocks::Block;
use super::pack::Stretch;
use super::pour_day::PourDay;
use super::step::Step;
use super::{hours_in_a_day, people};
use crate::input::business::{Charge, CrewPolicy, DayCount, DayRule};
use crate::reading::At;
use crate::trade::term::{Term, largest, number, of, sum};
use crate::trade::working::{Name, Quantity};
use crate::values::{Amount, Unit, rounding};

/// The crew and its day, as the owner says.
pub(super) struct CrewDay {
    pub people: Quantity,
    pub hours: Quantity,
    pub travel: Quantity,
    /// None where the owner counts no hours for it.
    pub set_up: Option<Quantity>,
    /// Who comes back after the work, where the owner says it.
    pub on_a_visit: Option<Quantity>,
    pub step: Option<Quantity>,
    /// What is charged goes up to the step stage by stage.
    pub is_by_days: bool,
    is_by_stage: bool,
    /// How often it comes to work, where the owner plans it.
    pub planned: Option<Quantity>,
}

impl CrewDay {
    pub(super) fn of(policy: &CrewPolicy, planned: Option<&At<Amount>>) -> Self {
        Self {
            planned: planned.map(|planned| Quantity::said("trips planned", planned)),
            is_by_stage: policy.day_count.value == DayCount::ByStage,
            is_by_days: policy.day_count.value == DayCount::ByStage
                && policy.charge.value == Charge::CrewDays,
            people: people(policy),
            on_a_visit: policy.on_a_visit.as_ref().map(|said| {
                if policy.people.value.value < said.value.value {
                    people(policy)
                } else {
                    Quantity::said("people on a visit", said)
                }
            }),
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
    pub(super) fn for_work(&self) -> Term {
        let left = of(&self.hours) - &self.travel;
        match &self.set_up {
            Some(set_up) => left - set_up,
            None => left,
        }
    }

    /// What a trip takes each of them beside the work.
    pub(super) fn away_each(&self) -> Term {
        let travel = of(&self.travel);
        match &self.set_up {
            Some(set_up) => travel + set_up,
            None => travel,
        }
    }

    /// How often so many people come for so many hours.
    fn visits(&self, worked: &Quantity, people: &Quantity) -> Term {
        (of(worked) / (of(people) * self.for_work())).whole()
    }

    /// Who comes back at most.
    fn at_most_back(&self) -> &Quantity {
        self.on_a_visit.as_ref().unwrap_or(&self.people)
    }

    /// Whether nothing is made or poured. In one sum, and of trips that are planned, taking the forms off
    /// is a part of the work.
    fn is_visit(&self, blocks: &[Block]) -> bool {
        let is_apart = self.is_by_stage && self.planned.is_none();
        let first = if is_apart { Step::Strip } else { Step::Finish };
        blocks.iter().all(|one| first <= one.step)
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
        let people = if self.is_visit(blocks) {
            self.at_most_back()
        } else {
            &self.people
        };
        let by_hours = self.visits(worked, people);
        let asked: Vec<&Quantity> = blocks.iter().filter_map(|one| one.asked.as_ref()).collect();
        if asked.is_empty() {
            let rule = "hours ÷ (people × a day without travel and set-up), up to a whole one";
            return Quantity::by(rule, name, Unit::Trip, by_hours);
        }
        let rule = "the larger of what its hours take and what is asked for";
        let visits = largest(vec![by_hours, sum(asked)]);
        Quantity::by(rule, name, Unit::Trip, visits)
    }

    /// Waits for the pours that take longer than a working day: who is there is paid until it has set. Of
    /// pours on one day, the longest.
    pub(super) fn wait_for_setting(&self, blocks: &mut [Block], pours: &[PourDay]) {
        for block in blocks.iter_mut().filter(|one| one.step == Step::Place) {
            let here = pours.iter().filter(|one| block.pours.contains(&one.pour));
            let longest = here.map(|one| &one.day).max_by_key(|hours| hours.value());
            let Some(longest) = longest.filter(|hours| self.for_work().value() < hours.value())
            else {
                continue;
            };
            let there = of(longest) * &self.people;
            // The longest pour of people who never wait is as long as their work, but for the last digit.
            let [worked, all] = [block.worked.value(), there.value()].map(rounding::to_nine_places);
            if worked < all {
                let rule = "the day of the pour is longer than a working day: its hours × people − their work";
                let name = format!("waiting to {}", block.name);
                let waiting = there - &block.worked;
                block.waiting = Some(Quantity::by(rule, name, Unit::Hour, waiting));
            }
        }
    }

    pub(super) fn stretch(&self, night: &'static str, blocks: Vec<Block>) -> Stretch {
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
        let is_long = |one: &Block| one.step == Step::Place && in_a_day < one.there();
        Stretch {
            is_long: blocks.iter().any(is_long),
            on_site: self.on_site(&name, &blocks, &worked),
            is_visit: self.is_visit(&blocks),
            name,
            blocks,
            night,
            worked,
            people: None,
            there: None,
            trips: None,
            days: None,
        }
    }

    /// The trips of the job in one sum: a day of the calendar is a trip, and so is every visit after the pour.
    pub(super) fn all_trips(&self, stretches: &[Stretch], returns: Option<&Quantity>) -> Quantity {
        let work = stretches.iter().filter(|one| !one.is_later());
        let (visits, rule, with_returns) = match &self.planned {
            Some(planned) => (
                of(planned),
                "as you plan them",
                "as you plan them, and every visit after the pour",
            ),
            None => (
                sum(work.map(|one| &one.on_site)),
                "days on site of every stage added up",
                "days on site of every stage added up, and every visit after the pour",
            ),
        };
        match returns {
            Some(returns) => Quantity::by(with_returns, "trips", Unit::Trip, visits + returns),
            None => Quantity::by(rule, "trips", Unit::Trip, visits),
        }
    }

    /// Visits after the pour: as often as they are asked for, and as their hours take.
    pub(super) fn coming_back(
        &self,
        asked: Option<&Quantity>,
        hours: &Quantity,
    ) -> Option<Quantity> {
        if hours.value().is_zero() {
            return asked.cloned();
        }
        let by_hours = Quantity::by(
            "hours ÷ (people × a day without travel and set-up), up to a whole one",
            "trips by the hours after the pour",
            Unit::Trip,
            self.visits(hours, self.at_most_back()),
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
    pub(super) fn to_stretch(&self, one: &Stretch, before: &Quantity) -> Quantity {
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

    /// Hours of so many trips of the whole crew on the way, and to set up and clean up.
    pub(super) fn all_away(&self, trips: &Quantity) -> Term {
        let travel = of(trips) * &self.people * &self.travel;
        match &self.set_up {
            Some(set_up) => travel + of(trips) * &self.people * set_up,
            None => travel,
        }
    }

    /// A pour is finished on its day: what is more than a day is charged as it is, not up to a step.
    pub(super) fn days_of(&self, one: &Stretch, hours: Term) -> Quantity {
        let name = format!("days to {}", one.name);
        if one.is_long {
            let days = hours / (of(&self.people) * &self.hours);
            let rule =
                "hours ÷ (people × a day); a pour that takes longer than a day is finished on it";
            return Quantity::by(rule, name, Unit::Day, days);
        }
        self.days(hours, name)
    }

    pub(super) fn up_to_step(&self, days: Term) -> Term {
        match &self.step {
            Some(step) => days.up_to(step),
            None => days,
        }
    }

    pub(super) fn days(&self, hours: impl Into<Term>, name: impl Into<Name>) -> Quantity {
        let days = self.up_to_step(hours.into() / (of(&self.people) * &self.hours));
        Quantity::by(
            "hours ÷ (people × a day), up to the owner's step",
            name,
            Unit::Day,
            days,
        )
    }
}
