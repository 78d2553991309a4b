//! The calendar of a job: on which working days its stages fall, counted back and on from the pours.

use rust_decimal::Decimal;

use super::crew::{Crew, Step, Stretch};
use crate::input::business::{Business, CrewPolicy};
use crate::input::job::Takeoff;
use crate::values::{Day, rounding};

/// The days of a stretch, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dated {
    pub from: Day,
    pub to: Day,
}

impl CrewPolicy {
    /// This day, or the next one on which the crew works.
    pub fn on_or_after(&self, day: Day) -> Day {
        self.nearest(day, 1)
    }

    /// This day, or the last one before it on which the crew works.
    pub fn on_or_before(&self, day: Day) -> Day {
        self.nearest(day, -1)
    }

    fn nearest(&self, day: Day, step: i64) -> Day {
        // Who is off for a year has no calendar.
        let days = (0..366).map(|days| day.plus(days * step));
        let mut working = days.filter(|day| self.off(*day).is_none());
        working.next().unwrap_or(day)
    }

    /// So many working days later, or earlier; the day itself is counted as one.
    fn working(&self, day: Day, days: i64) -> Day {
        let step = days.signum();
        (1..days.abs()).fold(day, |day, _| self.nearest(day.plus(step), step))
    }
}

/// When each stretch of a job falls.
#[derive(Clone, Debug)]
pub struct Calendar<'a> {
    pub stretches: Vec<(&'a Stretch, Option<Dated>)>,
    /// The day of each pour.
    pub pours: Vec<Day>,
    by: &'a CrewPolicy,
}

/// When the work may begin; where the day of a pour is said, until then.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Window {
    pub from: Day,
    /// The last day on which it may begin.
    pub start_by: Day,
    /// The last day at the house before the crew comes back.
    pub until: Day,
    /// The working day before it has to begin.
    pub sign_by: Day,
    /// Days of pours that the takeoff says, the earliest first.
    pub pours: Vec<Day>,
}

impl<'a> Calendar<'a> {
    /// Pours on their days, what is before and after them on the working days that lie next.
    ///
    /// Where no day is said it is taken from the lead time, on a working day. Nobody knows the day of lids.
    pub fn of(takeoff: &Takeoff, crew: &'a Crew, quoted: Day, business: &'a Business) -> Self {
        let by = &business.crew;
        let usual = quoted.plus(i64::from(business.quote.lead_time.0));
        let pours = takeoff.placements.iter().map(|pour| match &pour.day {
            Some(day) => day.value,
            None => by.on_or_after(usual),
        });
        let mut calendar = Self {
            stretches: crew.stretches.iter().map(|one| (one, None)).collect(),
            pours: pours.collect(),
            by,
        };
        calendar.fill();
        calendar
    }

    fn fill(&mut self) {
        let poured = |of: &Self, i: usize| of.poured(of.stretches[i].0);
        let all = self.stretches.len();
        let Some(first) = (0..all).find(|i| poured(self, *i).is_some()) else {
            return;
        };
        // Back from the first pour, and on from it.
        for i in (0..=first).rev() {
            let next = self.stretches.get(i + 1).and_then(|(_, dated)| *dated);
            let to = poured(self, i).or(next.map(|next| self.by.on_or_before(next.from.plus(-1))));
            self.stretches[i].1 = to.map(|to| self.up_to(i, to));
        }
        let mut done = self.stretches[first].1;
        for i in first + 1..all {
            let Some(before) = done else { return };
            let dated = match poured(self, i) {
                Some(day) => Some(self.up_to(i, day)),
                None => self.after(i, before.to),
            };
            self.stretches[i].1 = dated;
            if !self.stretches[i].0.is_later() {
                done = dated.or(done);
            }
        }
    }

    /// The day of its pour, if it has one.
    fn poured(&self, stretch: &Stretch) -> Option<Day> {
        let pour = stretch.blocks.iter().find(|one| one.step == Step::Place)?;
        self.pours.get(*pour.pours.first()?).copied()
    }

    fn up_to(&self, i: usize, to: Day) -> Dated {
        let from = self.by.working(to, -days(self.stretches[i].0));
        Dated { from, to }
    }

    /// After the work that is done before it, or after its pour.
    fn after(&self, i: usize, done: Day) -> Option<Dated> {
        let stretch = self.stretches[i].0;
        let (length, block) = (days(stretch), stretch.blocks.first()?);
        let poured = || block.pours.last().and_then(|pour| self.pours.get(*pour));
        let from_on = |day: Day| {
            let from = self.by.on_or_after(day);
            let to = self.by.working(from, length);
            Some(Dated { from, to })
        };
        match (block.step, block.wait) {
            (Step::Lid, _) => None,
            // Concrete is kept wet on days off too.
            (Step::Wet, _) => poured().map(|day| Dated {
                from: day.plus(1),
                to: day.plus(length),
            }),
            (_, Some(wait)) => {
                let due = poured()?.plus(i64::from(wait));
                from_on(due.max(done.plus(1)))
            }
            (_, None) => from_on(done.plus(1)),
        }
    }

    /// Days on which the crew works at the house before it comes back.
    pub fn days(&self) -> i64 {
        let work = self.stretches.iter().filter(|(one, _)| !one.is_later());
        work.map(|(one, _)| days(one)).sum()
    }

    /// From the first day of the work to its last, before the crew comes back.
    pub fn span(&self) -> Option<Dated> {
        let work = self.stretches.iter().filter(|(one, _)| !one.is_later());
        let mut dated = work.filter_map(|(_, dated)| *dated);
        let first = dated.next()?;
        let to = dated.next_back().map_or(first.to, |last| last.to);
        let from = first.from;
        Some(Dated { from, to })
    }

    /// When the work may begin, on working days and not before `quoted`; `wide` is how many days the
    /// owner keeps open. Work for a pour whose day is said begins early enough for it.
    pub fn window(&self, takeoff: &Takeoff, quoted: Day, wide: u32) -> Window {
        let wide = i64::from(wide);
        let said = takeoff
            .placements
            .iter()
            .filter_map(|pour| pour.day.as_ref());
        let mut pours: Vec<Day> = said.map(|day| day.value).collect();
        pours.sort_unstable();
        pours.dedup();
        let start = self.span().map_or_else(
            || {
                self.by
                    .on_or_after(self.pours.iter().min().copied().unwrap_or(quoted))
            },
            |span| span.from,
        );
        let soonest = self.by.on_or_after(quoted);
        if let Some(pour) = pours.first() {
            let start_by = start.max(soonest).min((*pour).max(quoted));
            let opens = start_by.plus(-wide).max(soonest);
            return Window {
                from: self.by.on_or_after(opens).min(start_by),
                start_by,
                until: self.span().map_or(*pour, |span| span.to).max(*pour),
                sign_by: self.by.on_or_before(start_by.plus(-1)).max(quoted),
                pours,
            };
        }
        let from = start.max(soonest);
        let start_by = self.by.on_or_before(from.plus(wide)).max(from);
        Window {
            from,
            start_by,
            until: start_by,
            sign_by: start_by,
            pours,
        }
    }
}

/// Days that a stretch takes on the calendar, parts of them as whole; a pour has one.
fn days(stretch: &Stretch) -> i64 {
    let is_pour = stretch.blocks.len() == 1 && stretch.has(Step::Place);
    let days = match &stretch.days {
        Some(days) if !is_pour && !stretch.has(Step::Wet) => days,
        Some(_) | None => &stretch.on_site,
    };
    let days = days.value().max(Decimal::ONE);
    i64::try_from(rounding::round_up_to(days, Decimal::ONE)).unwrap_or(1)
}
