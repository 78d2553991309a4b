//! Who comes to a visit: as few people as do its hours in a day, or as take the fewest hours that are charged.

use rust_decimal::Decimal;

use super::crew_day::CrewDay;
use super::pack::Stretch;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Who comes for one thing, and what the way takes them.
#[derive(Debug)]
pub(super) struct Visitors {
    /// After all of the work; else it is the visit that takes the forms off.
    pub is_later: bool,
    trips: Quantity,
    pub people: Quantity,
    travel: Quantity,
    set_up: Option<Quantity>,
}

impl Visitors {
    /// Hours on the way, and to set up and clean up.
    pub(super) fn away(&self) -> Term {
        let travel = of(&self.travel);
        match &self.set_up {
            Some(set_up) => travel + set_up,
            None => travel,
        }
    }
}

impl CrewDay {
    /// Those who do so many hours on `trips` of theirs; on the way they are for `charged` of them.
    pub(super) fn visitors(
        &self,
        name: &str,
        worked: &Quantity,
        trips: &Quantity,
        charged: Quantity,
    ) -> Visitors {
        let people = self.people_on_a_visit(name, worked, trips);
        let away = |what: &str, rule: &'static str, each: &Quantity| {
            let hours = of(&charged) * &people * each;
            Quantity::by(rule, format!("{what} to {name}"), Unit::Hour, hours)
        };
        Visitors {
            travel: away("travel", "trips × its people × travel", &self.travel),
            set_up: self.set_up.as_ref().map(|each| {
                let rule = "trips × its people × set-up and clean-up";
                away("set-up", rule, each)
            }),
            is_later: true,
            people,
            trips: charged,
        }
    }

    fn people_on_a_visit(&self, name: &str, worked: &Quantity, trips: &Quantity) -> Quantity {
        let few = (of(worked) / trips / self.for_work()).whole();
        let cheaper = self.fewest_charged(few.value(), worked, trips);
        let (rule, people) = match &self.on_a_visit {
            Some(said) => ("as you say, and no more than the crew", of(said)),
            None if few.value().is_zero() => ("one, where no hours ask for more", number(1)),
            None if cheaper != few.value() => (
                "more than do it in a day, since in less of it they take fewer hours that are charged",
                number(cheaper),
            ),
            None => (
                "as few as do it in a day: hours ÷ trips ÷ a day without travel and set-up, up to a whole one",
                few,
            ),
        };
        let (rule, people) = if self.people.value() < people.value() {
            ("no more than the crew", of(&self.people))
        } else {
            (rule, people)
        };
        Quantity::by(rule, format!("people to {name}"), Unit::Plain, people)
    }

    /// How many take the fewest charged hours, up to the owner's step of a day; of as many hours the fewest people.
    fn fewest_charged(&self, few: Decimal, worked: &Quantity, trips: &Quantity) -> Decimal {
        let fewest = few.max(Decimal::ONE);
        if !self.is_by_days || self.step.is_none() || self.people.value() < fewest {
            return few;
        }
        let hours = |people: Decimal| {
            let away = of(trips) * number(people) * self.away_each();
            let day = number(people) * &self.hours;
            let days = self.up_to_step((of(worked) + away) / day);
            days.value() * people
        };
        let more = std::iter::successors(Some(fewest), |people| Some(people + Decimal::ONE));
        let all = more.take_while(|people| *people <= self.people.value());
        let best = all.min_by(|one, other| hours(*one).cmp(&hours(*other)));
        best.filter(|best| *best != fewest).unwrap_or(few)
    }

    /// The whole crew on the way to work, and on every visit those who come.
    pub(super) fn travel_of(&self, trips: &Quantity, visits: &[Visitors]) -> Term {
        self.away(trips, visits, &self.travel, |one| Some(&one.travel))
    }

    /// The same, to set up and clean up.
    pub(super) fn set_up_of(&self, trips: &Quantity, visits: &[Visitors], each: &Quantity) -> Term {
        self.away(trips, visits, each, |one| one.set_up.as_ref())
    }

    fn away<'a>(
        &self,
        trips: &Quantity,
        visits: &'a [Visitors],
        each: &Quantity,
        own: impl Fn(&'a Visitors) -> Option<&'a Quantity>,
    ) -> Term {
        if visits.is_empty() {
            return of(trips) * &self.people * each;
        }
        let of_work = of(trips) - sum(visits.iter().map(|one| &one.trips));
        of_work * &self.people * each + sum(visits.iter().filter_map(own))
    }

    /// Days of those who come to a visit, up to the owner's step.
    pub(super) fn days_there(&self, one: &Stretch, visitors: &Visitors) -> Quantity {
        let hours = of(&one.worked) + visitors.away();
        let days = self.up_to_step(hours / (of(&visitors.people) * &self.hours));
        let rule = "hours ÷ (its people × a day), up to the owner's step";
        Quantity::by(rule, format!("days there to {}", one.name), Unit::Day, days)
    }

    /// The same in days of the whole crew, of which they are so much.
    pub(super) fn days_back(&self, name: &str, there: &Quantity, visitors: &Visitors) -> Quantity {
        let days = of(there) * &visitors.people / &self.people;
        let rule = "days of its people, in days of the whole crew";
        Quantity::by(rule, format!("days to {name}"), Unit::Day, days)
    }

    /// Days at the house before the last visits, of those that are charged.
    pub(super) fn at_house(
        &self,
        charged: &Quantity,
        days: &Quantity,
        stretches: &[Stretch],
        visits: &[Visitors],
    ) -> Quantity {
        let name = "working days";
        let is_set = charged.overruled().or(days.overruled()).is_some();
        let work = stretches.iter().filter(|one| !one.is_later());
        let of_work: Option<Vec<&Quantity>> = work.map(Stretch::days_at_house).collect();
        if let (Some(of_work), false) = (of_work, is_set) {
            let rule = "days of every stage before the last visits; what the customer reads";
            return Quantity::by(rule, name, Unit::Day, sum(of_work));
        }
        let of_people = of(&self.people) * &self.hours;
        let later = stretches.iter().filter(|one| one.is_later());
        let later = sum(later.map(|one| &one.worked));
        let away = visits
            .iter()
            .filter(|one| one.is_later)
            .map(Visitors::away)
            .reduce(|all, one| all + one);
        let Some(away) = away else {
            let rule =
                "charged hours ÷ (people × a day), up to half a day; what the customer reads";
            let days = of(charged) / of_people;
            return Quantity::by(rule, name, Unit::Day, days.up_to(half()));
        };
        let later = away + later;
        let rule = "(charged hours − those of visits after the pour) ÷ (people × a day), up to half a day; what the customer reads";
        let days = (of(charged) - later) / of_people;
        Quantity::by(rule, name, Unit::Day, days.up_to(half()))
    }
}

fn half() -> Term {
    number(1) / number(2)
}
